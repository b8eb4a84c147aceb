import type { UnitSystem } from '../core/measure/reading.ts'
import { showArea, showVolume } from '../core/measure/showAmounts.ts'
import { showDecimal } from '../core/measure/showDecimal.ts'
import { type FinishNeed, finishNeeded, type Surface } from '../core/quantities/finish.ts'
import { toSquareFeetPerGallon } from '../core/quantities/finishFilm.ts'
import type { FinishProduct } from '../core/quantities/product.ts'
import { itemName } from '../core/quantities/shoppingPrices.ts'
import type { Region } from '../core/stock/stock.ts'
import type { Context } from './context.ts'
import type { PriceBook } from './prices.ts'
import { Refusal } from './refusal.ts'
import type { Show } from './show.ts'

/** What is to be finished, and what was said of it. */
export interface FinishAsked {
  /** mm2 of one coat. */
  readonly area: number
  readonly product?: FinishProduct | undefined
  readonly coats?: number | undefined
  readonly surface?: Surface | undefined
}

/** How much finish, in the cans that cost least by the prices known. Throws a Refusal where no source says how far it goes. */
export function finishWanted(
  { area, product, coats, surface = 'smooth' }: FinishAsked,
  book: PriceBook,
  { reference, settled }: Context,
): { readonly chosen: FinishProduct; readonly need: FinishNeed } {
  const chosen = product ?? reference.finishes[0]
  if (!chosen) throw new Refusal('fault', 'the settings know no finish; add one to config/finishes.yaml')
  const need = finishNeeded({
    area,
    product: chosen,
    coats,
    surface,
    region: settled.region,
    containers: reference.containers.map((can) => ({
      ...can,
      price: book.priceOf(itemName(chosen.name, can.name))?.cents,
    })),
  })
  if (need.status === 'unknown')
    throw new Refusal('invalid', `${need.reason}; write surface=smooth, or another product`)
  return { chosen, need }
}

/** A fluid ounce is not the same in every country that has one: where cans are metric, so is what goes in. */
export const volumeUnits = (region: Region, { show }: Context): UnitSystem =>
  region === 'US' ? show.units : 'metric'

/** How much a coat takes, and how far the finish goes. */
export function coverageLine({ perCoat, coverage }: FinishNeed, context: Context): string {
  const { show, settled } = context
  const units = volumeUnits(settled.region, context)
  const covers = units === 'inch' ? toSquareFeetPerGallon(coverage) * SQUARE_FOOT : coverage * 1_000_000
  return `${showVolume(perCoat, units)} a coat: one ${units === 'inch' ? 'gallon' : 'litre'} covers ${showArea(covers, show.units)}, the low end of what is claimed`
}

/** mm2 in a square foot, micrometres in a mil. */
const SQUARE_FOOT = 92_903.04
const MIL = 25.4

/** How thick a coat is wet and dry, and all of them; nothing for what soaks in. */
export function filmNotes(
  { wetFilm, dryFilm, coats }: FinishNeed,
  { units }: Pick<Show, 'units'>,
): readonly string[] {
  if (dryFilm === undefined) return []
  const say = (micrometres: number): string =>
    units === 'inch' ? `${showDecimal(micrometres / MIL, 1)} mil` : `${Math.round(micrometres)} µm`
  const all = coats > 1 ? `, ${say(dryFilm * coats)} in ${coats} coats` : ''
  return [`each coat ${say(wetFilm)} wet, about ${say(dryFilm)} dry${all}: allow for it where parts slide`]
}
