import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches, type Length, toInches, ZERO } from '../../../src/core/measure/length.ts'
import { type Spacing, type SpacingAsked, spaceEvenly } from '../../../src/core/panelling/spacing.ts'
import { lengths } from './specs.ts'

const spaced = (asked: SpacingAsked): Spacing => {
  const found = spaceEvenly(asked)
  if (found.status === 'impossible') throw new Error(found.kind)
  return found
}

const pieces = fc.record({
  span: lengths(100, 3000),
  piece: lengths(5, 90),
  ends: fc.constantFrom('gaps' as const, 'flush' as const),
})

describe('spaceEvenly', () => {
  it('agrees with a published rail of 72 in: 13 pieces, gaps 52.5 / 14 = 3.75 in', () => {
    // ehow.com 6210555, balusters 1 1/2 in wide about 4 in apart.
    const found = spaced({ span: inches(72), piece: inches(3, 2), gap: inches(4), ends: 'gaps' })
    expect([found.count, found.gaps, found.gap]).toEqual([13, 14, inches(15, 4)])
  })

  it('agrees with a published rail of 52 in: ten pieces leave 37 / 11 = 3.36 in', () => {
    // ironfurnit.blogspot.com. It rounds 9.45 up to ten; nine already keep the gap under 4 in.
    const ten = spaced({ span: inches(52), piece: inches(3, 2), count: 10, ends: 'gaps' })
    expect(toInches(ten.gap)).toBeCloseTo(3.36, 2)
    const asked = spaced({ span: inches(52), piece: inches(3, 2), gap: inches(4), ends: 'gaps' })
    expect([asked.count, asked.gap]).toEqual([9, inches(77, 20)])
  })

  it('does not repeat a published slip: 15 two-inch slats in 75 in are 2 13/16 in apart, not 3', () => {
    // ehow.co.uk 5806309 prints 3 in, which would take 78 in.
    const found = spaced({ span: inches(75), piece: inches(2), count: 15, ends: 'gaps' })
    expect(found.gap).toBe(inches(45, 16))
    expect(found.gap).not.toBe(inches(3))
    expect(spaced({ span: inches(75), piece: inches(2), gap: inches(3), ends: 'gaps' })).toEqual(found)
  })

  it('tells gaps at the ends from pieces at the ends: six of 3 1/2 in over 36 in', () => {
    const asked = { span: inches(36), piece: inches(7, 2), count: 6 }
    expect(spaced({ ...asked, ends: 'gaps' })).toMatchObject({ gaps: 7, gap: inches(15, 7) })
    expect(spaced({ ...asked, ends: 'flush' })).toMatchObject({ gaps: 5, gap: inches(3) })
  })

  it('fills the span when it is walked from end to end', () => {
    fc.assert(
      fc.property(pieces, fc.integer({ min: 2, max: 40 }), (asked, count) => {
        const found = spaceEvenly({ ...asked, count })
        if (found.status === 'impossible') {
          expect(count * asked.piece).toBeGreaterThan(asked.span)
          return
        }
        // In units of 1 / gaps of a nanometre every gap is whole, so the walk is exact.
        const parts = BigInt(found.gaps)
        const open = BigInt(asked.span) - BigInt(count) * BigInt(asked.piece)
        let at = asked.ends === 'gaps' ? open : 0n
        for (const start of found.starts) {
          const off = BigInt(start) * parts - at
          expect((off < 0n ? -off : off) * 2n <= parts).toBe(true)
          at += BigInt(asked.piece) * parts + open
        }
        expect(at).toBe(BigInt(asked.span) * parts + (asked.ends === 'gaps' ? 0n : open))
        expect(Math.abs(found.gap - Number(open) / found.gaps)).toBeLessThanOrEqual(0.5)
      }),
    )
  })

  it('never leaves a gap wider than asked, and one piece fewer would', () => {
    fc.assert(
      fc.property(pieces, lengths(3, 300), (asked, gap) => {
        const found = spaceEvenly({ ...asked, gap })
        const wide = (count: number) => {
          const gaps = asked.ends === 'gaps' ? count + 1 : count - 1
          return BigInt(asked.span) - BigInt(count) * BigInt(asked.piece) > BigInt(gap) * BigInt(gaps)
        }
        if (found.status === 'impossible') {
          expect(found.kind).toBe('noCount')
          // Whatever fits leaves too wide a gap.
          expect(wide(Math.floor(asked.span / asked.piece))).toBe(true)
          return
        }
        expect(wide(found.count)).toBe(false)
        const fewest = asked.ends === 'gaps' ? 0 : 2
        if (found.count > fewest) expect(wide(found.count - 1)).toBe(true)
      }),
      { numRuns: 1000 },
    )
  })

  it('offers the nearest wider spacing where no count does', () => {
    // Three of 3 in leave 1 in over; no count brings 10 in to gaps of 1/8 in.
    const found = spaceEvenly({ span: inches(10), piece: inches(3), gap: inches(1, 8), ends: 'flush' })
    expect(found).toMatchObject({
      status: 'impossible',
      kind: 'noCount',
      fewer: { count: 3, gap: inches(1, 2) },
    })
    const long = spaceEvenly({ span: inches(2), piece: inches(3), gap: inches(1), ends: 'flush' })
    expect(long).toEqual({ status: 'impossible', kind: 'noCount', fewer: undefined })
  })

  it('needs no piece at all where the span is no wider than the gap', () => {
    const found = spaced({ span: inches(3), piece: inches(1), gap: inches(4), ends: 'gaps' })
    expect(found).toEqual({ status: 'spaced', count: 0, gaps: 1, gap: inches(3), starts: [] })
  })

  it('lays pieces edge to edge where the gap is nothing', () => {
    const asked = { span: inches(12), piece: inches(3), gap: ZERO } as const
    expect(spaced({ ...asked, ends: 'gaps' })).toMatchObject({ count: 4, gap: 0 })
    expect(spaced({ ...asked, ends: 'flush' })).toMatchObject({ count: 4, gap: 0 })
    const short = spaceEvenly({ ...asked, span: inches(13), ends: 'flush' })
    expect(short).toMatchObject({ kind: 'noCount', fewer: { count: 4, gap: inches(1, 3) } })
  })

  it('lets one flush piece fill its span and no more', () => {
    const one = { piece: inches(3), count: 1, ends: 'flush' } as const
    expect(spaced({ ...one, span: inches(3) })).toMatchObject({ count: 1, gaps: 0, gap: 0, starts: [0] })
    expect(spaceEvenly({ ...one, span: inches(4) })).toEqual({ status: 'impossible', kind: 'alone' })
  })

  it('says how many fit where there are too many', () => {
    const found = spaceEvenly({ span: inches(10), piece: inches(3), count: 4, ends: 'gaps' })
    expect(found).toEqual({ status: 'impossible', kind: 'tooMany', most: 3 })
  })

  it('is the same spacing at any scale', () => {
    fc.assert(
      fc.property(pieces, lengths(3, 300), fc.integer({ min: 2, max: 9 }), (asked, gap, by) => {
        const grown = { ...asked, span: (asked.span * by) as Length, piece: (asked.piece * by) as Length }
        const [one, other] = [
          spaceEvenly({ ...asked, gap }),
          spaceEvenly({ ...grown, gap: (gap * by) as Length }),
        ]
        expect(other.status).toBe(one.status)
        if (one.status === 'spaced' && other.status === 'spaced') expect(other.count).toBe(one.count)
      }),
    )
  })

  it.each([
    { span: ZERO, piece: inches(1), count: 2 },
    { span: inches(9), piece: ZERO, count: 2 },
    { span: inches(9), piece: inches(1), count: 0 },
    { span: inches(9), piece: inches(1), count: 1.5 },
    { span: inches(9), piece: inches(1), gap: inches(-1) },
    { span: inches(9), piece: inches(1) },
  ])('has no answer for %o', (asked) => {
    expect(spaceEvenly({ ...asked, ends: 'gaps' })).toEqual({ status: 'impossible', kind: 'notPositive' })
  })
})
