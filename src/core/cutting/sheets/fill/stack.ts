import type { Axis } from '../block.ts'
import type { Pattern } from '../pattern.ts'
import { type Pool, type Tile, tilePattern } from './tile.ts'

/** One tile or two of nearly the same length across the row, as long as the longer of them. */
export interface Stack {
  readonly length: number
  readonly width: number
  readonly worth: number
  readonly first: Tile
  readonly second: Tile | undefined
}

/** What a pair of tiles of unlike lengths may lose of its area. */
const MOST_LOSS = 0.01

const alone = (tile: Tile): Stack => ({
  length: tile.length,
  width: tile.width,
  worth: tile.worth,
  first: tile,
  second: undefined,
})

const pair = (first: Tile, second: Tile): Stack | undefined => {
  const length = Math.max(first.length, second.length)
  const width = first.width + second.width
  const narrower = first.length < second.length ? first.width : second.width
  if (Math.abs(first.length - second.length) * narrower > MOST_LOSS * length * width) return undefined
  if (first.index >> 1 === second.index >> 1) return undefined
  return { length, width, worth: first.worth + second.worth, first, second }
}

/** Index of the first tile that is at least so wide; `tiles` are in order of their widths. */
const findWidth = (tiles: readonly Tile[], width: number): number => {
  let low = 0
  let high = tiles.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (tiles[middle]!.width < width) low = middle + 1
    else high = middle
  }
  return low
}

/** All stacks between two widths. `tiles`: the narrowest first. */
export const listStacks = (tiles: readonly Tile[], least: number, most: number): Stack[] => {
  const stacks: Stack[] = []
  for (let at = findWidth(tiles, least); at < tiles.length && tiles[at]!.width <= most; at++)
    stacks.push(alone(tiles[at]!))
  let from = findWidth(tiles, least - (tiles[0]?.width ?? 0))
  for (let low = 0; low < tiles.length && 2 * tiles[low]!.width <= most; low++) {
    const first = tiles[low]!
    while (from > 0 && tiles[from - 1]!.width + first.width >= least) from--
    for (let high = Math.max(from, low + 1); high < tiles.length; high++) {
      const second = tiles[high]!
      if (first.width + second.width > most) break
      const both = pair(first, second)
      if (both !== undefined) stacks.push(both)
    }
  }
  return stacks
}

const partsOf = (tile: Tile): number => tile.columns * tile.lines

/** How many parts of a type a stack takes. */
export const countIn = (stack: Stack, part: number): number =>
  (stack.first.index >> 1 === part ? partsOf(stack.first) : 0) +
  (stack.second !== undefined && stack.second.index >> 1 === part ? partsOf(stack.second) : 0)

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
