import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches, type Length, toInches, ZERO } from '../../../src/core/measure/length.ts'
import { diagonalDifference, outOfSquare, type Squareness } from '../../../src/core/panelling/squareness.ts'
import { lengths } from './specs.ts'

const measured = (length: Length, width: Length, difference: Length): Squareness => {
  const found = outOfSquare({ length, width, difference })
  if (found.status === 'impossible') throw new Error('impossible')
  return found
}

/** Angle of a lean of `rise` over `run`, degrees. */
const leaning = (rise: number, run: number): number => (Math.atan(rise / run) * 180) / Math.PI

describe('outOfSquare', () => {
  it('finds the 1/8 in that PS 1 prints for a 4 x 8 ft sheet square within 1/64 in per foot', () => {
    // US Voluntary Product Standard PS 1-19, size tolerances; printed to an eighth.
    const difference = diagonalDifference(inches(96), inches(48), leaning(1 / 64, 12))
    expect(Math.round(toInches(difference) * 8) / 8).toBe(1 / 8)
    expect(toInches(difference)).toBeCloseTo(0.112, 3)
    const back = measured(inches(96), inches(48), difference)
    expect(Math.abs(back.overLength - 8 * inches(1, 64))).toBeLessThan(30)
  })

  it('is about d D / (2 a b) radians while d is small', () => {
    // 24 x 36 in with diagonals 1/8 in apart, and 5 x 10 ft with 1/2 in.
    for (const [a, b, d] of [
      [36, 24, 1 / 8],
      [120, 60, 1 / 2],
    ] as const) {
      const about = ((d * Math.hypot(a, b)) / (2 * a * b)) * (180 / Math.PI)
      expect(measured(inches(a), inches(b), inches(d)).angle).toBeCloseTo(about, 5)
    }
  })

  it('finds the lean of a parallelogram drawn by its corners', () => {
    fc.assert(
      fc.property(
        lengths(50, 2500),
        lengths(50, 2500),
        fc.double({ min: -80, max: 80, noNaN: true }),
        (a, b, angle) => {
          const lean = (angle * Math.PI) / 180
          const top = [b * Math.sin(lean), b * Math.cos(lean)] as const
          const long = Math.hypot(a + top[0], top[1])
          const short = Math.hypot(a - top[0], top[1])
          const found = measured(a, b, Math.round(long - short) as Length)
          // A nanometre in the difference of the diagonals is worth little where the frame is far from folded flat.
          expect(found.angle).toBeCloseTo(Math.abs(angle), 4)
          expect(Math.abs(found.overWidth - Math.abs(top[0]))).toBeLessThan(2000)
          expect(Math.abs(diagonalDifference(a, b, angle) - Math.abs(long - short))).toBeLessThan(1)
        },
      ),
    )
  })

  it('asks half the difference of each diagonal', () => {
    expect(measured(inches(36), inches(24), inches(1, 8)).squeeze).toBe(inches(1, 16))
    expect(measured(inches(36), inches(24), inches(-1, 8))).toEqual(
      measured(inches(36), inches(24), inches(1, 8)),
    )
  })

  it('is square where the diagonals agree, and folded flat at most', () => {
    expect(measured(inches(36), inches(24), ZERO)).toMatchObject({
      angle: 0,
      overLength: 0,
      overWidth: 0,
      squeeze: 0,
    })
    expect(measured(inches(36), inches(24), inches(48)).angle).toBeCloseTo(90, 4)
    expect(outOfSquare({ length: inches(36), width: inches(24), difference: inches(49) })).toEqual({
      status: 'impossible',
    })
    expect(outOfSquare({ length: ZERO, width: inches(24), difference: ZERO })).toEqual({
      status: 'impossible',
    })
  })
})
