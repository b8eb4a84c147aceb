import { countIn, countStacks, fitsRow, type Stack } from './stack.ts'
import type { Pool } from './tile.ts'

/** Stacks side by side, and what their parts count together. */
export interface Row {
  readonly width: number
  readonly stacks: readonly Stack[]
  readonly worth: number
}

/** Into how many steps a row is divided; of the rows that end within the same step only the best is kept. */
const STEPS = 500

/** Most copies of one stack in a row. */
const MOST_COPIES = 6

/** Most beginnings of rows that are looked at. */
const MOST_BEGINNINGS = 30_000

/** A row this close to what no row passes is not bettered. */
const ENOUGH = 0.9995

/** Rows under construction: each is an earlier one with a stack more. One set of arrays serves every row in turn. */
const worth = new Float64Array(MOST_BEGINNINGS)
const end = new Float64Array(MOST_BEGINNINGS)
const before = new Int32Array(MOST_BEGINNINGS)
const last = new Int32Array(MOST_BEGINNINGS)
const copies = new Int32Array(MOST_BEGINNINGS)
const kept = new Int32Array(STEPS + 1)
const alive = new Int32Array(MOST_BEGINNINGS)

const countParts = (row: number, stacks: readonly Stack[], part: number): number => {
  let count = 0
  for (let at = row; at > 0; at = before[at]!) count += countIn(stacks[last[at]!]!, part)
  return count
}

/** Whether there are parts enough for one stack more. */
const affords = (pool: Pool, row: number, stacks: readonly Stack[], stack: Stack): boolean => {
  if (row === 0) return true
  const one = stack.first.index >> 1
  if (countParts(row, stacks, one) + countIn(stack, one) > pool.left[one]!) return false
  if (stack.second === undefined) return true
  const other = stack.second.index >> 1
  return countParts(row, stacks, other) + countIn(stack, other) <= pool.left[other]!
}

const listRow = (row: number, stacks: readonly Stack[]): Stack[] => {
  const found: Stack[] = []
  for (let at = row; at > 0; at = before[at]!) found.push(stacks[last[at]!]!)
  return found
}

/**
 * No row of the given size made of these stacks is worth more than this: the densest, which come first, cut into
 * fractions. Those that do not fit are passed over.
 */
export const rowCeiling = (pool: Pool, stacks: readonly Stack[], length: number, width: number): number => {
  let room = length
  let most = 0
  for (const stack of stacks) {
    if (!fitsRow(stack, length, width)) continue
    const copies = Math.min(countStacks(pool, stack), room / stack.length)
    most += copies * stack.worth
    room -= copies * stack.length
    if (room <= 0) break
  }
  return most
}

/**
 * A row of the given size filled from stacks (none wider than it, the densest first) to nearly the most worth: a
 * knapsack over the length that keeps one row for every step, and only rows for which there are parts enough.
 */
export const fillRow = (pool: Pool, stacks: readonly Stack[], length: number, width: number): Row => {
  kept.fill(-1)
  kept[0] = 0
  let best = 0
  let made = 1
  let live = 1
  alive[0] = 0
  const scale = STEPS / length
  const enough = rowCeiling(pool, stacks, length, width) * ENOUGH
  for (let index = 0; index < stacks.length && worth[best]! < enough; index++) {
    const stack = stacks[index]!
    const density = stack.worth / stack.length
    const most = Math.min(MOST_COPIES, countStacks(pool, stack))
    let to = 0
    for (let at = 0; at < live; at++) {
      const row = alive[at]!
      // Nothing that comes later is denser; and a row that another has replaced is not built on.
      if (worth[row]! + (length - end[row]!) * density <= worth[best]!) continue
      if (kept[Math.floor(end[row]! * scale)] !== row) continue
      alive[to++] = row
      const reach = end[row]! + stack.length
      if (reach > length) continue
      const copy = last[row] === index && row > 0 ? copies[row]! + 1 : 1
      if (copy > most) continue
      const target = Math.floor(reach * scale)
      const rival = kept[target]!
      const sum = worth[row]! + stack.worth
      if (rival >= 0 && worth[rival]! >= sum) continue
      if (made === MOST_BEGINNINGS || !affords(pool, row, stacks, stack)) continue
      worth[made] = sum
      end[made] = reach
      before[made] = row
      last[made] = index
      copies[made] = copy
      kept[target] = made
      if (sum > worth[best]!) best = made
      alive[live++] = made
      made++
    }
    live = to
  }
  return { width, stacks: listRow(best, stacks), worth: worth[best]! }
}
