import type { ShouldStop } from '../problem.ts'
import type { Table } from './knapsack.ts'
import { worthFrom } from './knapsack.ts'

/** What a knapsack holds: types of the task, ascending, and how many of each. */
export interface Contents {
  readonly value: number
  readonly types: readonly number[]
  readonly counts: readonly number[]
}

/** A depth-first search for contents, held back by a filled table. */
export interface Descent {
  /**
   * The best contents with the active type `row` in them and none before it, worth more than `floor`; undefined
   * when there are none or the steps ran out before any was found.
   */
  readonly packFrom: (row: number, room: number, floor: number) => Contents | undefined
  /** Steps left. At nothing, an answer of undefined proves nothing. */
  readonly stepsLeft: () => number
}

const copiesOf = (table: Table, row: number, room: number): number =>
  Math.min(table.limits[row]!, Math.floor(room / table.sizes[row]!))

/** The most that contents with type `row` in them and none before it can be worth. */
export function worthWith(table: Table, row: number, room: number): number {
  const size = table.sizes[row]!
  const value = table.values[row]!
  let most = 0
  for (let copies = copiesOf(table, row, room); copies > 0; copies--)
    most = Math.max(most, copies * value + worthFrom(table, row + 1, room - copies * size))
  return most
}

/** Steps taken before it is asked again whether to stop. */
const STEPS_UNASKED = 5000

/** A search in `table` of at most `steps` steps, each a type taken; told to stop, it has none left. */
export function createDescent(table: Table, steps: number, shouldStop: ShouldStop): Descent {
  const { sizes, values } = table
  const rows: number[] = []
  const copied: number[] = []
  let left = steps
  let found: Contents | undefined
  let floor = 0

  const keep = (value: number): void => {
    floor = value
    found = { value, types: rows.map((row) => table.types[row]!), counts: [...copied] }
  }
  const take = (row: number, room: number, value: number): void => {
    for (let copies = copiesOf(table, row, room); copies > 0 && left > 0; copies--) {
      const rest = room - copies * sizes[row]!
      const worth = value + copies * values[row]!
      if (worth + worthFrom(table, row + 1, rest) <= floor) continue
      left--
      if (left % STEPS_UNASKED === 0 && shouldStop()) left = 0
      rows.push(row)
      copied.push(copies)
      if (worth > floor) keep(worth)
      descend(row + 1, rest, worth)
      rows.pop()
      copied.pop()
    }
  }
  const descend = (first: number, room: number, value: number): void => {
    for (let row = first; row < table.count && left > 0; row++) {
      if (value + worthFrom(table, row, room) <= floor) return
      if (sizes[row]! <= room) take(row, room, value)
    }
  }
  const packFrom = (row: number, room: number, least: number): Contents | undefined => {
    found = undefined
    // An exact table names the best value beforehand: nothing less need be looked at.
    floor = table.grain === 1 ? Math.max(least, worthWith(table, row, room) - 1) : least
    if (left > 0 && worthWith(table, row, room) > floor) take(row, room, 0)
    return found
  }
  return { packFrom, stepsLeft: () => left }
}
