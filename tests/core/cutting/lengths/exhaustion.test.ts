import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cutLengths } from '../../../../src/core/cutting/lengths.ts'
import type { LengthProblem } from '../../../../src/core/cutting/problem.ts'
import { neverStop, soundly } from './examples.ts'
import { exhaust } from './exhaustion.ts'

const stock = fc.record({
  length: fc.integer({ min: 8, max: 40 }),
  price: fc.integer({ min: 0, max: 12 }),
  onHand: fc.option(fc.integer({ min: 0, max: 3 }), { nil: undefined }),
})

const problems: fc.Arbitrary<LengthProblem> = fc
  .record({
    lengths: fc.array(fc.integer({ min: 2, max: 26 }), { minLength: 1, maxLength: 7 }),
    stock: fc.array(stock, { minLength: 1, maxLength: 3 }),
    kerf: fc.integer({ min: 0, max: 3 }),
    trim: fc.integer({ min: 0, max: 2 }),
  })
  .map(({ lengths, stock, kerf, trim }) => ({
    parts: lengths.map((length, place) => ({ id: `part ${place}`, length, count: 1 })),
    stock: stock.map((kind, place) => ({ id: `stock ${place}`, ...kind })),
    kerf,
    trim,
    keepable: 5,
  }))

describe('small problems against every way to cut them', () => {
  it('finds the least cost, proves it, and then the fewest boards', async () => {
    await fc.assert(
      fc.asyncProperty(problems, async (problem) => {
        const least = exhaust(problem)
        const outcome = await cutLengths(problem, { shouldStop: neverStop })
        if (least === undefined) {
          expect(outcome).toMatchObject({ status: 'impossible', proven: true })
          return
        }
        const { status, cost, pieces, lowerBound } = soundly(problem, outcome)
        expect({ status, cost, pieces, lowerBound }).toEqual({
          status: 'optimal',
          cost: least.cost,
          pieces: least.pieces,
          lowerBound: least.cost,
        })
      }),
      { numRuns: 300, seed: 4 },
    )
  })
})
