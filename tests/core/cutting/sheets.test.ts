import { describe, expect, it } from 'vitest'
import type { SheetPart, SheetProblem, StockSheet } from '../../../src/core/cutting/problem.ts'
import { cutSheets } from '../../../src/core/cutting/sheets.ts'
import { verifyCost, verifySheets } from '../../../src/core/cutting/verify.ts'

const part = (id: string, length: number, width: number, count: number, turnable = true): SheetPart => ({
  id,
  length,
  width,
  count,
  turnable,
})
const sheet = (id: string, length: number, width: number, price: number, onHand?: number): StockSheet => ({
  id,
  length,
  width,
  price,
  onHand,
})

const afterSteps = (steps: number) => {
  let calls = 0
  return () => ++calls > steps
}

const solve = async (problem: SheetProblem, steps = 2000) => {
  const outcome = await cutSheets(problem, { shouldStop: afterSteps(steps) })
  if (outcome.status === 'impossible') throw new Error(`${outcome.part}: ${outcome.reason}`)
  expect(verifySheets(problem, outcome.layouts)).toEqual([])
  expect(verifyCost(problem, outcome)).toEqual([])
  return outcome
}

describe('cutSheets', () => {
  it('fills a sheet to the last nanometre, kerfs between and none at the edge', async () => {
    const problem = {
      parts: [part('quarter', 1_217_612_500, 608_012_500, 4)],
      stock: [sheet('full', 2_438_400_000, 1_219_200_000, 6250)],
      kerf: 3_175_000,
      trim: 0,
      keepable: 1,
    }
    const outcome = await solve(problem)
    expect(outcome).toMatchObject({ status: 'optimal', cost: 6250, pieces: 1, lowerBound: 6250 })
    expect(outcome.layouts[0]?.offcuts).toEqual([])
  })

  it.each([undefined, 2, 5])(
    'takes none of the sheets that cost nothing (%s on hand) without cutting it',
    async (onHand) => {
      const problem = {
        parts: [part('panel', 18, 15, 2), part('end', 15, 15, 2)],
        stock: [sheet('given', 96, 48, 0, onHand)],
        kerf: 0,
        trim: 0,
        keepable: 1,
      }
      const outcome = await solve(problem)
      expect(outcome).toMatchObject({ status: 'optimal', cost: 0, pieces: 1 })
      expect(outcome.layouts.map(({ count }) => count)).toEqual([1])
    },
  )

  it('needs a second sheet when the kerf is a nanometre wider', async () => {
    const problem = {
      parts: [part('quarter', 1_217_612_500, 608_012_500, 4)],
      stock: [sheet('full', 2_438_400_000, 1_219_200_000, 6250)],
      kerf: 3_175_001,
      trim: 0,
      keepable: 1,
    }
    expect(await solve(problem)).toMatchObject({ status: 'optimal', cost: 12500, pieces: 2 })
  })

  it('takes the trim off bought sheets and not off net offcuts', async () => {
    const problem = {
      parts: [part('square', 90, 90, 2)],
      stock: [{ ...sheet('offcut', 90, 90, 0, 1), net: true }, sheet('full', 100, 100, 500)],
      kerf: 3,
      trim: 5,
      keepable: 10,
    }
    const outcome = await solve(problem)
    expect(outcome).toMatchObject({ status: 'optimal', cost: 500, pieces: 2 })
    const places = outcome.layouts.map((layout) => [layout.stock, layout.placements[0]?.x])
    expect(places).toContainEqual(['full', 5])
    expect(places).toContainEqual(['offcut', 0])
  })

  it('buys the cheap half sheet for the last part', async () => {
    const problem = {
      parts: [part('panel', 60, 40, 5, false)],
      stock: [sheet('full', 120, 80, 1000), sheet('half', 60, 80, 600)],
      kerf: 0,
      trim: 0,
      keepable: 10,
    }
    expect(await solve(problem)).toMatchObject({ status: 'optimal', cost: 1600, pieces: 2 })
  })

  it('names the part that is larger than any sheet', async () => {
    const problem = {
      parts: [part('small', 10, 10, 1), part('long', 99, 10, 1)],
      stock: [sheet('full', 100, 50, 1)],
      kerf: 0,
      trim: 1,
      keepable: 1,
    }
    const outcome = await cutSheets(problem, { shouldStop: () => true })
    expect(outcome).toMatchObject({ status: 'impossible', part: 'long', proven: true })
  })

  it('says when the stock on hand runs out', async () => {
    const problem = {
      parts: [part('panel', 60, 60, 3)],
      stock: [sheet('full', 100, 100, 1, 2)],
      kerf: 0,
      trim: 0,
      keepable: 1,
    }
    const outcome = await cutSheets(problem, { shouldStop: afterSteps(100) })
    expect(outcome).toMatchObject({ status: 'impossible', part: 'panel', proven: true })
  })

  it('cuts nothing for no parts', async () => {
    const problem = { parts: [], stock: [sheet('full', 10, 10, 1)], kerf: 0, trim: 0, keepable: 1 }
    expect(await solve(problem)).toMatchObject({ status: 'optimal', cost: 0, pieces: 0 })
  })
})

describe('cutSheets on stock that nearly runs out', () => {
  it('finds the one way to use it, though the greedy start leaves a part over', async () => {
    const problem = {
      parts: [
        part('strip', 100, 20, 2, false),
        part('block', 60, 60, 1, false),
        part('stick', 40, 60, 1, false),
        part('tile', 50, 50, 2, false),
      ],
      stock: [sheet('full', 100, 100, 7, 1), sheet('half', 100, 50, 5, 1)],
      kerf: 0,
      trim: 0,
      keepable: 1,
    }
    expect(await solve(problem)).toMatchObject({ status: 'optimal', cost: 12, pieces: 2 })
  })
})
