import type { Container, FinishProduct } from '../../../src/core/quantities/product.ts'
import { toSquareFeetPerGallon } from '../../../src/core/quantities/finishFilm.ts'

/** mm2 in a square foot, mL in a US gallon of 231 in3: by definition. */
export const SQUARE_FOOT = 92_903.04
export const GALLON = 3785.411784

const can = (region: Container['region'], name: string, volume: number): Container => ({
  region,
  name,
  volume,
})

/** US can sizes, and the metric ones of UK paint shops. */
export const CANS: readonly Container[] = [
  can('US', 'half-pint', GALLON / 16),
  can('US', 'pint', GALLON / 8),
  can('US', 'quart', GALLON / 4),
  can('US', 'gallon', GALLON),
  can('US', '5-gallon pail', 5 * GALLON),
  can('UK', '750 mL', 750),
  can('UK', '2.5 L', 2500),
  can('UK', '5 L', 5000),
]

/** A finish that covers just so many ft2 per gallon, with nothing wasted. */
export const covering = (low: number, high = low): FinishProduct => ({
  name: 'test paint',
  alsoCalled: [],
  kind: 'water',
  smooth: { low: low / toSquareFeetPerGallon(1), high: high / toSquareFeetPerGallon(1) },
  coats: 1,
  waste: { smooth: 0, rough: 0 },
})
