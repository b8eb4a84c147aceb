import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches, type Length, nanometres, toInches } from '../../../src/core/measure/length.ts'
import { type CornerAngle, cornerAngle } from '../../../src/core/panelling/cornerAngle.ts'
import { lengths } from './specs.ts'

function measured(along: Length, across: Length, diagonal: Length): CornerAngle {
  const corner = cornerAngle({ along, across, diagonal }, inches(1, 32))
  if (corner.status !== 'measured') throw new Error(corner.status)
  return corner
}

describe('cornerAngle', () => {
  it.each([
    [3, 4, 5],
    [18, 24, 30],
    [36, 48, 60],
  ])('%d, %d and %d make it square (US Navy, Builder)', (along, across, diagonal) => {
    const corner = measured(inches(along), inches(across), inches(diagonal))
    expect(corner).toMatchObject({ verdict: 'square', over: 0 })
    expect(corner.off).toBeCloseTo(0, 9)
  })

  // US Navy, Builder, brace table: equal runs and the brace; two more of the framing square's.
  it.each([
    [24, 24, 33.94],
    [27, 27, 38.18],
    [30, 30, 42.43],
    [8, 8, 11.31],
    [40, 40, 56.57],
    [21, 21, 29.7],
    [24, 36, 43.267],
  ])('%d by %d square has a diagonal of %d', (along, across, printed) => {
    expect(
      Math.abs(toInches(measured(inches(along), inches(across), inches(along)).square) - printed),
    ).toBeLessThan(0.005)
  })

  it('is open where the diagonal is long, closed where it is short', () => {
    expect(measured(inches(36), inches(48), inches(242, 4))).toMatchObject({
      verdict: 'open',
      over: inches(1, 2),
    })
    expect(measured(inches(36), inches(48), inches(238, 4))).toMatchObject({ verdict: 'closed' })
    expect(measured(inches(36), inches(48), inches(238, 4)).off).toBeLessThan(0)
    expect(measured(inches(36), inches(48), plusHair(inches(60)))).toMatchObject({ verdict: 'square' })
  })

  it('is square at exactly what it may be out by, and not past it', () => {
    expect(measured(inches(36), inches(48), inches(60 * 32 + 1, 32)).verdict).toBe('square')
    expect(measured(inches(36), inches(48), inches(60 * 32 + 2, 32)).verdict).toBe('open')
  })

  it('finds the angle that a corner was drawn with, and how far its far end has slid', () => {
    fc.assert(
      fc.property(
        lengths(100, 2400),
        lengths(100, 2400),
        fc.double({ min: 20, max: 160, noNaN: true }),
        (a, b, angle) => {
          const [x, y] = [b * Math.cos((angle * Math.PI) / 180), b * Math.sin((angle * Math.PI) / 180)]
          const corner = measured(a, b, nanometres(Math.hypot(a - x, y)))
          expect(corner.angle).toBeCloseTo(angle, 4)
          expect(Math.abs(corner.move - Math.abs(x))).toBeLessThan(100)
        },
      ),
    )
  })

  it('is impossible where the three are no triangle', () => {
    const of = (along: number, across: number, diagonal: number) =>
      cornerAngle({ along: inches(along), across: inches(across), diagonal: inches(diagonal) }, inches(1, 32))
        .status
    expect(of(3, 4, 7)).toBe('impossible')
    expect(of(3, 4, 1)).toBe('impossible')
    expect(of(0, 4, 4)).toBe('impossible')
  })
})

const plusHair = (length: Length): Length => (length + 100_000) as Length
