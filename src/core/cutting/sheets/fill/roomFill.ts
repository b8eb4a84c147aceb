import type { ShouldStop } from '../../problem.ts'
import type { Axis } from '../block.ts'
import type { Pattern } from '../pattern.ts'
import type { Random } from '../random.ts'
import { fillRow, type Row, rowCeiling } from './row.ts'
import { countStacks, fitsRow, type Stack, stackPattern, takeStacks } from './stack.ts'
import type { StackBook, StackBooks } from './stackBook.ts'
import type { Pool, Room, Tile } from './tile.ts'

/** A sheet, or a part of one, filled with rows. */
export interface RoomFill {
  readonly axis: Axis
  readonly rows: readonly Row[]
  readonly worth: number
  /** How many rows were worked out on the way. */
  readonly looks: number
}

/** How often a room is filled in either direction, and how many widths are drawn for every row. */
export interface Effort {
  readonly turns: number
  readonly tries: number
}

/** With more tiles than this one turn is as good as several. */
const MANY_TILES = 1200

/** How many stacks, the densest, are considered for a row. */
const MOST_STACKS = 150

/** Share of the room's width below which the next row is chosen together with the one after it. */
const LAST_TWO = 0.45

/** How many tiles are drawn for a width to try; the one with the most worth counts. */
const DRAWS = 4

/** A width for the next row, and what no row so wide can pass. */
interface Option {
  readonly width: number
  readonly rate: number
}

/** The rows of one room, chosen one after another. */
class Rows {
  private readonly pool: Pool
  private readonly room: Room
  private readonly book: StackBook
  private readonly random: Random
  private readonly narrowest: number
  looks = 0

  constructor(pool: Pool, room: Room, book: StackBook, random: Random) {
    this.pool = pool
    this.room = room
    this.book = book
    this.random = random
    this.narrowest =
      book.single.find((tile) => this.fits(tile, room.width))?.width ?? Number.POSITIVE_INFINITY
  }

  private fits(tile: Tile, width: number): boolean {
    return (
      tile.width <= width && tile.length <= this.room.length && this.pool.left[tile.index >> 1]! >= tile.lines
    )
  }

  /** The densest stacks for a row that the pool has parts for. */
  private stacksFor(width: number): Stack[] {
    const stacks: Stack[] = []
    for (const stack of this.book.near(width)) {
      if (!fitsRow(stack, this.room.length, width) || countStacks(this.pool, stack) === 0) continue
      if (stacks.push(stack) === MOST_STACKS) break
    }
    return stacks
  }

  /** What no row so wide is worth more than. */
  private ceiling(width: number): number {
    return rowCeiling(this.pool, this.book.near(width), this.room.length, width)
  }

  private best(width: number): Row {
    this.looks++
    return fillRow(this.pool, this.stacksFor(width), this.room.length, width)
  }

  /** Widths to try: those of large parts rather than of small ones, and all that is left. */
  private drawWidths(left: number, tries: number): Set<number> {
    const fitting = this.book.single.filter((tile) => this.fits(tile, left))
    const widths = new Set<number>()
    if (fitting.length === 0) return widths
    for (let turn = 0; turn < tries; turn++) {
      const drawn = Array.from({ length: DRAWS }, () => fitting[this.random.below(fitting.length)]!)
      widths.add(drawn.reduce((one, other) => (other.worth > one.worth ? other : one)).width)
    }
    return widths.add(left)
  }

  /** The width that a row has to answer for, and whether the next row is chosen with it. */
  private shareOf(width: number, left: number): { share: number; withNext: boolean } {
    const rest = left - width
    if (rest < this.narrowest) return { share: left, withNext: false }
    return rest > this.room.width * LAST_TWO
      ? { share: width, withNext: false }
      : { share: left, withNext: true }
  }

  private option(width: number, left: number): Option {
    const { share, withNext } = this.shareOf(width, left)
    const next = withNext ? this.ceiling(left - width) : 0
    return { width, rate: (this.ceiling(width) + next) / share }
  }

  /** The row, and what it makes of the width that it and the rows after it take up. */
  private judge(width: number, left: number): { row: Row; rate: number } {
    const { share, withNext } = this.shareOf(width, left)
    const row = this.best(width)
    if (!withNext) return { row, rate: row.worth / share }
    takeStacks(this.pool, row.stacks, 1)
    const next = this.best(left - width)
    takeStacks(this.pool, row.stacks, -1)
    return { row, rate: (row.worth + next.worth) / share }
  }

  /** The best row of several widths, the most promising first, as long as they promise more than was found. */
  private next(left: number, tries: number): Row | undefined {
    const options = [...this.drawWidths(left, tries)].map((width) => this.option(width, left))
    let best: { row: Row; rate: number } | undefined
    for (const option of options.sort((a, b) => b.rate - a.rate)) {
      if (option.rate <= (best?.rate ?? 0)) break
      const judged = this.judge(option.width, left)
      if (judged.row.worth > 0 && judged.rate > (best?.rate ?? 0)) best = judged
    }
    return best?.row
  }

  /** Fills the width; the pool is as before afterwards. */
  fill(tries: number, shouldStop: ShouldStop): Row[] {
    const rows: Row[] = []
    let left = this.room.width
    while (left >= this.narrowest && !shouldStop()) {
      const row = this.next(left, tries)
      if (row === undefined) break
      takeStacks(this.pool, row.stacks, 1)
      rows.push(row)
      left -= row.width
    }
    for (const row of rows) takeStacks(this.pool, row.stacks, -1)
    return rows
  }
}

const worthOf = (rows: readonly Row[]): number => rows.reduce((sum, row) => sum + row.worth, 0)

/**
 * Fills a bare room with rows of parts that lie nearly flush, from a pool of many: the best of several fillings in
 * either direction, each row the best of several widths. Leaves the pool as it was; stopped, it may fill less.
 */
export const fillRoom = (
  pool: Pool,
  room: Room,
  books: StackBooks,
  effort: Effort,
  random: Random,
  shouldStop: ShouldStop,
): RoomFill => {
  let best: Omit<RoomFill, 'looks'> = { axis: 0, rows: [], worth: 0 }
  let looks = 0
  for (const axis of [0, 1] as const) {
    if (shouldStop()) break
    const [length, width] = axis === 0 ? [room.length, room.width] : [room.width, room.length]
    const book = books.open(pool, axis)
    const filler = new Rows(pool, { length, width }, book, random)
    const turns = book.size > MANY_TILES ? 1 : effort.turns
    for (let turn = 0; turn < turns; turn++) {
      const rows = filler.fill(effort.tries, shouldStop)
      const worth = worthOf(rows)
      if (worth > best.worth) best = { axis, rows, worth }
    }
    looks += filler.looks
  }
  return { ...best, looks }
}

const join = (patterns: readonly Pattern[], along: Axis): Pattern | undefined =>
  patterns.reduce<Pattern | undefined>(
    (joined, pattern) => (joined === undefined ? pattern : { along, first: joined, second: pattern }),
    undefined,
  )

/** The filling as a pattern; undefined when it is empty. */
export const fillPattern = ({ axis, rows }: RoomFill): Pattern | undefined => {
  const patterns = rows.flatMap((row) => {
    const stacks = row.stacks.map((stack) => stackPattern(stack, axis))
    return join(stacks, axis) ?? []
  })
  return join(patterns, axis === 0 ? 1 : 0)
}
