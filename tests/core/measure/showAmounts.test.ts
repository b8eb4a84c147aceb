import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { showAngle, showArea, showVolume } from '../../../src/core/measure/showAmounts.ts'
import { showDecimal } from '../../../src/core/measure/showDecimal.ts'

describe('showDecimal', () => {
  it.each([
    [12.5, 1, '12.5'],
    [12.04, 1, '12'],
    [100, 0, '100'],
    [-0.5, 1, '-0.5'],
    [0, 3, '0'],
    [-0, 3, '0'],
    [0.0004, 3, '0.0004'],
    [0.00012345, 3, '0.00012'],
    [-0.00012345, 3, '-0.00012'],
    [0.04, 1, '0.04'],
    [9.96, 1, '10'],
    [-1e-15, 1, '0'],
    [5e-324, 1, '0'],
  ])('%d to %d places is %s', (value, places, shown) => {
    expect(showDecimal(value, places)).toBe(shown)
  })

  it('is within half of its last place, and never 0 for something', () => {
    const value = fc
      .double({ min: -1e6, max: 1e6, noNaN: true })
      .filter((each) => each === 0 || Math.abs(each) > 1e-9)
    fc.assert(
      fc.property(value, fc.integer({ min: 0, max: 4 }), (each, places) => {
        const shown = showDecimal(each, places)
        expect(shown).toMatch(/^-?\d+(\.\d*[1-9])?$/)
        expect(Math.abs(Number(shown) - each)).toBeLessThanOrEqual(0.5 * 10 ** -places + 1e-9)
        expect(Number(shown) === 0).toBe(each === 0)
      }),
    )
  })
})

describe('showAngle', () => {
  it.each([
    [28.5, '28.5°'],
    [45, '45°'],
    [61.4499, '61.4°'],
    [0.04, '0.04°'],
    [0, '0°'],
    [(Math.atan2(7, 8) * 180) / Math.PI, '41.2°'],
  ])('%d is %s', (degrees, shown) => {
    expect(showAngle(degrees)).toBe(shown)
  })
})

// Factors: HUD, Residential Structural Design Guide, Appendix B.
describe('published conversions', () => {
  it.each([
    [0.09290304e6, 'inch', '1 sq ft'],
    [32 * 0.09290304e6, 'inch', '32 sq ft'],
    [1e6, 'inch', '10.8 sq ft'],
    [1e6, 'metric', '1 m²'],
    [1220 * 2440, 'metric', '2.98 m²'],
    [5000, 'metric', '0.005 m²'],
  ] as const)('%d mm2 in %s is %s', (area, units, shown) => {
    expect(showArea(area, units)).toBe(shown)
  })

  it.each([
    [29.57353, 'inch', '1 fl oz'],
    [3785.412, 'inch', '1 gal'],
    // Can sizes of an oil polyurethane data sheet: half-pint 236.6 mL, quart 946.4 mL, 5 gal 18.9 L.
    [236.6, 'inch', '8 fl oz'],
    [946.4, 'inch', '1 qt'],
    [18_900, 'inch', '4.99 gal'],
    // Paint estimates of a reference site: 415 ft2 at 350 ft2 a gallon is 1.2 gal, 150 at 350 is 0.43 gal.
    [(415 / 350) * 3785.412, 'inch', '1.19 gal'],
    [(150 / 350) * 3785.412, 'inch', '1.71 qt'],
    [3785.412, 'metric', '3.79 L'],
    [750, 'metric', '750 mL'],
    [2500, 'metric', '2.5 L'],
    [0.2, 'metric', '0.2 mL'],
    [0, 'inch', '0 fl oz'],
  ] as const)('%d mL in %s is %s', (volume, units, shown) => {
    expect(showVolume(volume, units)).toBe(shown)
  })

  // US Navy, Builder (NAVEDTRA 14044) pp. 2-8 and 2-9, table of braces.
  it.each([
    [24, '33.94'],
    [27, '38.18'],
    [30, '42.43'],
    [8, '11.31'],
    [40, '56.57'],
  ])('a brace of equal run and rise %d is %s', (run, length) => {
    expect(showDecimal(Math.hypot(run, run), 2)).toBe(length)
  })
})
