import type { LengthLayout, LengthProblem, Outcome, SheetLayout, SheetProblem } from './problem.ts'
import { checkBoard } from './verify/board.ts'
import type { Fault } from './verify/fault.ts'
import { faultOverall } from './verify/fault.ts'
import { checkSheet } from './verify/sheet.ts'
import type { Demand } from './verify/tally.ts'
import { addTo, findMiscounted, findMisnamed, findOverdrawn } from './verify/tally.ts'

/**
 * What is wrong with boards laid out for `problem`; empty when they are sound. Shares nothing with the search. `most`:
 * parts may be left over, none may be made too often.
 */
export function verifyLengths(
  problem: LengthProblem,
  layouts: readonly LengthLayout[],
  demand: Demand = 'all',
): Fault[] {
  const made = new Map<string, number>()
  for (const layout of layouts) for (const part of layout.parts) addTo(made, part, layout.count)
  return [
    ...findMisnamed(problem.stock, layouts),
    ...layouts.flatMap((layout, index) => checkBoard(problem, layout, index)),
    ...findMiscounted(problem.parts, made, demand),
    ...findOverdrawn(problem.stock, layouts, demand),
  ]
}

/**
 * What is wrong with sheets laid out for `problem`; empty when they are sound. The cuts are found anew from the
 * placements, and the layout's own cuts are made as well. `most`: parts may be left over, none may be made too often.
 */
export function verifySheets(
  problem: SheetProblem,
  layouts: readonly SheetLayout[],
  demand: Demand = 'all',
): Fault[] {
  const made = new Map<string, number>()
  for (const { placements, count } of layouts)
    for (const placement of placements) addTo(made, placement.part, count)
  return [
    ...findMisnamed(problem.stock, layouts),
    ...layouts.flatMap((layout, index) => checkSheet(problem, layout, index)),
    ...findMiscounted(problem.parts, made, demand),
    ...findOverdrawn(problem.stock, layouts, demand),
  ]
}

interface Priced {
  readonly id: string
  readonly price: number
}

interface Used {
  readonly stock: string
  readonly count: number
}

function checkSums(
  stock: readonly Priced[],
  layouts: readonly Used[],
  cost: number,
  pieces: number,
): Fault[] {
  const prices = new Map(stock.map((piece) => [piece.id, piece.price]))
  const paid = layouts.reduce((sum, layout) => sum + (prices.get(layout.stock) ?? 0) * layout.count, 0)
  const counted = layouts.reduce((sum, layout) => sum + layout.count, 0)
  return [
    ...(paid === cost
      ? []
      : [faultOverall('cost', `the cost is given as ${cost}, but the stock costs ${paid}`)]),
    ...(counted === pieces
      ? []
      : [faultOverall('cost', `${pieces} pieces are claimed, but ${counted} are cut`)]),
  ]
}

/**
 * Whether an outcome's cost, pieces and bound agree with its layouts: `optimal` needs a bound equal to the cost.
 * An `impossible` outcome has no figures and so no faults.
 */
export function verifyCost<Layout extends Used>(
  problem: { readonly stock: readonly Priced[] },
  outcome: Outcome<Layout>,
): Fault[] {
  if (outcome.status === 'impossible') return []
  const { cost, pieces, lowerBound, layouts } = outcome
  const claims = [
    lowerBound > cost ? `the lower bound ${lowerBound} is above the cost ${cost}` : '',
    outcome.status === 'optimal' && Math.ceil(lowerBound) < cost
      ? `called optimal at ${cost} on a bound of ${lowerBound}`
      : '',
  ]
  return [
    ...checkSums(problem.stock, layouts, cost, pieces),
    ...claims.filter((claim) => claim !== '').map((claim) => faultOverall('cost', claim)),
  ]
}

/** What the most was said to come to. */
interface Worth {
  readonly status: 'optimal' | 'stopped'
  readonly layouts: readonly SheetLayout[]
  readonly worth: number
  readonly upperBound: number
}

/** Whether the worth of the most agrees with its layouts and its bound; a part without a worth counts by its area. */
export function verifyWorth(problem: SheetProblem, { status, layouts, worth, upperBound }: Worth): Fault[] {
  const worths = new Map(problem.parts.map((part) => [part.id, part.worth ?? part.length * part.width]))
  const laid = layouts.reduce(
    (sum, { placements, count }) =>
      sum + count * placements.reduce((one, { part }) => one + (worths.get(part) ?? 0), 0),
    0,
  )
  const claims = [
    laid === worth ? '' : `a worth of ${worth} is claimed, but ${laid} is laid`,
    upperBound < worth ? `the upper bound ${upperBound} is below the worth ${worth}` : '',
    status === 'optimal' && Math.floor(upperBound) > worth
      ? `called optimal at ${worth} on a bound of ${upperBound}`
      : '',
  ]
  return claims.filter((claim) => claim !== '').map((claim) => faultOverall('worth', claim))
}
