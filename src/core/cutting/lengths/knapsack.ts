import type { ShouldStop } from '../problem.ts'

/** The active types of one knapsack problem, longest first, in parallel arrays; and the best of the rest. */
export interface Table {
  /** How many types take part. */
  count: number
  readonly types: Int32Array
  readonly sizes: Float64Array
  readonly values: Float64Array
  readonly limits: Int32Array
  /** Row k: the most that types k and after can be worth in each room; a bound when `grain` is above 1. */
  readonly best: Float64Array
  /** Cells in a row. */
  readonly width: number
  /** Units of the task in one cell: sizes are rounded down, so that nothing that fits is missed. */
  readonly grain: number
}

/** Cells of a table: 16 MB of numbers, and a few milliseconds to fill. */
const MOST_CELLS = 2_000_000

/** Cells filled before it is asked again whether to stop. */
const CELLS_UNASKED = 200_000

/** A table for up to `types` types in rooms up to `capacity`. */
export function createTable(types: number, capacity: number): Table {
  const cells = Math.max(64, Math.floor(MOST_CELLS / (types + 1)))
  const grain = Math.max(1, Math.ceil((capacity + 1) / cells))
  const width = Math.floor(capacity / grain) + 1
  return {
    count: 0,
    types: new Int32Array(types),
    sizes: new Float64Array(types),
    values: new Float64Array(types),
    limits: new Int32Array(types),
    best: new Float64Array((types + 1) * width),
    width,
    grain,
  }
}

function activate(
  table: Table,
  sizes: Float64Array,
  values: Float64Array,
  limits: Int32Array,
  least: number,
): void {
  table.count = 0
  const longest = table.width * table.grain - 1
  for (let type = 0; type < sizes.length; type++) {
    if (values[type]! < least || limits[type]! <= 0 || sizes[type]! > longest) continue
    const place = table.count++
    table.types[place] = type
    table.sizes[place] = sizes[type]!
    table.values[place] = values[type]!
    table.limits[place] = limits[type]!
  }
}

function addOnce(best: Float64Array, from: number, width: number, size: number, value: number): void {
  for (let cell = from + width - 1; cell >= from + size; cell--) {
    const worth = best[cell - size]! + value
    if (worth > best[cell]!) best[cell] = worth
  }
}

function addFreely(best: Float64Array, from: number, width: number, size: number, value: number): void {
  for (let cell = from + size; cell < from + width; cell++) {
    const worth = best[cell - size]! + value
    if (worth > best[cell]!) best[cell] = worth
  }
}

/** Up to `limit` copies as single things of 1, 2, 4, ... copies and the rest. */
function addLimited(table: Table, from: number, size: number, value: number, limit: number): void {
  let left = limit
  for (let bundle = 1; left > 0 && bundle * size < table.width; bundle *= 2) {
    const copies = Math.min(bundle, left)
    addOnce(table.best, from, table.width, copies * size, copies * value)
    left -= copies
  }
}

function fillRow(table: Table, row: number): void {
  const { best, width, grain } = table
  const from = row * width
  best.copyWithin(from, from + width, from + 2 * width)
  const size = Math.floor(table.sizes[row]! / grain)
  const value = table.values[row]!
  const limit = table.limits[row]!
  if (size === 0) for (let cell = from; cell < from + width; cell++) best[cell] = best[cell]! + limit * value
  else if ((limit + 1) * size >= width) addFreely(best, from, width, size, value)
  else addLimited(table, from, size, value, limit)
}

/**
 * Fills the table for these values (whole numbers, so that every sum is exact) and limits by type, leaving out types
 * worth less than `least`. False when it was stopped half-way.
 */
export function fillTable(
  table: Table,
  sizes: Float64Array,
  values: Float64Array,
  limits: Int32Array,
  shouldStop: ShouldStop,
  least = 1,
): boolean {
  activate(table, sizes, values, limits, least)
  table.best.fill(0, table.count * table.width, (table.count + 1) * table.width)
  const between = Math.ceil(CELLS_UNASKED / table.width)
  for (let row = table.count - 1; row >= 0; row--) {
    if (row % between === 0 && shouldStop()) return false
    fillRow(table, row)
  }
  return true
}

/** The most that types from `row` on are worth in `room`; a bound on it when the table is coarse. */
export const worthFrom = (table: Table, row: number, room: number): number =>
  table.best[row * table.width + Math.floor(room / table.grain)]!
