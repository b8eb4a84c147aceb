import type { ShouldStop } from '../problem.ts'
import type { Remainder } from './master.ts'
import type { Cut, Pattern } from './pattern.ts'
import { sizeOf, takeFrom, timesWithin } from './pattern.ts'
import type { Task } from './task.ts'

/** Packs one bar of a capacity from what is asked for; the first type asked for always goes in. */
export type Packer = (task: Task, demand: Int32Array, first: number, capacity: number) => Packed

export interface Packed {
  readonly types: readonly number[]
  readonly counts: readonly number[]
}

/** The longest that still fits, again and again. */
export const packLongest: Packer = (task, demand, first, capacity) => {
  const types: number[] = []
  const counts: number[] = []
  let room = capacity
  const last = task.sizes[task.sizes.length - 1]!
  for (let type = first; type < task.sizes.length && room >= last; type++) {
    const count = Math.min(demand[type]!, Math.floor(room / task.sizes[type]!))
    if (count === 0) continue
    types.push(type)
    counts.push(count)
    room -= count * task.sizes[type]!
  }
  return { types, counts }
}

/**
 * Parts tried in one bar, and types looked at. More is not better: a search that always ends in the tightest filling
 * uses up the parts that go with everything, and the last bars are filled badly.
 */
const TRIES = 600
const LOOKS = 200_000

/** The first type at `from` or after that is no longer than `room`. */
function firstWithin(sizes: Float64Array, from: number, room: number): number {
  let low = from
  let high = sizes.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (sizes[middle]! > room) low = middle + 1
    else high = middle
  }
  return low
}

/** The longest, and with it what leaves the least, as far as a short search finds it. */
export const packTightest: Packer = (task, demand, first, capacity) => {
  const { sizes } = task
  let looks = LOOKS
  let tries = TRIES
  let least = Infinity
  let best: Packed = { types: [], counts: [] }
  const types: number[] = []
  const counts: number[] = []
  const take = (type: number, most: number, room: number): void => {
    types.push(type)
    for (let count = most; count > 0 && least > 0 && tries > 0; count--) {
      tries--
      counts.push(count)
      descend(type + 1, room - count * sizes[type]!)
      counts.pop()
    }
    types.pop()
  }
  const descend = (from: number, room: number): void => {
    if (room < least) {
      least = room
      best = { types: [...types], counts: [...counts] }
    }
    for (let type = firstWithin(sizes, from, room); type < sizes.length; type++) {
      if (least === 0 || tries <= 0 || looks-- <= 0) return
      if (demand[type] === 0) continue
      take(type, Math.min(demand[type]!, Math.floor(room / sizes[type]!)), room)
    }
  }
  take(first, Math.min(demand[first]!, Math.floor(capacity / sizes[first]!)), capacity)
  return best
}

interface Choice {
  readonly pattern: Pattern
  readonly rate: number
}

/** The bar, packed, that costs least for the length used. */
function choosePattern(task: Task, remainder: Remainder, first: number, pack: Packer): Pattern | undefined {
  let best: Choice | undefined
  task.bars.forEach((bar, place) => {
    if (remainder.limits[place]! <= 0 || bar.capacity < task.sizes[first]!) return
    const packed = pack(task, remainder.demand, first, bar.capacity)
    const pattern = { bar: place, ...packed }
    const rate = bar.weight / sizeOf(pattern, task.sizes)
    if (best === undefined || rate < best.rate) best = { pattern, rate }
  })
  return best?.pattern
}

/**
 * Cuts for all of the remainder, bar after bar; undefined when the stock runs out or it was stopped. The remainder is
 * not changed.
 */
export function fillBars(
  task: Task,
  remainder: Remainder,
  pack: Packer,
  shouldStop: ShouldStop,
): Cut[] | undefined {
  const left = { demand: remainder.demand.slice(), limits: remainder.limits.slice() }
  const cuts: Cut[] = []
  for (let first = 0; first < task.sizes.length; first++) {
    while (left.demand[first]! > 0) {
      const pattern = choosePattern(task, left, first, pack)
      if (pattern === undefined || shouldStop()) return undefined
      const times = Math.min(timesWithin(pattern, left.demand), left.limits[pattern.bar]!)
      takeFrom(left.demand, pattern, times)
      left.limits[pattern.bar] = left.limits[pattern.bar]! - times
      cuts.push({ pattern, times })
    }
  }
  return cuts
}
