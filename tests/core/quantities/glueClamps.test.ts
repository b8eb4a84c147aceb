import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches, type Length, toMillimetres } from '../../../src/core/measure/length.ts'
import { planClamps } from '../../../src/core/quantities/glueClamps.ts'
import { glue } from './shippedGlue.ts'

describe('planClamps', () => {
  const plan = (length: Length) => planClamps(length, inches(1), 'soft', glue.clamping)

  it('squeezes softwood with 100 to 150 psi, hardwood with 200 to 300 (maker’s gluing guide)', () => {
    expect(plan(inches(30)).pressure.low / 6894.757).toBeCloseTo(100, 3)
    expect(plan(inches(30)).pressure.high / 6894.757).toBeCloseTo(150, 3)
    const hard = planClamps(inches(30), inches(1), 'hard', glue.clamping)
    expect(hard.pressure.high / 6894.757).toBeCloseTo(300, 3)
    // 30 square inches at 100 psi are 3000 lb, over 4 clamps.
    expect(plan(inches(30)).count).toEqual({ low: 4, high: 5 })
    expect(plan(inches(30)).force.low / 4.4482216).toBeCloseTo(750, 1)
  })

  it('stands 8 to 12 in apart and 2 in from the ends at most, and needs no fewer for a longer joint', () => {
    const size = fc.integer({ min: 1_000_000, max: 3_000_000_000 }).map((count) => count as Length)
    fc.assert(
      fc.property(size, size, (a, b) => {
        const { count } = plan(a)
        expect(count.low).toBeLessThanOrEqual(count.high)
        const between = toMillimetres(a) - 2 * 50.8
        if (count.low > 1) expect(between / (count.low - 1)).toBeLessThanOrEqual(304.8)
        expect(plan(Math.max(a, b) as Length).count.low).toBeGreaterThanOrEqual(
          plan(Math.min(a, b) as Length).count.low,
        )
      }),
    )
    expect(() => plan(inches(0))).toThrow(RangeError)
  })
})
