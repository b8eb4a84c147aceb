import { describe, expect, it } from 'vitest'
import { inches, millimetres, toInches, toMillimetres } from '../../../src/core/measure/length.ts'
import { mdfMovement, plywoodMovement, thicknessGrowth } from '../../../src/core/moisture/panelMovement.ts'

describe('plywoodMovement', () => {
  it('36 in, 10 % of humidity: less than .007 in, .0072 exactly (APA wording quoted by flooring fitters)', () => {
    expect(Math.abs(toInches(plywoodMovement(inches(36), 40, 50)) - 0.007)).toBeLessThan(0.001)
    expect(plywoodMovement(inches(36), 50, 40)).toBe(-plywoodMovement(inches(36), 40, 50))
    expect(plywoodMovement(inches(36), 50, 50)).toBe(0)
  })
})

describe('mdfMovement', () => {
  it('600 mm x 15 mm, 5 % more: 1.5 mm wide, 0.3 mm thick (MDF trade association)', () => {
    expect(toMillimetres(mdfMovement(millimetres(600), 'plane', 7, 12))).toBeCloseTo(1.5, 6)
    expect(Math.abs(toMillimetres(mdfMovement(millimetres(15), 'thickness', 7, 12)) - 0.3)).toBeLessThan(0.05)
  })

  it('1 m, 9 to 12 %: about 1 mm more, and again from 12 to 16 (wood panels association)', () => {
    expect(toMillimetres(mdfMovement(millimetres(1000), 'plane', 9, 12))).toBeGreaterThan(1)
    expect(toMillimetres(mdfMovement(millimetres(1000), 'plane', 9, 12))).toBeLessThan(2)
    expect(toMillimetres(mdfMovement(millimetres(1000), 'plane', 12, 16))).toBeLessThanOrEqual(2)
  })
})

describe('thicknessGrowth', () => {
  it('is the radial growth of the veneers, and what MDF swells', () => {
    expect(thicknessGrowth({ radial: 0.00165 })).toBe(0.00165)
    expect(toMillimetres(mdfMovement(millimetres(100), 'thickness', 6, 7))).toBeCloseTo(
      100 * thicknessGrowth('mdf'),
      9,
    )
  })
})
