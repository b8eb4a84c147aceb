import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { shareCents } from '../../../src/core/group/shareCents.ts'

const sum = (numbers: readonly number[]) => numbers.reduce((all, each) => all + each, 0)
const cents = fc.integer({ min: 0, max: 10_000_000 })
const weights = fc.array(fc.double({ min: 0, max: 3e6, noNaN: true }), { minLength: 1, maxLength: 60 })

describe('shareCents', () => {
  it('adds up to the cent', () => {
    fc.assert(
      fc.property(cents, weights, (all, parts) => {
        const shares = shareCents(all, parts)
        expect(sum(shares)).toBe(all)
        expect(shares).toHaveLength(parts.length)
      }),
    )
  })

  it('is never a cent or more from the exact share', () => {
    fc.assert(
      fc.property(
        cents,
        fc.array(fc.integer({ min: 1, max: 1000 }), { minLength: 1, maxLength: 60 }),
        (all, parts) => {
          for (const [index, share] of shareCents(all, parts).entries())
            expect(Math.abs(share - (all * (parts[index] ?? 0)) / sum(parts))).toBeLessThan(1)
        },
      ),
    )
  })

  it('gives the heavier no less', () => {
    fc.assert(
      fc.property(
        cents,
        fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: 2, maxLength: 60 }),
        (all, parts) => {
          const heaviestFirst = parts.toSorted((a, b) => b - a)
          const shares = shareCents(all, heaviestFirst)
          for (const [index, share] of shares.entries())
            if (index > 0) expect(share).toBeLessThanOrEqual(shares[index - 1] ?? 0)
        },
      ),
    )
  })

  it.each([
    [100, [1, 1, 1], [34, 33, 33]],
    [101, [1, 1, 1], [34, 34, 33]],
    [1, [1, 1], [1, 0]],
    [0, [1, 2], [0, 0]],
    [7, [0, 0], [4, 3]],
    [10, [1, 0, 3], [3, 0, 7]],
  ])('shares %i by %j as %j', (all, parts, shares) => {
    expect(shareCents(all, parts)).toEqual(shares)
  })

  it('will not share with nobody, or by less than nothing', () => {
    expect(shareCents(0, [])).toEqual([])
    expect(() => shareCents(5, [])).toThrow(RangeError)
    expect(() => shareCents(5, [1, -1])).toThrow(RangeError)
  })
})
