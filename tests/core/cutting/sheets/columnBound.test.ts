import { describe, expect, it } from 'vitest'
import { loadSolver, type Solver } from '../../../../src/core/cutting/linearProgram.ts'
import type { SheetProblem } from '../../../../src/core/cutting/problem.ts'
import { cutSheets } from '../../../../src/core/cutting/sheets.ts'
import { scaleBound } from '../../../../src/core/cutting/sheets/bound.ts'
import { ColumnBound } from '../../../../src/core/cutting/sheets/columnBound.ts'
import { readJob } from '../../../../src/core/cutting/sheets/job.ts'
import { readSizes } from '../../../../src/core/cutting/sheets/packing.ts'
import { verifyCost, verifySheets } from '../../../../src/core/cutting/verify.ts'
import { leastCost } from './exhaustive.ts'
import { afterSteps } from './steps.ts'

const neverStop = () => false

/** Two parts fill the length of a sheet (4 + 4 or 4 + 3 of 10), so five need three sheets; their area fits on two. */
const five: SheetProblem = {
  parts: [
    { id: 'turned', length: 4, width: 3, count: 1, turnable: true },
    { id: 'fixed', length: 4, width: 3, count: 4, turnable: false },
  ],
  stock: [{ id: 'sheet', length: 10, width: 5, price: 7 }],
  kerf: 0,
  trim: 0,
  keepable: 1,
}

/** A solver that breaks down as soon as it is used. */
const brokenBy = async (error: Error): Promise<Solver> => ({
  ...(await loadSolver()),
  createModel: () => {
    throw error
  },
})

const trap = Object.assign(new Error('unreachable'), { name: 'RuntimeError' })

/** The bound after so many rounds, or when nothing more can come of it. */
const boundOf = async (problem: SheetProblem, rounds: number): Promise<ColumnBound> => {
  const job = readJob(problem)
  const columns = new ColumnBound(job, readSizes(job), 700, await loadSolver())
  for (let round = 0; round < rounds && !columns.done; round++) columns.advance(neverStop)
  columns.dispose()
  return columns
}

describe('ColumnBound', () => {
  it('proves what areas and dual functions do not', async () => {
    expect(scaleBound(readJob(five), 30, neverStop)).toBe(14)
    const { value, done } = await boundOf(five, 200)
    expect({ value, done }).toEqual({ value: 21, done: true })
    expect(leastCost(five)).toBe(21)
  })

  it('counts with the sheets on hand', async () => {
    const some = [
      { id: 'rest', length: 10, width: 5, price: 2, onHand: 1 },
      { id: 'sheet', length: 10, width: 5, price: 7 },
    ]
    expect((await boundOf({ ...five, stock: some }, 200)).value).toBe(2 + 2 * 7)
  })

  it('is nothing where a sheet that costs nothing holds all', async () => {
    const free = { ...five, stock: [{ id: 'rest', length: 20, width: 10, price: 0, onHand: 1 }] }
    expect((await boundOf(free, 200)).value).toBe(0)
  })
})

describe('cutSheets', () => {
  it('proves the least cost by it', async () => {
    const outcome = await cutSheets(five, { shouldStop: afterSteps(500) })
    expect(outcome).toMatchObject({ status: 'optimal', cost: 21, lowerBound: 21 })
  })

  it('keeps what it has when the solver breaks down, and lets other errors through', async () => {
    const load = () => brokenBy(trap)
    const outcome = await cutSheets(five, { shouldStop: afterSteps(500), load })
    if (outcome.status === 'impossible') throw new Error(outcome.reason)
    expect(outcome).toMatchObject({ status: 'stopped', cost: 21, lowerBound: 14 })
    expect(verifySheets(five, outcome.layouts)).toEqual([])
    expect(verifyCost(five, outcome)).toEqual([])
    const bug = () => brokenBy(new TypeError('a bug'))
    await expect(cutSheets(five, { shouldStop: afterSteps(500), load: bug })).rejects.toThrow(TypeError)
  })
})
