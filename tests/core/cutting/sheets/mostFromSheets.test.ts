import { describe, expect, it } from 'vitest'
import type { SheetProblem } from '../../../../src/core/cutting/problem.ts'
import { mostFromSheets } from '../../../../src/core/cutting/sheets.ts'
import { verifySheets } from '../../../../src/core/cutting/verify.ts'
import { SHEET_EXAMPLES } from '../../../data/sheetExamples.ts'
import { afterSteps } from './steps.ts'

const solve = (problem: SheetProblem, steps = 20_000) => {
  const found = mostFromSheets(problem, { shouldStop: afterSteps(steps) })
  expect(verifySheets(problem, found.layouts, 'most')).toEqual([])
  const worth = new Map(problem.parts.map((part) => [part.id, part.worth ?? part.length * part.width]))
  const laid = found.layouts.flatMap(({ placements, count }) =>
    placements.map(({ part }) => count * (worth.get(part) ?? Number.NaN)),
  )
  expect(laid.reduce((sum, value) => sum + value, 0)).toBe(found.worth)
  return found
}

const withKerf = (problem: SheetProblem, kerf: number): SheetProblem => ({
  ...problem,
  kerf,
  parts: problem.parts.map((part) => ({ ...part, length: part.length - kerf, width: part.width - kerf })),
  stock: problem.stock.map((sheet) => ({ ...sheet, length: sheet.length - kerf, width: sheet.width - kerf })),
})

const scaled = (problem: SheetProblem, by: number): SheetProblem => ({
  ...problem,
  kerf: problem.kerf * by,
  parts: problem.parts.map((part) => ({ ...part, length: part.length * by, width: part.width * by })),
  stock: problem.stock.map((sheet) => ({ ...sheet, length: sheet.length * by, width: sheet.width * by })),
})

const turnable = (problem: SheetProblem): SheetProblem => ({
  ...problem,
  parts: problem.parts.map((part) => ({ ...part, turnable: true })),
})

describe.each(SHEET_EXAMPLES)('the published example $name', ({ problem, most, mostTurned }) => {
  it('comes to the printed value, proven', () => {
    expect(solve(problem)).toMatchObject({ status: 'optimal', worth: most, upperBound: most })
  })

  it('comes to more when parts may be turned', () => {
    expect(solve(turnable(problem))).toMatchObject({ status: 'optimal', worth: mostTurned })
  })

  it('does not change when a kerf is taken from all sizes and from the sheet', () => {
    expect(solve(withKerf(problem, 1))).toMatchObject({ status: 'optimal', worth: most })
  })

  it('does not change with the unit', () => {
    expect(solve(scaled(problem, 396_875))).toMatchObject({ status: 'optimal', worth: most })
  })
})

describe('mostFromSheets', () => {
  const problem: SheetProblem = {
    parts: [{ id: 'tile', length: 30, width: 20, count: 1000, turnable: true, worth: 1 }],
    stock: [{ id: 'piece', length: 100, width: 100, price: 0 }],
    kerf: 0,
    trim: 0,
    keepable: 1,
  }

  it('counts pieces when each is worth one', () => {
    expect(solve(problem)).toMatchObject({ status: 'optimal', worth: 16, upperBound: 16 })
  })

  it('adds up the stock on hand', () => {
    const stock = [{ id: 'piece', length: 100, width: 100, price: 0, onHand: 3 }]
    expect(solve({ ...problem, stock })).toMatchObject({ status: 'optimal', worth: 48 })
  })

  it('lays everything when there is room', () => {
    const parts = [{ id: 'tile', length: 30, width: 20, count: 5, turnable: false }]
    expect(solve({ ...problem, parts })).toMatchObject({ status: 'optimal', worth: 3000 })
  })

  it('passes over parts that do not fit', () => {
    const parts = [...problem.parts, { id: 'door', length: 200, width: 80, count: 1, turnable: true }]
    expect(solve({ ...problem, parts })).toMatchObject({ status: 'optimal', worth: 16 })
  })

  it('is worth nothing when nothing fits', () => {
    const parts = [{ id: 'door', length: 200, width: 80, count: 1, turnable: true }]
    expect(solve({ ...problem, parts })).toEqual({ status: 'optimal', layouts: [], worth: 0, upperBound: 0 })
  })

  it('answers with a valid bound when stopped at once', () => {
    const found = solve(problem, 0)
    expect(found.worth).toBeGreaterThan(0)
    expect(found.upperBound).toBeGreaterThanOrEqual(16)
  })
})
