import { describe, expect, it } from 'vitest'
import type { SheetProblem } from '../../../../../src/core/cutting/problem.ts'
import { nearestGoal } from '../../../../../src/core/cutting/sheets/fill/approach.ts'
import { readJob } from '../../../../../src/core/cutting/sheets/job.ts'
import { emptyPacking, openSheet } from '../../../../../src/core/cutting/sheets/packing.ts'
import { cutSheets } from '../../../../../src/core/cutting/sheets.ts'
import { verifyCost, verifySheets } from '../../../../../src/core/cutting/verify.ts'
import { afterSteps } from '../steps.ts'

describe('nearestGoal', () => {
  const problem: SheetProblem = {
    parts: [{ id: 'P', length: 10, width: 10, count: 10, turnable: false }],
    stock: [
      { id: 'large', length: 40, width: 20, price: 8 },
      { id: 'small', length: 20, width: 10, price: 3 },
    ],
    kerf: 0,
    trim: 0,
    keepable: 5,
  }

  it('is what has room for all parts when nothing is open', () => {
    expect(nearestGoal(emptyPacking(readJob(problem)))).toBe(8 + 3)
  })

  it('adds room for the parts without a place to what is open', () => {
    const packing = emptyPacking(readJob(problem))
    openSheet(packing, 0)
    openSheet(packing, 0)
    packing.left[0] = 2
    expect(nearestGoal(packing)).toBe(8 + 8 + 3)
  })

  it('has no end when the stock runs out', () => {
    const stock = problem.stock.map((sheet) => ({ ...sheet, onHand: 1 }))
    const packing = emptyPacking(readJob({ ...problem, stock }))
    openSheet(packing, 0)
    expect(nearestGoal(packing)).toBe(Number.POSITIVE_INFINITY)
  })
})

/** Some 960 parts of 120 sizes, a third of which may not be turned, from four sheets priced by their area. */
const many: SheetProblem = {
  parts: Array.from({ length: 120 }, (_, index) => ({
    id: `P${index}`,
    length: 200 + ((index * 137) % 401),
    width: 60 + ((index * 89) % 241),
    count: 4 + 2 * (index % 5),
    turnable: index % 3 > 0,
  })),
  stock: (
    [
      [2440, 1220],
      [1220, 1220],
      [3050, 1525],
      [1220, 610],
    ] as const
  ).map(([length, width]) => ({ id: `${length} x ${width}`, length, width, price: length * width })),
  kerf: 3,
  trim: 5,
  keepable: 100,
}

describe('lowerLarge', () => {
  it('comes within 1 % of the bound in a few thousand steps', async () => {
    const outcome = await cutSheets(many, { shouldStop: afterSteps(3000), seed: 1 })
    if (outcome.status === 'impossible') throw new Error(outcome.reason)
    expect(verifySheets(many, outcome.layouts)).toEqual([])
    expect(verifyCost(many, outcome)).toEqual([])
    expect(outcome.cost / outcome.lowerBound).toBeLessThan(1.01)
    expect(outcome.cost).toBeGreaterThanOrEqual(outcome.lowerBound)
  })
})
