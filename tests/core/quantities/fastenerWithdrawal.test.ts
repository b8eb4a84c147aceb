import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches, type Length, millimetres, nanometres } from '../../../src/core/measure/length.ts'
import type { Gravity } from '../../../src/core/moisture/species.ts'
import {
  nailWithdrawal,
  POUND_FORCE,
  screwWithdrawal,
} from '../../../src/core/quantities/fastenerWithdrawal.ts'

const ovendry = (value: number): Gravity => ({ value, basis: 'ovendry', fromMemory: false })
const decimal = (inch: number): Length => nanometres(inch * 25_400_000)

const pounds = (diameter: number, length: number, gravity: number): number =>
  nailWithdrawal({ gravity: ovendry(gravity), diameter: decimal(diameter), bite: decimal(length) })
    .allowable / POUND_FORCE

describe('nailWithdrawal', () => {
  // Engineering ToolBox, nail withdrawal, by the allowable 1380 G^2.5 D of FPL-093.
  it('gravity .45, .203 in thick: 38 lb for each inch', () => {
    expect(Math.abs(pounds(0.203, 1, 0.45) - 38)).toBeLessThan(0.1)
  })

  it.each([
    ['2d', 0.072, 1, 17.6],
    ['10d', 0.148, 3, 108],
  ])('%s: %d in by %d in, gravity .5: %d lb', (_, diameter, length, printed) => {
    expect(Math.abs(pounds(diameter, length, 0.5) - printed)).toBeLessThan(0.5)
  })

  it.each([
    [20, 1.2, 40.4],
    [40, 2.0, 135],
    [50, 2.2, 185],
  ])('%d mm x %d mm, gravity .5: %d N', (length, diameter, printed) => {
    const nail = { gravity: ovendry(0.5), diameter: millimetres(diameter), bite: millimetres(length) }
    expect(Math.abs(nailWithdrawal(nail).allowable - printed)).toBeLessThan(0.5)
  })

  it('draws at 7850 G^2.5 D L pounds (engineering handbook page after the Wood Handbook, ch. 8)', () => {
    const gravity: Gravity = { value: 0.5, basis: 'at 12 %', fromMemory: false }
    const { ultimate } = nailWithdrawal({ gravity, diameter: decimal(0.131), bite: inches(3, 2) })
    const printed = 7850 * 0.5 ** 2.5 * 0.131 * 1.5 * POUND_FORCE
    expect(ultimate! / printed).toBeCloseTo(1, 3)
  })

  it('is drawn by several times what is allowed, and holds in proportion to wire and depth', () => {
    const size = fc.integer({ min: 500_000, max: 8_000_000 }).map((count) => count as Length)
    fc.assert(
      fc.property(size, size, fc.double({ min: 0.3, max: 0.75, noNaN: true }), (diameter, bite, value) => {
        const nail = { gravity: ovendry(value), diameter, bite }
        const { allowable, ultimate } = nailWithdrawal(nail)
        expect(ultimate! / allowable).toBeGreaterThan(4)
        expect(ultimate! / allowable).toBeLessThan(6)
        const deeper = nailWithdrawal({
          ...nail,
          bite: (bite * 2) as Length,
          diameter: (diameter * 3) as Length,
        })
        expect(deeper.allowable / allowable).toBeCloseTo(6, 9)
      }),
    )
  })
})

describe('screwWithdrawal', () => {
  it('gravity .45, .190 in: 109 lb for each inch, cut off (Engineering ToolBox, wood screws)', () => {
    const screw = { gravity: ovendry(0.45), diameter: decimal(0.19), bite: inches(1) }
    expect(Math.floor(screwWithdrawal(screw).allowable / POUND_FORCE)).toBe(109)
  })

  it('holds more than a nail of the same size', () => {
    const drawn = { gravity: ovendry(0.42), diameter: decimal(0.164), bite: inches(1) }
    expect(screwWithdrawal(drawn).allowable).toBeGreaterThan(nailWithdrawal(drawn).allowable)
  })
})
