import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cutLengths } from '../../../../src/core/cutting/lengths.ts'
import type { LengthProblem } from '../../../../src/core/cutting/problem.ts'
import { neverStop, soundly } from './examples.ts'

const problems: fc.Arbitrary<LengthProblem> = fc
  .record({
    parts: fc.array(
      fc.record({ length: fc.integer({ min: 30, max: 480 }), count: fc.integer({ min: 1, max: 9 }) }),
      { minLength: 2, maxLength: 9 },
    ),
    prices: fc.array(fc.integer({ min: 200, max: 900 }), { minLength: 1, maxLength: 3 }),
    kerf: fc.integer({ min: 0, max: 6 }),
  })
  .map(({ parts, prices, kerf }) => ({
    parts: parts.map((part, place) => ({ id: `part ${place}`, ...part })),
    stock: prices.map((price, place) => ({ id: `stock ${place}`, length: 500 + 170 * place, price })),
    kerf,
    trim: 0,
    keepable: 50,
  }))

/** The cost, when it is proven to be the least. */
async function leastCost(problem: LengthProblem): Promise<number> {
  const outcome = soundly(problem, await cutLengths(problem, { shouldStop: neverStop }))
  expect(outcome.status).toBe('optimal')
  return outcome.cost
}

function holds(relation: (problem: LengthProblem, cost: number) => Promise<void>): Promise<void> {
  return fc.assert(
    fc.asyncProperty(problems, async (problem) => relation(problem, await leastCost(problem))),
    { numRuns: 12, seed: 15 },
  )
}

const scaled = (problem: LengthProblem, factor: number): LengthProblem => ({
  ...problem,
  parts: problem.parts.map((part) => ({ ...part, length: part.length * factor })),
  stock: problem.stock.map((stock) => ({ ...stock, length: stock.length * factor })),
  kerf: problem.kerf * factor,
})

describe('relations between problems', () => {
  it('never costs more with more stock to choose from', () =>
    holds(async (problem, cost) => {
      const more = [...problem.stock, { id: 'more', length: 610, price: 433 }]
      expect(await leastCost({ ...problem, stock: more })).toBeLessThanOrEqual(cost)
    }))

  it('never costs more with an offcut on hand', () =>
    holds(async (problem, cost) => {
      const more = [...problem.stock, { id: 'offcut', length: 300, price: 0, onHand: 1 }]
      expect(await leastCost({ ...problem, stock: more })).toBeLessThanOrEqual(cost)
    }))

  it('never costs more with a part less', () =>
    holds(async (problem, cost) => {
      const [first, ...others] = problem.parts
      const parts = [...others, ...(first ? [{ ...first, count: first.count - 1 }] : [])]
      expect(await leastCost({ ...problem, parts })).toBeLessThanOrEqual(cost)
    }))

  it('never costs less with a wider kerf', () =>
    holds(async (problem, cost) => {
      expect(await leastCost({ ...problem, kerf: problem.kerf + 3 })).toBeGreaterThanOrEqual(cost)
    }))

  it('costs the same with every size doubled, and in nanometres', () =>
    holds(async (problem, cost) => {
      expect(await leastCost(scaled(problem, 2))).toBe(cost)
      expect(await leastCost(scaled(problem, 1_000_000))).toBe(cost)
    }))

  it('costs the same with the kerf taken off the sizes and the stock', () =>
    holds(async (problem, cost) => {
      const kerf = problem.kerf + 5
      const parts = problem.parts.map((part) => ({ ...part, length: part.length - 5 }))
      const stock = problem.stock.map((kind) => ({ ...kind, length: kind.length - 5 }))
      expect(await leastCost({ ...problem, parts, stock, kerf })).toBe(cost)
    }))

  it('costs the same with the trim taken off the stock beforehand', () =>
    holds(async (problem, cost) => {
      const stock = problem.stock.map((kind) => ({ ...kind, length: kind.length + 7 }))
      expect(await leastCost({ ...problem, stock, trim: 7 })).toBe(cost)
    }))

  it('costs twice as much at twice the prices', () =>
    holds(async (problem, cost) => {
      const stock = problem.stock.map((kind) => ({ ...kind, price: kind.price * 2 }))
      expect(await leastCost({ ...problem, stock })).toBe(2 * cost)
    }))
})
