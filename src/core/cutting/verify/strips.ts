import type { LengthLayout, Outcome } from '../problem.ts'
import type { StripProblem } from '../strips/stripProblem.ts'
import { verifyCost, verifyLengths } from '../verify.ts'
import type { Fault } from './fault.ts'
import { faultOverall } from './fault.ts'

/**
 * What is wrong with strips laid out for `problem`, and with the boards they are said to take; empty when all is sound.
 * Counts boards by itself: one for every full or begun set of strips.
 */
export function verifyStrips(problem: StripProblem, outcome: Outcome<LengthLayout>): Fault[] {
  if (outcome.status === 'impossible') return []
  const boards: { stock: string; count: number }[] = []
  const tooMany: Fault[] = []
  for (const { id, strips, onHand = Number.POSITIVE_INFINITY } of problem.stock) {
    let cut = 0
    for (const layout of outcome.layouts) if (layout.stock === id) cut += layout.count
    let count = 0
    for (; cut > 0; cut -= strips) count += 1
    if (count > 0) boards.push({ stock: id, count })
    if (count > onHand)
      tooMany.push(faultOverall('onHand', `${count} boards of "${id}" are ripped, but there are ${onHand}`))
  }
  // Boards on hand are counted above; here each strip stands alone.
  const stock = problem.stock.map(({ onHand: _onHand, ...board }) => board)
  return [
    ...verifyLengths({ ...problem, stock }, outcome.layouts),
    ...tooMany,
    ...verifyCost(problem, { ...outcome, layouts: boards }),
  ]
}
