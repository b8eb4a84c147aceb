import type { ShouldStop } from '../problem.ts'
import type { Random } from '../sheets/random.ts'
import { fillBars, packLongest, packTightest } from './fill.ts'
import { relax } from './generation.ts'
import type { Incumbent } from './incumbent.ts'
import { weightOf } from './incumbent.ts'
import type { Table } from './knapsack.ts'
import type { Master, Remainder } from './master.ts'
import { everything } from './master.ts'
import type { Cut, Pattern } from './pattern.ts'
import { takeFrom, timesWithin, trimPattern } from './pattern.ts'
import type { Task } from './task.ts'

/** What a search works with. */
export interface Search {
  readonly task: Task
  readonly master: Master
  readonly table: Table
  readonly incumbent: Incumbent
  readonly random: Random
  readonly shouldStop: ShouldStop
}

/** The least whole weight that is not below a value that may be a rounding error too high. */
export const roundWeight = (value: number): number => Math.ceil(value - 1e-6 * Math.max(1, value))

const NEARLY = 1e-6

interface Course {
  readonly remainder: Remainder
  readonly cuts: Cut[]
}

/** Cuts the pattern as often as it is whole in the solution, at least `least` times. */
function commit(course: Course, pattern: Pattern, wanted: number): void {
  const trimmed = trimPattern(pattern, course.remainder.demand)
  if (trimmed === undefined) return
  const { demand, limits } = course.remainder
  const times = Math.min(wanted, timesWithin(trimmed, demand), limits[pattern.bar]!)
  if (times <= 0) return
  takeFrom(demand, trimmed, times)
  limits[pattern.bar] = limits[pattern.bar]! - times
  course.cuts.push({ pattern: trimmed, times })
}

function commitWhole(search: Search, course: Course, amounts: Float64Array): boolean {
  const before = course.cuts.length
  search.master.patterns.forEach((pattern, place) => {
    const times = Math.floor(amounts[place]! + NEARLY)
    if (times > 0) commit(course, pattern, times)
  })
  return course.cuts.length > before
}

function commitLikely(search: Search, course: Course, amounts: Float64Array, noise: number): void {
  let best = -1
  let most = 0
  for (let place = 0; place < amounts.length; place++) {
    if (amounts[place]! < NEARLY) continue
    const merit = amounts[place]! + noise * search.random.next()
    if (merit > most) {
      most = merit
      best = place
    }
  }
  if (best >= 0) commit(course, search.master.patterns[best]!, Math.max(1, Math.floor(amounts[best]!)))
}

/** Fills the rest quickly and offers the whole. */
export function complete(search: Search, course: Course): void {
  for (const pack of [packLongest, packTightest]) {
    const rest = fillBars(search.task, course.remainder, pack)
    if (rest !== undefined) search.incumbent.offer([...course.cuts, ...rest])
  }
}

/** One dive: relax, cut what is whole or nearly so, relax the rest, until all is cut or nothing can be gained. */
export function dive(search: Search, noise: number): void {
  const { task, master, table, incumbent, shouldStop } = search
  const course: Course = { remainder: everything(task), cuts: [] }
  const hopeless = (value: number): boolean =>
    weightOf(task, course.cuts) + roundWeight(value) >= incumbent.plan().weight
  while (course.remainder.demand.some((count) => count > 0)) {
    const effort = { rounds: 6, shouldStop, enough: (bound: number) => hopeless(bound) }
    const relaxed = relax(task, master, table, course.remainder, effort)
    if (relaxed === undefined || shouldStop() || hopeless(relaxed.value)) return
    if (!commitWhole(search, course, relaxed.solution.amounts))
      commitLikely(search, course, relaxed.solution.amounts, noise)
    complete(search, course)
  }
  incumbent.offer(course.cuts)
}
