import type { LengthLayout, LengthProblem, ShouldStop } from '../problem.ts'
import { checkLengthProblem } from './check.ts'
import type { Contents } from './descent.ts'
import { createDescent, worthWith } from './descent.ts'
import { createTable, fillTable, worthFrom } from './knapsack.ts'
import { layoutsOf } from './layouts.ts'
import type { Pattern } from './pattern.ts'
import { takeFrom } from './pattern.ts'
import type { Task } from './task.ts'
import { reduceYield } from './task.ts'

/** What is to be as much as can be: the number of parts, their lengths added up, or what they are worth. */
export type Measure = 'count' | 'length' | 'worth'

export interface Yield {
  /** `optimal`: proven that no more can be had. */
  readonly status: 'optimal' | 'stopped'
  readonly layouts: readonly LengthLayout[]
  /** How many parts are made. */
  readonly count: number
  /** Their lengths added up, without kerfs. */
  readonly length: number
  /** What they are worth, as far as worths are given. */
  readonly worth: number
  /** No more than this, by the measure asked for, can be had; proven. */
  readonly upperBound: number
}

interface Filled {
  readonly contents: Contents
  /** No contents are worth more. */
  readonly most: number
}

const STEPS = 1_000_000

/** The best contents of one bar, and a bound on them. */
function fillBest(
  task: Task,
  values: Float64Array,
  demand: Int32Array,
  capacity: number,
  shouldStop: ShouldStop,
): Filled {
  const table = createTable(task.sizes.length, capacity)
  const descent = createDescent(table, STEPS, shouldStop)
  let contents: Contents = { value: 0, types: [], counts: [] }
  fillTable(table, task.sizes, values, demand, () => false)
  const most = worthFrom(table, 0, capacity)
  for (let row = 0; row < table.count; row++)
    if (worthWith(table, row, capacity) > contents.value)
      contents = descent.packFrom(row, capacity, contents.value) ?? contents
  return { contents, most: descent.stepsLeft() > 0 ? contents.value : most }
}

/** What all bars together hold at most: as many bars apart, or as one long bar, whichever says less. */
function boundAll(task: Task, values: Float64Array, shouldStop: ShouldStop): number {
  const apart = task.bars.reduce(
    (sum, bar) => sum + bar.limit * fillBest(task, values, task.demand, bar.capacity, shouldStop).most,
    0,
  )
  const together = task.bars.reduce((sum, bar) => sum + bar.limit * bar.capacity, 0)
  return Math.min(apart, fillBest(task, values, task.demand, together, shouldStop).most)
}

function fillAll(task: Task, values: Float64Array, shouldStop: ShouldStop): Pattern[] {
  const demand = task.demand.slice()
  const boards: Pattern[] = []
  const shortestFirst = task.bars.map((bar, place) => ({ bar, place }))
  shortestFirst.sort((a, b) => a.bar.capacity - b.bar.capacity)
  for (const { bar, place } of shortestFirst) {
    for (let turn = 0; turn < bar.limit; turn++) {
      const { contents } = fillBest(task, values, demand, bar.capacity, shouldStop)
      if (contents.types.length === 0) break
      const pattern = { bar: place, types: contents.types, counts: contents.counts }
      takeFrom(demand, pattern, 1)
      boards.push(pattern)
    }
  }
  return boards
}

/**
 * The most parts, the greatest length of parts or the most worth of parts that the stock yields: `onHand` of each, one where that is left
 * out. Prices do not matter, and parts may be left over. Each piece of stock is filled as well as it can be, the
 * shortest first; `optimal` when the bound shows that this is the best of all. Throws a RangeError like `cutLengths`.
 */
export function mostFromLengths(
  problem: LengthProblem,
  measure: Measure,
  { shouldStop }: { readonly shouldStop: ShouldStop },
): Yield {
  checkLengthProblem(problem)
  const task = reduceYield(problem)
  const lengths = Float64Array.from(task.sources, (parts) => parts[0]!.length)
  const worths = Float64Array.from(task.sources, (parts) => parts[0]!.worth ?? 0)
  const values = { count: lengths.map(() => 1), length: lengths, worth: worths }[measure]
  const boards = fillAll(task, values, shouldStop)
  const total = (worths: Float64Array): number =>
    boards.reduce(
      (sum, board) =>
        board.types.reduce((held, type, place) => held + worths[type]! * board.counts[place]!, sum),
      0,
    )
  const upperBound = task.bars.length === 0 ? 0 : boundAll(task, values, shouldStop)
  const status = total(values) >= upperBound ? 'optimal' : 'stopped'
  const count = total(lengths.map(() => 1))
  const layouts = layoutsOf(problem, task, boards)
  return { status, layouts, count, length: total(lengths), worth: total(worths), upperBound }
}
