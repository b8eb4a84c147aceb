import type { ShouldStop } from '../problem.ts'
import type { Random } from '../sheets/random.ts'
import { fillBars, packLongest, packTightest } from './fill.ts'
import { relax } from './generation.ts'
import { coverExactly } from './exactCover.ts'
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

/** Fills the rest quickly and offers the whole. The plainest filling is never stopped: there must be some plan. */
export function complete(
  { task, incumbent }: Pick<Search, 'task' | 'incumbent'>,
  { remainder, cuts }: Course,
  shouldStop: ShouldStop,
): void {
  for (const rest of [
    fillBars(task, remainder, packLongest, () => false),
    fillBars(task, remainder, packTightest, shouldStop),
  ])
    if (rest !== undefined) incumbent.offer([...cuts, ...rest])
}

/** Parts left when a dive looks at all ways to cut them, and how many steps that may take. */
const FEW_PARTS = 36
const COVER_STEPS = 20_000

function finish(search: Search, course: Course): boolean {
  const { task, incumbent } = search
  const left = course.remainder.demand.reduce((sum, count) => sum + count, 0)
  if (task.bars.length > 1 || left > FEW_PARTS) return false
  const bars = incumbent.plan().weight - 1 - weightOf(task, course.cuts)
  const rest = coverExactly(task, course.remainder, bars, COVER_STEPS)
  return rest !== undefined && incumbent.offer([...course.cuts, ...rest])
}

/** A point of a dive that can be returned to: what was left, what was cut, and what the relaxed problem said. */
interface Station {
  readonly remainder: Remainder
  readonly cuts: readonly Cut[]
  readonly amounts: Float64Array
  readonly tried: Set<number>
}

const copyOf = (remainder: Remainder): Remainder => ({
  demand: remainder.demand.slice(),
  limits: remainder.limits.slice(),
})

/** How much a pattern without short parts is preferred: those fill the gaps that the end of a dive leaves. */
const LONG_PARTS_FIRST = 0.5

const shortest = ({ task, master }: Search, place: number): number => {
  const { bar, types } = master.patterns[place]!
  return task.sizes[types.at(-1)!]! / task.bars[bar]!.capacity
}

/** The pattern with the highest amount not tried yet, with some chance in it. */
function likeliest(search: Search, station: Station, noise: number): number {
  let best = -1
  let most = 0
  for (let place = 0; place < station.amounts.length; place++) {
    const amount = station.amounts[place]!
    if (amount < NEARLY || station.tried.has(place)) continue
    const merit = amount + LONG_PARTS_FIRST * shortest(search, place) + noise * search.random.next()
    if (merit > most) {
      most = merit
      best = place
    }
  }
  return best
}

/** The next course from a station; undefined when it has been tried enough. */
function leave(search: Search, station: Station, noise: number): Course | undefined {
  const course = { remainder: copyOf(station.remainder), cuts: [...station.cuts] }
  if (station.tried.size === 0 && commitWhole(search, course, station.amounts)) {
    station.tried.add(-1)
    return course
  }
  if (station.tried.size >= ALTERNATIVES) return undefined
  const place = likeliest(search, station, noise)
  if (place < 0) return undefined
  station.tried.add(place)
  commit(course, search.master.patterns[place]!, Math.max(1, Math.floor(station.amounts[place]!)))
  return course
}

const ALTERNATIVES = 3
const RETURNS = 5

function nextCourse(search: Search, stations: Station[], noise: number): Course | undefined {
  for (let station = stations.at(-1); station !== undefined; station = stations.at(-1)) {
    const course = leave(search, station, noise)
    if (course !== undefined) return course
    stations.pop()
  }
  return undefined
}

/**
 * One dive: relax, cut what is whole or nearly so, relax the rest, until all is cut. Where nothing can be gained it
 * goes back a little and takes another pattern.
 */
export function dive(search: Search, noise: number): void {
  const { task, master, table, incumbent, shouldStop } = search
  const stations: Station[] = []
  let returns = 0
  let course: Course | undefined = { remainder: everything(task), cuts: [] }
  while (course !== undefined && !shouldStop()) {
    const { remainder, cuts }: Course = course
    const spent = weightOf(task, cuts)
    const hopeless = (value: number): boolean => spent + roundWeight(value) >= incumbent.plan().weight
    if (hopeless(0)) return
    const enough = (bound: number, value: number): boolean => hopeless(bound) || !hopeless(value)
    const relaxed = relax(task, master, table, remainder, { rounds: 50, shouldStop, enough })
    if (relaxed === undefined) return
    if (hopeless(relaxed.value)) {
      if (returns++ >= RETURNS) return
    } else if (finish(search, course)) return
    else stations.push({ remainder, cuts, amounts: relaxed.solution.amounts, tried: new Set() })
    course = nextCourse(search, stations, noise)
    if (course === undefined) return
    complete(search, course, shouldStop)
    if (course.remainder.demand.every((count) => count === 0)) {
      incumbent.offer(course.cuts)
      return
    }
  }
}
