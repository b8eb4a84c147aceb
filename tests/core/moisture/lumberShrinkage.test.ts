import { describe, expect, it } from 'vitest'
import { lumberShrinkage } from '../../../src/core/moisture/lumberShrinkage.ts'

describe('lumberShrinkage', () => {
  // Green, USDA FPL-RP-489 (1989): the form; PS 20 goes by 2.80 % of width and 2.35 % of thickness at 15 %.
  it.each([
    [8, 4.311],
    [15, 2.806],
    [19, 1.946],
  ])('at %d %% the width is down by %d %%', (moisture, printed) => {
    expect(Math.abs(lumberShrinkage(moisture)!.width - printed)).toBeLessThan(0.001)
  })

  it('is what PS 20 makes green sizes by', () => {
    expect(Math.abs(lumberShrinkage(15)!.width - 2.8)).toBeLessThan(0.01)
    expect(Math.abs(lumberShrinkage(15)!.thickness - 2.35)).toBeLessThan(0.01)
  })

  it('has no answer outside 8 to 19 %', () => {
    expect(lumberShrinkage(7.9)).toBeUndefined()
    expect(lumberShrinkage(19.1)).toBeUndefined()
    expect(lumberShrinkage(Number.NaN)).toBeUndefined()
  })
})
