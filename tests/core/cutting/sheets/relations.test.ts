import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { SheetPart, SheetProblem } from '../../../../src/core/cutting/problem.ts'
import { cutSheets } from '../../../../src/core/cutting/sheets.ts'
import { verifyCost, verifySheets } from '../../../../src/core/cutting/verify.ts'
import { leastCost } from './exhaustive.ts'
import { afterSteps } from './steps.ts'

const solve = async (problem: SheetProblem, steps = 300) => {
  const outcome = await cutSheets(problem, { shouldStop: afterSteps(steps), seed: 3 })
  if (outcome.status === 'impossible') throw new Error(outcome.reason)
  expect(verifySheets(problem, outcome.layouts)).toEqual([])
  expect(verifyCost(problem, outcome)).toEqual([])
  return outcome
}

const partOf = (
  largest: number,
  turnable: fc.Arbitrary<boolean>,
): fc.Arbitrary<Omit<SheetPart, 'id' | 'count'>> =>
  fc.record({
    length: fc.integer({ min: 1, max: largest }),
    width: fc.integer({ min: 1, max: largest }),
    turnable,
  })

const problemOf = (most: number, turnable = fc.boolean()): fc.Arbitrary<SheetProblem> =>
  fc
    .record({
      sizes: fc.array(partOf(6, turnable), { minLength: 1, maxLength: most }),
      kerf: fc.integer({ min: 0, max: 1 }),
      trim: fc.integer({ min: 0, max: 1 }),
      price: fc.integer({ min: 1, max: 20 }),
    })
    .map(({ sizes, kerf, trim, price }) => ({
      parts: sizes.map((size, index) => ({ ...size, id: `part ${index}`, count: 1 })),
      stock: [
        { id: 'large', length: 11, width: 8, price: 12 },
        { id: 'small', length: 8, width: 8, price },
      ],
      kerf,
      trim,
      keepable: 2,
    }))

describe('cutSheets against every guillotine layout there is', () => {
  it('never bounds above the least cost, and finds it when it says so', async () => {
    await fc.assert(
      fc.asyncProperty(problemOf(5), async (problem) => {
        const least = leastCost(problem)
        const outcome = await solve(problem)
        expect(outcome.lowerBound).toBeLessThanOrEqual(least)
        expect(outcome.cost).toBeGreaterThanOrEqual(least)
        if (outcome.status === 'optimal') expect(outcome.cost).toBe(least)
      }),
      { numRuns: 60, seed: 7 },
    )
  })

  it('finds the least cost of tiny problems in a few hundred steps', async () => {
    const problems = fc.sample(problemOf(5), { numRuns: 40, seed: 11 })
    for (const problem of problems) expect((await solve(problem)).cost).toBe(leastCost(problem))
  })
})

describe('cutSheets', () => {
  const proven = async (problem: SheetProblem): Promise<number | undefined> => {
    const outcome = await solve(problem)
    return outcome.status === 'optimal' ? outcome.cost : undefined
  }

  /** Asserts when both are proven; `expect` on the costs. */
  const compare = async (
    change: (problem: SheetProblem) => SheetProblem,
    check: (before: number, after: number) => void,
    turnable = fc.boolean(),
  ): Promise<number> => {
    let compared = 0
    for (const problem of fc.sample(problemOf(9, turnable), { numRuns: 40, seed: 5 })) {
      const before = await proven(problem)
      const after = await proven(change(problem))
      if (before === undefined || after === undefined) continue
      compared++
      check(before, after)
    }
    return compared
  }

  it('costs the same when every size and the stock give the kerf up', async () => {
    const grow = (problem: SheetProblem): SheetProblem => ({
      ...problem,
      kerf: 0,
      parts: problem.parts.map((part) => ({
        ...part,
        length: part.length + problem.kerf,
        width: part.width + problem.kerf,
      })),
      stock: problem.stock.map((sheet) => ({
        ...sheet,
        length: sheet.length + problem.kerf,
        width: sheet.width + problem.kerf,
      })),
    })
    expect(await compare(grow, (before, after) => expect(after).toBe(before))).toBeGreaterThan(10)
  })

  it('costs the same in units twice as fine', async () => {
    const twice = (problem: SheetProblem): SheetProblem => ({
      kerf: problem.kerf * 2,
      trim: problem.trim * 2,
      keepable: problem.keepable * 2,
      parts: problem.parts.map((part) => ({ ...part, length: part.length * 2, width: part.width * 2 })),
      stock: problem.stock.map((sheet) => ({ ...sheet, length: sheet.length * 2, width: sheet.width * 2 })),
    })
    for (const problem of fc.sample(problemOf(9), { numRuns: 20, seed: 6 })) {
      const { cost, lowerBound, pieces } = await solve(problem)
      expect(await solve(twice(problem))).toMatchObject({ cost, lowerBound, pieces })
    }
  })

  it('never costs more with another sheet to choose from', async () => {
    const more = (problem: SheetProblem): SheetProblem => ({
      ...problem,
      stock: [...problem.stock, { id: 'long', length: 14, width: 8, price: 13 }],
    })
    const compared = await compare(more, (before, after) => expect(after).toBeLessThanOrEqual(before))
    expect(compared).toBeGreaterThan(10)
  })

  it('never costs more with an offcut on hand', async () => {
    const more = (problem: SheetProblem): SheetProblem => ({
      ...problem,
      stock: [...problem.stock, { id: 'offcut', length: 6, width: 6, price: 0, onHand: 1, net: true }],
    })
    const compared = await compare(more, (before, after) => expect(after).toBeLessThanOrEqual(before))
    expect(compared).toBeGreaterThan(10)
  })

  it('never costs more with a part less', async () => {
    const less = (problem: SheetProblem): SheetProblem => ({ ...problem, parts: problem.parts.slice(1) })
    const compared = await compare(less, (before, after) => expect(after).toBeLessThanOrEqual(before))
    expect(compared).toBeGreaterThan(10)
  })

  it('never costs more when parts may be turned', async () => {
    const free = (problem: SheetProblem): SheetProblem => ({
      ...problem,
      parts: problem.parts.map((part) => ({ ...part, turnable: true })),
    })
    const check = (before: number, after: number) => expect(after).toBeLessThanOrEqual(before)
    expect(await compare(free, check, fc.constant(false))).toBeGreaterThan(10)
  })

  it('answers the same for the same seed and number of steps', async () => {
    const [problem] = fc.sample(problemOf(9), { numRuns: 1, seed: 8 })
    if (problem === undefined) throw new Error('no problem was drawn')
    expect(await solve(problem)).toEqual(await solve(problem))
  })
})
