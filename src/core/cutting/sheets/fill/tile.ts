import type { Axis } from '../block.ts'
import type { Sizes } from '../packing.ts'
import type { Pattern } from '../pattern.ts'

/** Parts that may be laid, and what one of each counts: its area, more for parts that are hard to place. */
export interface Pool {
  readonly sizes: Sizes
  /** How many of each part type. */
  readonly left: Int32Array
  readonly worth: Float64Array
}

/** Equal parts side by side, `columns` along the row by `lines` across it. Sizes as seen along the row. */
export interface Tile {
  /** As in `Sizes`. */
  readonly index: number
  readonly columns: number
  readonly lines: number
  readonly length: number
  readonly width: number
  readonly worth: number
}

/** Most parts of one tile, and of one that has several lines and columns. */
const MOST_LINE = 12
const MOST_GRID = 8

const tilesOf = (pool: Pool, index: number, length: number, width: number, room: Room): Tile[] => {
  const left = pool.left[index >> 1]!
  const worth = pool.worth[index >> 1]!
  const tiles: Tile[] = []
  for (let lines = 1; lines <= Math.min(left, MOST_LINE) && lines * width <= room.width; lines++)
    for (let columns = 1; columns * lines <= left && columns * length <= room.length; columns++) {
      if (columns > MOST_LINE || (lines > 1 && columns > 1 && columns * lines > MOST_GRID)) break
      const count = columns * lines
      tiles.push({
        index,
        columns,
        lines,
        length: columns * length,
        width: lines * width,
        worth: count * worth,
      })
    }
  return tiles
}

/** What a row may take up at most: along it and across it. */
export interface Room {
  readonly length: number
  readonly width: number
}

/** All tiles that fit a room, the narrowest first. `axis`: the side of the sheet along which rows run. */
export const listTiles = (pool: Pool, room: Room, axis: Axis): Tile[] => {
  const { along, across } = pool.sizes
  const [lengths, widths] = axis === 0 ? [along, across] : [across, along]
  const tiles: Tile[] = []
  lengths.forEach((length, index) => {
    if (pool.left[index >> 1]! > 0 && Number.isFinite(length))
      tiles.push(...tilesOf(pool, index, length, widths[index]!, room))
  })
  return tiles.sort((a, b) => a.width - b.width)
}

/** Tiles, the narrowest first, and their sizes in a form for quick looping. */
export interface TileList {
  readonly tiles: readonly Tile[]
  readonly lengths: Float64Array
  readonly widths: Float64Array
  readonly worths: Float64Array
}

/** Reads the sizes of tiles, the narrowest first. */
export const readTiles = (tiles: readonly Tile[]): TileList => ({
  tiles,
  lengths: Float64Array.from(tiles, (tile) => tile.length),
  widths: Float64Array.from(tiles, (tile) => tile.width),
  worths: Float64Array.from(tiles, (tile) => tile.worth),
})

const repeat = (pattern: Pattern, times: number, along: Axis): Pattern => {
  let all = pattern
  for (let turn = 1; turn < times; turn++) all = { along, first: all, second: pattern }
  return all
}

/** A tile as a pattern. */
export const tilePattern = (tile: Tile, axis: Axis): Pattern =>
  repeat(repeat({ index: tile.index }, tile.columns, axis), tile.lines, axis === 0 ? 1 : 0)
