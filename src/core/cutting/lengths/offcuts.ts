import type { ShouldStop } from '../problem.ts'
import type { Cut, Pattern } from './pattern.ts'
import { sizeOf, takeFrom, trimPattern } from './pattern.ts'
import type { Task } from './task.ts'

const FILL_STEPS = 2000

/** The parts of a plan, each bar by itself, and no part made more often than asked. */
export function cutOneByOne(task: Task, cuts: readonly Cut[]): Pattern[] {
  const demand = task.demand.slice()
  const boards: Pattern[] = []
  for (const { pattern, times } of cuts) {
    for (let turn = 0; turn < times; turn++) {
      const trimmed = trimPattern(pattern, demand)
      if (trimmed === undefined) break
      takeFrom(demand, trimmed, 1)
      boards.push(trimmed)
    }
  }
  return boards
}

function pool(a: Pattern, b: Pattern): Map<number, number> {
  const counts = new Map<number, number>()
  for (const { types, counts: held } of [a, b])
    types.forEach((type, place) => {
      counts.set(type, (counts.get(type) ?? 0) + held[place]!)
    })
  return new Map([...counts].sort((x, y) => x[0] - y[0]))
}

interface Fill {
  readonly counts: readonly number[]
  readonly size: number
}

/** The fullest way to fill a capacity from a pool, as far as a short search finds it. */
function fillMost(sizes: readonly number[], held: readonly number[], capacity: number): Fill {
  const counts = sizes.map(() => 0)
  let best: Fill = { counts: [...counts], size: 0 }
  let steps = FILL_STEPS
  const descend = (place: number, room: number): void => {
    if (capacity - room > best.size) best = { counts: [...counts], size: capacity - room }
    if (place === sizes.length || steps-- <= 0 || best.size === capacity) return
    for (let count = Math.min(held[place]!, Math.floor(room / sizes[place]!)); count >= 0; count--) {
      counts[place] = count
      descend(place + 1, room - count * sizes[place]!)
    }
    counts[place] = 0
  }
  descend(0, capacity)
  return best
}

const patternOf = (bar: number, types: readonly number[], counts: readonly number[]): Pattern => {
  const places = types.map((_, place) => place).filter((place) => counts[place]! > 0)
  return { bar, types: places.map((place) => types[place]!), counts: places.map((place) => counts[place]!) }
}

/** Two boards that make the same parts, the second fuller than it was; undefined when none was found. */
function shift(task: Task, from: Pattern, to: Pattern): [Pattern, Pattern] | undefined {
  const capacity = task.bars[to.bar]!.capacity
  const full = sizeOf(to, task.sizes)
  if (full === capacity) return undefined
  const pooled = pool(from, to)
  const types = [...pooled.keys()]
  const held = [...pooled.values()]
  const fill = fillMost(
    types.map((type) => task.sizes[type]!),
    held,
    capacity,
  )
  if (fill.size <= full) return undefined
  const rest = held.map((count, place) => count - fill.counts[place]!)
  return [patternOf(from.bar, types, rest), patternOf(to.bar, types, fill.counts)]
}

const spareOf = (task: Task, board: Pattern): number =>
  task.bars[board.bar]!.capacity - sizeOf(board, task.sizes)

/** Fills the other boards from the one that already has the most to spare, so that its offcut grows. */
export function gatherOffcut(task: Task, boards: readonly Pattern[], shouldStop: ShouldStop): Pattern[] {
  const spares = boards.map((board) => spareOf(task, board))
  const chosen = spares.indexOf(spares.reduce((most, spare) => Math.max(most, spare), 0))
  const result = [...boards]
  for (let again = true; again && chosen >= 0; ) {
    again = false
    for (let place = 0; place < result.length && !shouldStop(); place++) {
      if (place === chosen) continue
      const shifted = shift(task, result[chosen]!, result[place]!)
      if (shifted === undefined) continue
      result[chosen] = shifted[0]
      result[place] = shifted[1]
      again = true
    }
  }
  return result.filter((board) => board.types.length > 0)
}
