import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cheapestPlan, costOf, type Plan } from '../../../../../src/core/cutting/sheets/fill/plan.ts'
import type { SheetType } from '../../../../../src/core/cutting/sheets/job.ts'

const sheetOf = (area: number, price: number, limit: number): SheetType => ({
  id: `${area}`,
  length: area,
  width: 1,
  area,
  price,
  limit,
  trim: 0,
})

const areaOf = (sheets: readonly SheetType[], plan: Plan): number =>
  sheets.reduce((sum, sheet, type) => sum + sheet.area * plan[type]!, 0)

/** The least cost of any plan, by trying all. */
const leastCost = (sheets: readonly SheetType[], need: number, from = 0): number => {
  if (need <= 0) return 0
  const sheet = sheets[from]
  if (sheet === undefined) return Number.POSITIVE_INFINITY
  const most = Math.min(sheet.limit, Math.ceil(need / sheet.area))
  const costs = Array.from({ length: most + 1 }, (_, count) => {
    return count * sheet.price + leastCost(sheets, need - count * sheet.area, from + 1)
  })
  return Math.min(...costs)
}

const sheetsOf = fc.array(
  fc
    .tuple(fc.integer({ min: 3, max: 20 }), fc.integer({ min: 0, max: 30 }), fc.integer({ min: 1, max: 4 }))
    .map(([area, price, limit]) => sheetOf(area, price, limit)),
  { minLength: 1, maxLength: 4 },
)

describe('cheapestPlan', () => {
  it('costs the least of all plans with room enough, or says that there is none', () => {
    fc.assert(
      fc.property(sheetsOf, fc.integer({ min: 1, max: 90 }), (sheets, need) => {
        const plan = cheapestPlan(sheets, need)
        const least = leastCost(sheets, need)
        expect(plan === undefined ? Number.POSITIVE_INFINITY : costOf(sheets, plan)).toBe(least)
        if (plan === undefined) return
        expect(areaOf(sheets, plan)).toBeGreaterThanOrEqual(need)
        for (const [type, count] of plan.entries()) expect(count).toBeLessThanOrEqual(sheets[type]!.limit)
      }),
      { numRuns: 200, seed: 4 },
    )
  })

  it('takes a small sheet for what is left over', () => {
    const sheets = [sheetOf(100, 50, Number.POSITIVE_INFINITY), sheetOf(20, 15, Number.POSITIVE_INFINITY)]
    expect(cheapestPlan(sheets, 315)).toEqual([3, 1])
  })
})
