import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { liftFilter, liftingPeople, nioshLimit } from '../../../src/core/quantities/lift.ts'

describe('liftFilter', () => {
  // HSE, manual handling at work (INDG143): what twisting and often lifting take off.
  it.each([
    [{ twist: 46 }, 0.9],
    [{ twist: 91 }, 0.8],
    [{ perMinute: 1 }, 0.7],
    [{ perMinute: 2 }, 0.7],
    [{ perMinute: 5 }, 0.5],
    [{ perMinute: 8 }, 0.5],
    [{ perMinute: 13 }, 0.2],
    [{}, 1],
  ])('%o leaves %d of it', (lift, part) => {
    expect(liftFilter({ person: 'man', ...lift })).toBeCloseTo(25 * part, 9)
    expect(liftFilter({ person: 'woman', ...lift })).toBeCloseTo(16 * part, 9)
  })

  it('takes a sheet of 18 mm birch plywood, 36.7 kg, for two men and three women', () => {
    expect(liftingPeople(36_700, liftFilter({ person: 'man' }))).toBe(2)
    expect(liftingPeople(36_700, liftFilter({ person: 'woman' }))).toBe(3)
    expect(liftingPeople(0, 25)).toBe(1)
    expect(() => liftingPeople(1, 0)).toThrow(RangeError)
  })
})

describe('nioshLimit', () => {
  it('is 51 lb, 23 kg at its best (NIOSH 94-110)', () => {
    const best = nioshLimit({ horizontal: 25, vertical: 75, travel: 25 })
    expect(best).toBeCloseTo(23, 9)
    expect(Math.round(best / 0.45359237)).toBe(51)
  })

  it('agrees with the same equation in inches: 10/H, 1 - .0075 |V - 30|, .82 + 1.8/D', () => {
    const within = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true })
    fc.assert(
      fc.property(within(10, 24.5), within(0, 68), within(10, 65), (h, v, d) => {
        const inInches = 51 * (10 / h) * (1 - 0.0075 * Math.abs(v - 30)) * (0.82 + 1.8 / d)
        const limit = nioshLimit({ horizontal: h * 2.54, vertical: v * 2.54, travel: d * 2.54 }) / 0.45359237
        // The two sets of constants are rounded apart: 75 cm is 29.5 in, 25 cm is 9.8 and 23 kg is 50.7 lb.
        expect(Math.abs(limit / inInches - 1)).toBeLessThan(0.04)
      }),
      { numRuns: 2000 },
    )
  })

  it('allows less further out, and nothing out of reach', () => {
    const near = nioshLimit({ horizontal: 30, vertical: 75, travel: 50 })
    expect(nioshLimit({ horizontal: 50, vertical: 75, travel: 50 })).toBeLessThan(near)
    expect(nioshLimit({ horizontal: 30, vertical: 10, travel: 50 })).toBeLessThan(near)
    expect(
      nioshLimit({ horizontal: 30, vertical: 75, travel: 50, twist: 45, frequency: 0.9, coupling: 0.95 }),
    ).toBeCloseTo(near * (1 - 0.0032 * 45) * 0.9 * 0.95, 9)
    expect(nioshLimit({ horizontal: 64, vertical: 75, travel: 50 })).toBe(0)
  })
})
