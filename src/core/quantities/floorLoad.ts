import type { Range } from './product.ts'
import { POUND_PER_CUBIC_FOOT } from './density.ts'
import { type Length, toMillimetres } from '../measure/length.ts'

/** Wet soil, kg/m3: 75 to 100 lb/ft3 soaked, 40 to 60 for a light potting mix (gardeners' figures for planters on decks). */
export const WET_SOIL = {
  garden: { low: 75 * POUND_PER_CUBIC_FOOT, high: 100 * POUND_PER_CUBIC_FOOT },
  light: { low: 40 * POUND_PER_CUBIC_FOOT, high: 60 * POUND_PER_CUBIC_FOOT },
} as const satisfies Readonly<Record<string, Range>>

/** kg/m2 of one pound to the square foot. */
export const POUND_PER_SQUARE_FOOT = 0.45359237 / 0.3048 ** 2

/** What decks are commonly built to carry, kg/m2: 40 to 60 lb/ft2 (gardeners' figures for planters on decks). */
export const USUAL_DECK: Range = { low: 40 * POUND_PER_SQUARE_FOOT, high: 60 * POUND_PER_SQUARE_FOOT }

/** Grams of soaked soil in a planter `length` by `width` inside, filled to `depth`. */
export function soilWeight(length: Length, width: Length, depth: Length, soil: keyof typeof WET_SOIL): Range {
  const litres = (toMillimetres(length) * toMillimetres(width) * toMillimetres(depth)) / 1_000_000
  const { low, high } = WET_SOIL[soil]
  return { low: litres * low, high: litres * high }
}

/** kg/m2 on the floor under `mass` grams that stand on a rectangle. Throws for a rectangle of no size. */
export function floorLoad(mass: number, length: Length, width: Length): number {
  if (!(length > 0 && width > 0)) throw new RangeError(`a footprint must be above 0: ${length} x ${width}`)
  return mass / 1000 / ((toMillimetres(length) / 1000) * (toMillimetres(width) / 1000))
}
