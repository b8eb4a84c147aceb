import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cutLengths } from '../../../../src/core/cutting/lengths.ts'
import { loadSolver } from '../../../../src/core/cutting/linearProgram.ts'
import type { LengthProblem } from '../../../../src/core/cutting/problem.ts'
import { neverStop, soundly } from './examples.ts'
import { leastByModel } from './integerModel.ts'

const problems: fc.Arbitrary<LengthProblem> = fc
  .record({
    parts: fc.array(
      fc.record({ length: fc.integer({ min: 5, max: 38 }), count: fc.integer({ min: 1, max: 6 }) }),
      { minLength: 2, maxLength: 6 },
    ),
    stock: fc.array(
      fc.record({ length: fc.integer({ min: 40, max: 60 }), price: fc.integer({ min: 3, max: 20 }) }),
      { minLength: 1, maxLength: 3 },
    ),
    offcut: fc.integer({ min: 10, max: 39 }),
    kerf: fc.integer({ min: 0, max: 2 }),
  })
  .map(({ parts, stock, offcut, kerf }) => ({
    parts: parts.map((part, place) => ({ id: `part ${place}`, ...part })),
    stock: [
      ...stock.map((kind, place) => ({ id: `stock ${place}`, ...kind })),
      { id: 'offcut', length: offcut, price: 0, onHand: 2 },
    ],
    kerf,
    trim: 0,
    keepable: 10,
  }))

describe('problems of up to 36 parts against an arc flow model', () => {
  it('costs what the model costs', async () => {
    const solver = await loadSolver()
    await fc.assert(
      fc.asyncProperty(problems, async (problem) => {
        const outcome = soundly(problem, await cutLengths(problem, { shouldStop: neverStop }))
        expect(outcome.cost).toBe(leastByModel(solver, problem))
        expect(outcome.status).toBe('optimal')
      }),
      { numRuns: 15, seed: 8 },
    )
  })
})
