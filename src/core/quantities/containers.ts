import type { Container } from './product.ts'
import { type Pack, packFor } from './shoppingPacks.ts'

/** So many cans of one size. */
export interface ContainerCount {
  readonly name: string
  readonly millilitres: number
  readonly count: number
  /** Cents for one, where it is known. */
  readonly price?: number
}

/**
 * What one can more may cost, in mL left over: a US quart. It gives the rule of paint estimating guides: for a remainder
 * of up to half a gallon buy one or two quarts, for a larger one the next gallon.
 */
const CAN_WORTH = 946.352946

/**
 * The cans that hold at least `volume` mL. Where prices are known, the cheapest of those that have one; else those with the
 * least left over, where one can more has to save a quart. Searched exactly; then less left over, then fewer cans; largest
 * first; empty for no volume. Throws where no cans are given.
 */
export function fillContainers(volume: number, sold: readonly Container[]): readonly ContainerCount[] {
  const priced = sold.filter(({ price }) => price !== undefined)
  const choice = [...(priced.length > 0 ? priced : sold)].sort((a, b) => b.volume - a.volume)
  const packs = choice.map(({ volume: holds, price }): Pack => ({ holds, cost: price ?? CAN_WORTH }))
  const counts = packFor(volume, packs, priced.length > 0 ? 0 : 1)
  return choice
    .map(({ name, volume: millilitres, price }, index) => ({
      name,
      millilitres,
      count: counts[index] ?? 0,
      ...(price === undefined ? {} : { price }),
    }))
    .filter(({ count }) => count > 0)
}

/** The same for a job: what is needed at all takes one can, however small. */
export const containersFor = (volume: number, sold: readonly Container[]): readonly ContainerCount[] =>
  fillContainers(volume > 0 ? Math.max(volume, LEAST) : volume, sold)

/** mL; less than this is nothing to whatever fills cans. */
const LEAST = 1
