import type { Axis } from '../block.ts'
import type { Pattern } from '../pattern.ts'
import { Densest } from './densest.ts'
import { type Pool, type Tile, type TileList, tilePattern } from './tile.ts'

/** One tile or two of nearly the same length across the row, as long as the longer of them. */
export interface Stack {
  readonly length: number
  readonly width: number
  readonly worth: number
  readonly first: Tile
  readonly second: Tile | undefined
}

/** What a pair of tiles of unlike lengths may lose of its area. */
const MOST_LOSS = 0.03

const alone = (tile: Tile): Stack => ({
  length: tile.length,
  width: tile.width,
  worth: tile.worth,
  first: tile,
  second: undefined,
})

const pair = (first: Tile, second: Tile): Stack => ({
  length: Math.max(first.length, second.length),
  width: first.width + second.width,
  worth: first.worth + second.worth,
  first,
  second,
})

/** Index of the first width that is at least so large; `widths` ascend. */
const findWidth = (widths: Float64Array, least: number): number => {
  let low = 0
  let high = widths.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (widths[middle]! < least) low = middle + 1
    else high = middle
  }
  return low
}

/** How many stacks are listed for a width. */
const LISTED = 300
const densest = new Densest(LISTED)

const sameParts = (first: Tile, second: Tile): boolean => first.index >> 1 === second.index >> 1

/** The densest stacks between two widths, the densest first: those with the most worth for the length that they take. */
export const listStacks = (
  { tiles, lengths, widths, worths }: TileList,
  least: number,
  most: number,
): Stack[] => {
  const count = tiles.length
  for (let at = findWidth(widths, least); at < count && widths[at]! <= most; at++)
    densest.add(at, -1, worths[at]! / lengths[at]!)
  let from = findWidth(widths, least - (widths[0] ?? 0))
  for (let low = 0; low < count && 2 * widths[low]! <= most; low++) {
    const width = widths[low]!
    const length = lengths[low]!
    while (from > 0 && widths[from - 1]! + width >= least) from--
    for (let high = Math.max(from, low + 1); high < count; high++) {
      const other = lengths[high]!
      const both = width + widths[high]!
      if (both > most) break
      const longer = Math.max(length, other)
      const loss = length < other ? (other - length) * width : (length - other) * widths[high]!
      if (loss > MOST_LOSS * longer * both || sameParts(tiles[low]!, tiles[high]!)) continue
      densest.add(low, high, (worths[low]! + worths[high]!) / longer)
    }
  }
  return densest.take((first, second) =>
    second < 0 ? alone(tiles[first]!) : pair(tiles[first]!, tiles[second]!),
  )
}

const partsOf = (tile: Tile): number => tile.columns * tile.lines

/** How many parts of a type a stack takes. */
export const countIn = (stack: Stack, part: number): number =>
  (stack.first.index >> 1 === part ? partsOf(stack.first) : 0) +
  (stack.second !== undefined && stack.second.index >> 1 === part ? partsOf(stack.second) : 0)

/** Whether a stack goes in a row of that size. */
export const fitsRow = (stack: Stack, length: number, width: number): boolean =>
  stack.width <= width && stack.length <= length

/** How many such stacks the pool has parts for. */
export const countStacks = (pool: Pool, { first, second }: Stack): number => {
  const firsts = Math.floor(pool.left[first.index >> 1]! / partsOf(first))
  if (second === undefined) return firsts
  return Math.min(firsts, Math.floor(pool.left[second.index >> 1]! / partsOf(second)))
}

const takeTile = (pool: Pool, tile: Tile, times: number): void => {
  const part = tile.index >> 1
  pool.left[part] = pool.left[part]! - times * partsOf(tile)
}

/** Takes the parts of stacks out of the pool, or puts them back where `times` is -1. */
export const takeStacks = (pool: Pool, stacks: readonly Stack[], times: 1 | -1): void => {
  for (const { first, second } of stacks) {
    takeTile(pool, first, times)
    if (second !== undefined) takeTile(pool, second, times)
  }
}

/** A stack as a pattern, in a row that runs along `axis`. */
export const stackPattern = ({ first, second }: Stack, axis: Axis): Pattern =>
  second === undefined
    ? tilePattern(first, axis)
    : { along: axis === 0 ? 1 : 0, first: tilePattern(first, axis), second: tilePattern(second, axis) }
