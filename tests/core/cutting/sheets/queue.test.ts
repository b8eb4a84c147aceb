import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { RankedQueue } from '../../../../src/core/cutting/sheets/queue.ts'

describe('RankedQueue', () => {
  it('gives the highest rank first', () => {
    fc.assert(
      fc.property(fc.array(fc.integer()), (ranks) => {
        const queue = new RankedQueue()
        for (const [item, rank] of ranks.entries()) queue.push(item, rank)
        const out = ranks.map(() => ranks[queue.pop() ?? -1])
        expect(out).toEqual([...ranks].sort((a, b) => b - a))
        expect(queue.pop()).toBeUndefined()
      }),
      { seed: 1 },
    )
  })

  it('tells the highest rank waiting', () => {
    const queue = new RankedQueue()
    expect(queue.highest).toBe(Number.NEGATIVE_INFINITY)
    queue.push(1, 5)
    queue.push(2, 9)
    expect(queue.highest).toBe(9)
    expect(queue.size).toBe(2)
  })
})
