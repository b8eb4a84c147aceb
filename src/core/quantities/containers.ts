import type { Container } from './product.ts'

/** So many cans of one size. */
export interface ContainerCount {
  readonly name: string
  readonly millilitres: number
  readonly count: number
}

/**
 * What one can more may cost, in mL left over: a US quart. It gives the rule of paint estimating guides: for a remainder
 * of up to half a gallon buy one or two quarts, for a larger one the next gallon.
 */
const CAN_WORTH = 946.352946

/** A shortfall of less than this, in mL, is the rounding of the arithmetic. */
const ROUNDING = 0.01

/**
 * The cans that hold at least `volume` mL at the least left over, where one can more has to save a quart. Searched
 * exactly; largest first; empty for no volume. Throws where no cans are given.
 */
export function fillContainers(volume: number, sold: readonly Container[]): readonly ContainerCount[] {
  if (volume <= ROUNDING) return []
  const sizes = [...sold].sort((a, b) => b.volume - a.volume)
  const counts = cheapest(volume, sizes)
  if (!counts) throw new RangeError('no containers to fill')
  return sizes
    .map(({ name, volume: millilitres }, index) => ({ name, millilitres, count: counts[index] ?? 0 }))
    .filter(({ count }) => count > 0)
}

/** How many of each size, in their order; undefined where there is no size at all. */
function cheapest(volume: number, sizes: readonly Container[]): readonly number[] | undefined {
  let best: readonly number[] | undefined
  let bestCost = Number.POSITIVE_INFINITY
  const search = (rest: number, counts: readonly number[], cans: number): void => {
    const size = sizes[counts.length]?.volume
    if (rest <= ROUNDING) {
      const cost = cans * CAN_WORTH - rest
      if (cost < bestCost - ROUNDING) [best, bestCost] = [counts, cost]
      return
    }
    // All that is left to fill needs at least this many cans, since the sizes that follow are no larger.
    if (size === undefined || (cans + rest / size) * CAN_WORTH > bestCost) return
    for (let count = Math.ceil((rest - ROUNDING) / size); count >= 0; count -= 1)
      search(rest - count * size, [...counts, count], cans + count)
  }
  search(volume, [], 0)
  return best
}
