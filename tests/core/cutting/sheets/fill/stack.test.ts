import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  countIn,
  countStacks,
  listStacks,
  takeStacks,
} from '../../../../../src/core/cutting/sheets/fill/stack.ts'
import { listTiles, readTiles } from '../../../../../src/core/cutting/sheets/fill/tile.ts'
import { jobOf, poolOf, type Rectangle } from './pools.ts'

const side = fc.integer({ min: 5, max: 60 })
const parts = fc.array(fc.tuple(side, side, fc.integer({ min: 1, max: 4 })), { minLength: 1, maxLength: 8 })

const listed = (rectangles: readonly Rectangle[], least: number, most: number) => {
  const job = jobOf([...rectangles, [1, 1, 1]], 120, 97)
  const pool = poolOf(job)
  const tiles = listTiles(pool, { length: 120, width: 97 }, 0)
  return { pool, tiles, stacks: listStacks(readTiles(tiles), least, most) }
}

describe('listStacks', () => {
  it('lists every tile and every pair of nearly equal length between two widths, the densest first', () => {
    fc.assert(
      fc.property(parts, fc.integer({ min: 20, max: 90 }), (rectangles, most) => {
        const least = most * 0.9
        const { tiles, stacks } = listed(rectangles, least, most)
        const within = (width: number) => width >= least && width <= most
        const alone = tiles.filter((tile) => within(tile.width)).length
        // Written anew from what a pair may lose: 3 % of the rectangle around it.
        let pairs = 0
        for (const [index, one] of tiles.entries())
          for (const other of tiles.slice(index + 1)) {
            if (!within(one.width + other.width) || one.index >> 1 === other.index >> 1) continue
            const around = Math.max(one.length, other.length) * (one.width + other.width)
            const inside = one.length * one.width + other.length * other.width
            if (around - inside <= 0.03 * around) pairs++
          }
        expect(stacks.length).toBe(Math.min(300, alone + pairs))
        const densities = stacks.map((stack) => stack.worth / stack.length)
        expect(densities).toEqual([...densities].sort((a, b) => b - a))
      }),
      { seed: 1, numRuns: 60 },
    )
  })
})

describe('takeStacks', () => {
  it('takes what a stack holds, as often as the pool has parts for it, and gives it back', () => {
    const { pool, stacks } = listed(
      [
        [30, 20, 3],
        [30, 25, 5],
        [12, 45, 2],
      ],
      40,
      45,
    )
    expect(stacks.length).toBeGreaterThan(3)
    for (const stack of stacks) {
      const before = [...pool.left]
      const times = countStacks(pool, stack)
      expect(times).toBeGreaterThan(0)
      for (let turn = 0; turn < times; turn++) takeStacks(pool, [stack], 1)
      expect(countStacks(pool, stack)).toBe(0)
      expect([...pool.left]).toEqual(before.map((count, part) => count - times * countIn(stack, part)))
      for (let turn = 0; turn < times; turn++) takeStacks(pool, [stack], -1)
      expect([...pool.left]).toEqual(before)
    }
  })
})
