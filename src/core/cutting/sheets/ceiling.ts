import type { Job, PartType } from './job.ts'
import type { PatternTable } from './table.ts'

interface Offer {
  readonly part: PartType
  readonly weight: number
}

const fitsIn = (part: PartType, length: number, width: number): boolean =>
  (part.length <= length && part.width <= width) ||
  (part.turnable && part.width <= length && part.length <= width)

/** The most that the counted parts can make of one area, cut into fractions, the densest first. */
const fractional = (offers: readonly Offer[], length: number, width: number): number => {
  let room = length * width
  let total = 0
  for (const { part, weight } of offers) {
    if (!fitsIn(part, length, width)) continue
    const share = Math.min(1, room / (part.area * part.count))
    total += share * weight * part.count
    room -= share * part.area * part.count
    if (share < 1) break
  }
  return total
}

/**
 * What no rectangle can hold, by area and by how many parts there are: one value for every cell of a table. Rounded up
 * a little against errors of floating point, then down to a whole number, as weights are whole.
 */
export const readCeiling = (job: Job, table: PatternTable, weights: ArrayLike<number>): Float64Array => {
  const offers = job.parts
    .map((part, index) => ({ part, weight: weights[index] as number }))
    .sort((a, b) => b.weight / b.part.area - a.weight / a.part.area)
  const columns = table.y.at.length
  const ceiling = new Float64Array(table.values.length)
  table.x.at.forEach((length, x) => {
    table.y.at.forEach((width, y) => {
      ceiling[x * columns + y] = Math.floor(fractional(offers, length, width) * (1 + 1e-12) + 1e-6)
    })
  })
  return ceiling
}
