import type { ShouldStop } from '../../problem.ts'
import type { Axis } from '../block.ts'
import type { Pattern } from '../pattern.ts'
import type { Random } from '../random.ts'
import { fillRow, type Row } from './row.ts'
import { countStacks, listStacks, type Stack, stackPattern, takeStacks } from './stack.ts'
import { listTiles, type Pool, type Room, type Tile } from './tile.ts'

/** A sheet, or a part of one, filled with rows. */
export interface RoomFill {
  readonly axis: Axis
  readonly rows: readonly Row[]
  readonly worth: number
  /** How many rows were worked out on the way. */
  readonly looks: number
}

/** How often a room is filled in either direction, and how many widths are tried for every row. */
export interface Effort {
  readonly turns: number
  readonly tries: number
}

/** How much narrower than its row a stack may be. */
const SLACK = 0.025

/** How many stacks, the densest, are listed for a width and considered for a row; the chance to pass one over. */
const LISTED = 300
const MOST_STACKS = 80
const BLINK = 0.1

/** Share of the room's width below which the next row is chosen together with the one after it. */
const LAST_TWO = 0.45

/** The rows of one room, chosen one after another. */
class Rows {
  private readonly pool: Pool
  private readonly room: Room
  private readonly random: Random
  private readonly tiles: readonly Tile[]
  private readonly narrowest: number
  private readonly known = new Map<number, readonly Stack[]>()
  looks = 0

  constructor(pool: Pool, room: Room, axis: Axis, random: Random) {
    this.pool = pool
    this.room = room
    this.random = random
    this.tiles = listTiles(pool, room, axis)
    this.narrowest = this.tiles[0]?.width ?? Number.POSITIVE_INFINITY
  }

  private stacksOf(width: number): readonly Stack[] {
    const known = this.known.get(width)
    if (known !== undefined) return known
    const stacks = listStacks(this.tiles, width * (1 - SLACK), width)
    stacks.sort((a, b) => b.worth / b.length - a.worth / a.length)
    const dense = stacks.length > LISTED ? stacks.slice(0, LISTED) : stacks
    this.known.set(width, dense)
    return dense
  }

  private best(width: number): Row {
    this.looks++
    const stacks: Stack[] = []
    for (const stack of this.stacksOf(width)) {
      if (this.random.next() < BLINK || countStacks(this.pool, stack) === 0) continue
      if (stacks.push(stack) === MOST_STACKS) break
    }
    return fillRow(this.pool, stacks, this.room.length, width)
  }

  /** Widths to try: those of large parts rather than of small ones, and all that is left. */
  private drawWidths(left: number, tries: number): Set<number> {
    const fitting = this.tiles.filter(
      (tile) => tile.width <= left && tile.columns === 1 && this.pool.left[tile.index >> 1]! >= tile.lines,
    )
    const widths = new Set<number>()
    if (fitting.length === 0) return widths
    for (let turn = 0; turn < tries; turn++) {
      const drawn = Array.from({ length: 4 }, () => fitting[this.random.below(fitting.length)]!)
      widths.add(drawn.reduce((one, other) => (other.worth > one.worth ? other : one)).width)
    }
    return widths.add(left)
  }

  /** The row, and what it makes of the width that it and the rows after it take up. */
  private judge(width: number, left: number): { row: Row; rate: number } {
    const row = this.best(width)
    const rest = left - width
    if (rest < this.narrowest) return { row, rate: row.worth / left }
    if (rest > this.room.width * LAST_TWO) return { row, rate: row.worth / width }
    takeStacks(this.pool, row.stacks, 1)
    const next = this.best(rest)
    takeStacks(this.pool, row.stacks, -1)
    return { row, rate: (row.worth + next.worth) / left }
  }

  private next(left: number, tries: number): Row | undefined {
    let best: { row: Row; rate: number } | undefined
    for (const width of this.drawWidths(left, tries)) {
      const judged = this.judge(width, left)
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
  effort: Effort,
  random: Random,
  shouldStop: ShouldStop,
): RoomFill => {
  let best: Omit<RoomFill, 'looks'> = { axis: 0, rows: [], worth: 0 }
  let looks = 0
  for (const axis of [0, 1] as const) {
    if (shouldStop()) break
    const [length, width] = axis === 0 ? [room.length, room.width] : [room.width, room.length]
    const filler = new Rows(pool, { length, width }, axis, random)
    for (let turn = 0; turn < effort.turns; turn++) {
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
