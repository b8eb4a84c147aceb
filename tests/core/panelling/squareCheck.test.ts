import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches, type Length, minus, nanometres, plus, toInches } from '../../../src/core/measure/length.ts'
import { checkSquare, type Measured, type SquareCheck } from '../../../src/core/panelling/squareCheck.ts'
import { lengths } from './specs.ts'

function checked(measured: Measured): SquareCheck {
  const check = checkSquare(measured)
  if (check.status !== 'checked') throw new Error(check.status)
  return check
}

/** Diagonals of a true `length` x `width`, the rising one longer by `difference`. */
const frame = (length: Length, width: Length, difference: Length): Measured => {
  const diagonal = nanometres(Math.hypot(length, width))
  return {
    length,
    width,
    rising: plus(diagonal, nanometres(difference / 2)),
    falling: minus(diagonal, nanometres(difference / 2)),
  }
}

describe('checkSquare', () => {
  // Woodworkers' questions: 24 x 36 in with diagonals 1/8 apart; 5 x 10 ft with 1/2 in.
  it.each([
    [36, 24, inches(1, 8), 0.18, 5 / 64],
    [120, 60, inches(1, 2), 0.27, 9 / 32],
  ])('%d x %d in, %d nm: %d degrees, %d in over the short side', (length, width, difference, angle, over) => {
    const check = checked(frame(inches(length), inches(width), difference))
    expect(check.angle).toBeCloseTo(angle, 2)
    expect(Math.abs(toInches(check.overWidth) - over)).toBeLessThan(1 / 128)
  })

  // Cabinetmakers' forum, a 45 in diagonal: 27 x 36 in.
  it.each([
    ['good', inches(1, 32)],
    ['fair', inches(1, 16)],
    ['limit', inches(3, 32)],
    ['past', inches(7, 64)],
  ])('is %s for cabinets with %d nm on 45 in', (grade, difference) => {
    expect(checked(frame(inches(36), inches(27), difference)).cabinet).toBe(grade)
  })

  it('takes a 4 x 8 ft sheet 1/64 in a foot out, as PS 1-19 does, and no more', () => {
    expect(checked(frame(inches(96), inches(48), nanometres(0.111 * 25_400_000))).asSheet).toBe(true)
    expect(checked(frame(inches(96), inches(48), inches(1, 8))).asSheet).toBe(false)
    expect(checked(frame(inches(96), inches(48), inches(1, 8))).asFraming).toBe(true)
    expect(checked(frame(inches(96), inches(48), inches(5, 32))).asFraming).toBe(false)
  })

  it('squeezes the corners of the long diagonal together, and a push of `overLength` there squares it', () => {
    fc.assert(
      fc.property(
        lengths(100, 2400),
        lengths(100, 2400),
        fc.double({ min: -30, max: 30, noNaN: true }),
        (a, b, lean) => {
          fc.pre(Math.abs(lean) > 0.01)
          // Drawn by its corners: the left side leans right by `lean` degrees, so the rising diagonal is the long one.
          const slide = b * Math.sin((lean * Math.PI) / 180)
          const up = b * Math.cos((lean * Math.PI) / 180)
          const rising = nanometres(Math.hypot(a + slide, up))
          const falling = nanometres(Math.hypot(a - slide, up))
          const check = checked({ length: a, width: b, rising, falling })
          expect(check.long).toBe(lean > 0 ? 'rising' : 'falling')
          expect(check.squeezed).toEqual(
            lean > 0 ? ['bottom left', 'top right'] : ['top left', 'bottom right'],
          )
          expect(check.pulled).not.toEqual(check.squeezed)
          expect(Math.abs(check.misread)).toBeLessThan(5)
          expect(Math.abs(check.overWidth - Math.abs(slide))).toBeLessThan(5000)
        },
      ),
    )
  })

  it('names no diagonal where they agree, and finds a side that was misread', () => {
    expect(checked(frame(inches(36), inches(24), inches(0)))).toMatchObject({
      angle: 0,
      cabinet: 'good',
      misread: 0,
    })
    expect(checked(frame(inches(36), inches(24), inches(0))).long).toBeUndefined()
    const wrong = { ...frame(inches(36), inches(24), inches(0)), length: inches(35) }
    expect(toInches(checked(wrong).misread)).toBeGreaterThan(0.8)
  })

  it('is impossible flat and past flat, and for sides of nothing', () => {
    expect(
      checkSquare({ length: inches(24), width: inches(18), rising: inches(42), falling: inches(6) }),
    ).toEqual({ status: 'impossible' })
    expect(
      checkSquare({ length: inches(36), width: inches(24), rising: inches(60), falling: inches(5) }),
    ).toEqual({
      status: 'impossible',
    })
    expect(checkSquare(frame(inches(0), inches(24), inches(0)))).toEqual({ status: 'impossible' })
  })
})
