import { describe, expect, it } from 'vitest'
import { type Sanding, sandpaperNeeded } from '../../../src/core/quantities/shoppingSandpaper.ts'
import { config } from '../../room.ts'

const sanding: Sanding = { grits: [120, 180], covers: 100, betweenGrit: 220, betweenCovers: 200 }

describe('sandpaperNeeded', () => {
  it('takes each grit over the bare wood, and a fine one between coats that make a film', () => {
    expect(sandpaperNeeded({ area: 250, filmCoats: 3 }, sanding)).toEqual([
      { grit: 120, sheets: 3 },
      { grit: 180, sheets: 3 },
      { grit: 220, sheets: 3 },
    ])
  })

  it('sands nothing between coats where there is one, or where they soak in', () => {
    for (const filmCoats of [0, 1])
      expect(sandpaperNeeded({ area: 100, filmCoats }, sanding).map(({ grit }) => grit)).toEqual([120, 180])
  })

  it('buys no sheet for the rounding of an area, and none for none', () => {
    expect(sandpaperNeeded({ area: 100 + 1e-10, filmCoats: 0 }, sanding)[0]?.sheets).toBe(1)
    expect(sandpaperNeeded({ area: 0, filmCoats: 5 }, sanding)).toEqual([])
  })

  // Common practice, as config/finishes.yaml says: a full sheet of 9 x 11 in wears out on about 16 sq ft of bare wood.
  it('goes as far as the settings say that a sheet goes', () => {
    const squareFoot = 92_903.04
    expect(sandpaperNeeded({ area: 16 * squareFoot, filmCoats: 0 }, config.sanding)[0]).toEqual({
      grit: 120,
      sheets: 1,
    })
    expect(sandpaperNeeded({ area: 16.1 * squareFoot, filmCoats: 2 }, config.sanding)).toEqual([
      { grit: 120, sheets: 2 },
      { grit: 180, sheets: 2 },
      { grit: 220, sheets: 1 },
    ])
  })

  it.each([-1, Number.NaN, Number.POSITIVE_INFINITY])('throws for an area of %s', (area) => {
    expect(() => sandpaperNeeded({ area, filmCoats: 1 }, sanding)).toThrow('area must be at least 0')
  })
})
