import { describe, expect, it } from 'vitest'
import { StackBooks } from '../../../../../src/core/cutting/sheets/fill/stackBook.ts'
import { listStacks } from '../../../../../src/core/cutting/sheets/fill/stack.ts'
import { listTiles, readTiles, type Tile } from '../../../../../src/core/cutting/sheets/fill/tile.ts'
import { jobOf, poolOf } from './pools.ts'

const same = (one: Tile | undefined, other: Tile | undefined): boolean =>
  one?.index === other?.index && one?.columns === other?.columns && one?.lines === other?.lines

const job = jobOf(
  [
    [30, 20, 8],
    [25, 12, 8],
    [44, 9, 4],
  ],
  120,
  97,
)

describe('StackBooks', () => {
  it('keeps a book while the pool is part of what it was made for and not far smaller', () => {
    const books = new StackBooks(job)
    const pool = poolOf(job)
    const book = books.open(pool, 0)
    expect(books.open({ ...pool, left: Int32Array.of(4, 4, 2) }, 0)).toBe(book)
    expect(books.open(pool, 1)).not.toBe(book)
    expect(books.open(pool, 0)).toBe(book)
  })

  it('makes a new one for far fewer parts, and for others', () => {
    const books = new StackBooks(job)
    const pool = poolOf(job)
    const full = books.open(pool, 0)
    const half = books.open({ ...pool, left: Int32Array.of(8, 1, 0) }, 0)
    expect(half).not.toBe(full)
    expect(half.size).toBeLessThan(full.size)
    expect(books.open({ ...pool, left: Int32Array.of(7, 2, 0) }, 0)).not.toBe(half)
  })

  it('lists for a width all stacks that fill a row so wide, though some are a little wider', () => {
    const pool = poolOf(job)
    const book = new StackBooks(job).open(pool, 0)
    for (const width of [12, 20, 32, 41.5, 97]) {
      const stacks = book.near(width)
      expect(book.near(width)).toBe(stacks)
      for (const stack of stacks) {
        expect(stack.width).toBeLessThan(width + 120 / 250 + 1e-6)
        expect(stack.width).toBeGreaterThan(width * 0.94)
      }
    }
    for (let width = 9; width <= 97; width++) {
      const exact = listStacks(readTiles(listTiles(pool, { length: 120, width: 97 }, 0)), width, width)
      for (const { first, second } of exact)
        expect(book.near(width).some((stack) => same(stack.first, first) && same(stack.second, second))).toBe(
          true,
        )
    }
    expect(book.single.every((tile) => tile.columns === 1)).toBe(true)
  })
})
