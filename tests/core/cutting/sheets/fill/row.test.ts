import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fillRow, rowCeiling } from '../../../../../src/core/cutting/sheets/fill/row.ts'
import { countIn, type Stack } from '../../../../../src/core/cutting/sheets/fill/stack.ts'
import type { Tile } from '../../../../../src/core/cutting/sheets/fill/tile.ts'
import { jobOf, poolOf, type Rectangle } from './pools.ts'

const LENGTH = 120
const WIDTH = 20

const side = fc.integer({ min: 7, max: 60 })
const parts = fc.uniqueArray(
  fc.tuple(side, fc.integer({ min: 16, max: 20 }), fc.integer({ min: 1, max: 3 })),
  {
    minLength: 1,
    maxLength: 5,
    selector: ([length, width]) => `${Math.min(length, width)} ${Math.max(length, width)}`,
  },
)

/** A stack of one part each, the densest first, none turned. */
const stacksOf = (rectangles: readonly Rectangle[]): { job: ReturnType<typeof jobOf>; stacks: Stack[] } => {
  const job = jobOf(rectangles, LENGTH + 1, LENGTH)
  const stacks = rectangles.map(([length, width]): Stack => {
    const part = job.parts.findIndex(
      (type) => type.length === Math.max(length, width) && type.width === Math.min(length, width),
    )
    const index = 2 * part + (width > length ? 1 : 0)
    const worth = length * width
    const first: Tile = { index, columns: 1, lines: 1, length, width, worth }
    return { length, width, worth, first, second: undefined }
  })
  return { job, stacks: stacks.sort((a, b) => b.worth / b.length - a.worth / a.length) }
}

/** The most worth of a row by trying every number of every stack. */
const most = (stacks: readonly Stack[], counts: readonly number[], room: number, from = 0): number => {
  const stack = stacks[from]
  if (stack === undefined) return 0
  let best = 0
  for (let count = 0; count <= counts[from]! && count * stack.length <= room; count++)
    best = Math.max(best, count * stack.worth + most(stacks, counts, room - count * stack.length, from + 1))
  return best
}

describe('fillRow', () => {
  it('comes within a two-thousandth of the most that any row is worth, and takes no more parts than there are', () => {
    fc.assert(
      fc.property(parts, (rectangles) => {
        const { job, stacks } = stacksOf(rectangles)
        const pool = poolOf(job)
        const row = fillRow(pool, stacks, LENGTH, WIDTH)
        const counts = stacks.map((stack) => pool.left[stack.first.index >> 1]!)
        const best = most(stacks, counts, LENGTH)
        expect(row.worth).toBeLessThanOrEqual(best)
        expect(row.worth).toBeGreaterThanOrEqual(0.9995 * best)
        expect(best).toBeLessThanOrEqual(rowCeiling(pool, stacks, LENGTH, WIDTH) * (1 + 1e-12))
        expect(row.stacks.reduce((sum, stack) => sum + stack.length, 0)).toBeLessThanOrEqual(LENGTH)
        expect(row.stacks.reduce((sum, stack) => sum + stack.worth, 0)).toBe(row.worth)
        for (const [part, { count }] of job.parts.entries())
          expect(row.stacks.reduce((sum, stack) => sum + countIn(stack, part), 0)).toBeLessThanOrEqual(count)
      }),
      { seed: 1 },
    )
  })

  it('is empty where no stack is given', () => {
    const { job } = stacksOf([[10, 18, 2]])
    expect(fillRow(poolOf(job), [], LENGTH, WIDTH)).toEqual({ width: WIDTH, stacks: [], worth: 0 })
  })
})
