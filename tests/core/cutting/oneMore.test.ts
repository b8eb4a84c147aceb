import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { oneMore } from '../../../src/core/cutting/oneMore.ts'

const whole = (max: number, min = 1) => fc.integer({ min, max })

/** Length that `count` pieces take, one kerf between neighbours: counted out piece by piece. */
function taken(count: number, size: number, kerf: number): number {
  let length = 0
  for (let piece = 0; piece < count; piece += 1) length += (piece > 0 ? kerf : 0) + size
  return length
}

describe('one piece more', () => {
  it('fits are the most that go in, and one more goes in at the size told but not at one unit over', () => {
    fc.assert(
      fc.property(whole(5000), whole(900), whole(40, 0), (room, size, kerf) => {
        const { fits, at } = oneMore(room, size, kerf)
        expect(taken(fits, size, kerf)).toBeLessThanOrEqual(room)
        expect(taken(fits + 1, size, kerf)).toBeGreaterThan(room)
        expect(at).toBeLessThan(size)
        if (at <= 0) return
        expect(taken(fits + 1, at, kerf)).toBeLessThanOrEqual(room)
        expect(taken(fits + 1, at + 1, kerf)).toBeGreaterThan(room)
      }),
    )
  })

  it('two out of 48 in at a kerf of 1/8 in are 23 15/16 in each', () => {
    // In 1/16 in, by hand: 48 in are 768; less one kerf of 2 they are 766, and half of that is 383, which is 23 15/16 in.
    expect(oneMore(768, 384, 2)).toEqual({ fits: 1, at: 383 })
  })
})
