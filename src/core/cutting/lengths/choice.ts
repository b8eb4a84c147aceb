import type { Solver, WholeEffort } from '../linearProgram.ts'
import { solveWhole } from '../linearProgram.ts'
import type { Search } from './dive.ts'
import { listPatterns } from './enumeration.ts'
import { fillTable } from './knapsack.ts'
import type { Cut, Pattern } from './pattern.ts'
import { keyOf } from './pattern.ts'
import type { Certificate } from './pricing.ts'

/** Columns above which the integer solver is not worth its time. */
const MOST_COLUMNS = 6000

/**
 * The patterns that a plan lighter than the best so far can be made of, by what the relaxed problem says they are
 * worth; undefined when there are too many.
 */
export function findCandidates(search: Search, certificate: Certificate): Pattern[] | undefined {
  const { task, table, incumbent, shouldStop } = search
  const { values, required, unit } = certificate
  if (!fillTable(table, task.sizes, values, task.demand, shouldStop, 0)) return undefined
  const allowed = incumbent.plan().weight - 1
  const lists = task.bars.map((bar, place) => {
    // The other bars of such a plan are worth no more than their cost: the rest of the worth must be in this one.
    const floor = required - (allowed - bar.weight) * unit * (1 + 1e-14) - 1
    return listPatterns(table, place, bar.capacity, floor, MOST_COLUMNS)
  })
  if (lists.some((list) => list === undefined)) return undefined
  return lists.flatMap((list) => list ?? [])
}

/** Chooses among patterns with the integer solver and offers what it finds; whether it takes that for the best. */
export function choose(
  solver: Solver,
  search: Search,
  patterns: readonly Pattern[],
  effort: WholeEffort,
): boolean {
  const { task, incumbent } = search
  const best = incumbent.plan().cuts
  const byKey = new Map(
    [...patterns, ...best.map((cut) => cut.pattern)].map((pattern) => [keyOf(pattern), pattern]),
  )
  const offered = [...byKey.values()]
  const places = new Map([...byKey.keys()].map((key, place) => [key, place]))
  const start = new Float64Array(offered.length)
  for (const cut of best) start[places.get(keyOf(cut.pattern))!]! += cut.times
  const held = task.bars.flatMap((bar, place) => (bar.limit === Infinity ? [] : [place]))
  const columns = offered.map((pattern) => {
    const row = held.indexOf(pattern.bar)
    const price = task.bars[pattern.bar]!.weight
    if (row < 0) return { price, rows: pattern.types, amounts: pattern.counts }
    return { price, rows: [...pattern.types, task.sizes.length + row], amounts: [...pattern.counts, 1] }
  })
  const rows = [
    ...Array.from(task.demand, (least) => ({ least, most: Infinity })),
    ...held.map((place) => ({ least: -Infinity, most: task.bars[place]!.limit })),
  ]
  const { amounts, settled } = solveWhole(solver, { columns, rows, start }, effort)
  if (amounts === undefined) return false
  const cuts: Cut[] = offered.flatMap((pattern, place) => {
    const times = Math.round(amounts[place]!)
    return times > 0 ? [{ pattern, times }] : []
  })
  incumbent.offer(cuts)
  return settled
}
