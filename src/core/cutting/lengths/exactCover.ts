import type { Remainder } from './master.ts'
import type { Cut } from './pattern.ts'
import type { Task } from './task.ts'

interface Trial {
  readonly sizes: Float64Array
  readonly demand: Int32Array
  readonly capacity: number
  readonly smallest: number
  /** Length that may still be wasted. */
  spare: number
  bars: number
  steps: number
  readonly cuts: Cut[]
}

function nextType(trial: Trial, from: number): number {
  let type = from
  while (type < trial.demand.length && trial.demand[type] === 0) type++
  return type
}

/** Closes the bar being filled when it wastes no more than may be, and goes on to the next. */
function closeBar(trial: Trial, room: number, first: number, types: number[]): boolean {
  if (room > trial.spare) return false
  trial.spare -= room
  trial.bars--
  trial.cuts.push({ pattern: { bar: 0, types: [...types], counts: types.map(() => 1) }, times: 1 })
  if (openBar(trial, first)) return true
  trial.cuts.pop()
  trial.bars++
  trial.spare += room
  return false
}

/** Tries every next part, no longer than the last, then to leave the bar as it is. */
function fillOn(trial: Trial, room: number, from: number, first: number, types: number[]): boolean {
  const { sizes, demand } = trial
  if (trial.steps-- <= 0) return false
  for (let type = from; type < demand.length; type++) {
    if (demand[type] === 0 || sizes[type]! > room) continue
    const rest = room - sizes[type]!
    // What is left must be filled by the parts to come, or wasted.
    if (rest > trial.spare && rest < trial.smallest) continue
    demand[type] = demand[type]! - 1
    types.push(type)
    if (fillOn(trial, rest, type, first, types)) return true
    types.pop()
    demand[type] = demand[type]! + 1
    if (trial.steps <= 0) return false
  }
  return closeBar(trial, room, first, types)
}

function openBar(trial: Trial, from: number): boolean {
  const first = nextType(trial, from)
  if (first === trial.demand.length) return true
  if (trial.bars === 0) return false
  trial.demand[first] = trial.demand[first]! - 1
  const done = fillOn(trial, trial.capacity - trial.sizes[first]!, first, first, [first])
  if (!done) trial.demand[first] = trial.demand[first]! + 1
  return done
}

/**
 * Cuts of the remainder from at most `bars` bars of the one kind there is, by going through all ways to fill bar after
 * bar round its longest part; undefined when there are none, or none was found in so many steps.
 */
export function coverExactly(
  task: Task,
  remainder: Remainder,
  bars: number,
  steps: number,
): Cut[] | undefined {
  const capacity = task.bars[0]!.capacity
  const demand = remainder.demand.slice()
  const total = demand.reduce((sum, count, type) => sum + count * task.sizes[type]!, 0)
  const spare = bars * capacity - total
  if (spare < 0) return undefined
  const { sizes } = task
  const smallest = sizes[demand.findLastIndex((count) => count > 0)] ?? 0
  const trial: Trial = { sizes, demand, capacity, smallest, spare, bars, steps, cuts: [] }
  return openBar(trial, 0) ? trial.cuts : undefined
}
