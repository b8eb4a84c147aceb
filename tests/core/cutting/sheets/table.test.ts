import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readJob } from '../../../../src/core/cutting/sheets/job.ts'
import { readSizes } from '../../../../src/core/cutting/sheets/packing.ts'
import { listPieces } from '../../../../src/core/cutting/sheets/pattern.ts'
import { PatternTable } from '../../../../src/core/cutting/sheets/table.ts'

interface Row {
  readonly length: number
  readonly width: number
  readonly worth: number
}

/** The most by trying every cut at every whole position. */
const most = (
  rows: readonly Row[],
  length: number,
  width: number,
  known = new Map<number, number>(),
): number => {
  const key = length * 1000 + width
  const answer = known.get(key)
  if (answer !== undefined) return answer
  let best = 0
  for (const row of rows) if (row.length <= length && row.width <= width) best = Math.max(best, row.worth)
  for (let at = 1; 2 * at <= length; at++)
    best = Math.max(best, most(rows, at, width, known) + most(rows, length - at, width, known))
  for (let at = 1; 2 * at <= width; at++)
    best = Math.max(best, most(rows, length, at, known) + most(rows, length, width - at, known))
  known.set(key, best)
  return best
}

const rowsOf = fc.array(
  fc.record({
    length: fc.integer({ min: 2, max: 20 }),
    width: fc.integer({ min: 2, max: 15 }),
    worth: fc.integer({ min: 1, max: 90 }),
  }),
  { minLength: 1, maxLength: 5 },
)

const tableOf = (rows: readonly Row[], most: number, kind: 'sums' | 'raster', grid?: number) => {
  const parts = rows.map((row, index) => ({ ...row, id: `${index}`, count: 99, turnable: false }))
  const stock = [
    { id: 'large', length: 34, width: 22, price: 1 },
    { id: 'small', length: 29, width: 19, price: 1 },
  ]
  const job = readJob({ parts, stock, kerf: 0, trim: 0, keepable: 1 })
  const table = new PatternTable(job, readSizes(job), most, kind, grid)
  const weights = job.parts.map((part) => part.worth)
  table.fill(weights, () => false)
  return { job, table, weights }
}

describe.each(['sums', 'raster'] as const)('PatternTable on %s', (kind) => {
  it('has the exact most for every sheet, and a pattern for it', () => {
    fc.assert(
      fc.property(rowsOf, (rows) => {
        const { job, table, weights } = tableOf(rows, 100, kind)
        for (const sheet of job.sheets) {
          const value = most(rows, sheet.length * job.unit, sheet.width * job.unit)
          const pieces = listPieces(table.patternOf(sheet))
          expect(table.bestOf(sheet)).toBe(value)
          expect(pieces.reduce((sum, index) => sum + (weights[index >> 1] as number), 0)).toBe(value)
        }
      }),
      { numRuns: 60, seed: 3 },
    )
  })
})

describe('PatternTable on a grid', () => {
  it('is never below the exact most', () => {
    fc.assert(
      fc.property(rowsOf, (rows) => {
        const { job, table } = tableOf(rows, 1, 'sums', 20)
        for (const sheet of job.sheets)
          expect(table.bestOf(sheet)).toBeGreaterThanOrEqual(
            most(rows, sheet.length * job.unit, sheet.width * job.unit),
          )
      }),
      { numRuns: 60, seed: 4 },
    )
  })

  it('says that it bounds nothing when it is too coarse to see a part', () => {
    const rows = [2, 3, 5, 7, 11].map((length) => ({ length, width: length + 2, worth: 1 }))
    expect(tableOf(rows, 1, 'sums', 7).table.bounds).toBe(false)
    expect(tableOf(rows, 1, 'sums', 20).table.bounds).toBe(true)
  })
})
