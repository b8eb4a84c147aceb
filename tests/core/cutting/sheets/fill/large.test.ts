import { describe, expect, it } from 'vitest'
import type { SheetProblem } from '../../../../../src/core/cutting/problem.ts'
import { isLarge } from '../../../../../src/core/cutting/sheets/fill/reach.ts'
import { fillPattern, fillRoom } from '../../../../../src/core/cutting/sheets/fill/roomFill.ts'
import { StackBooks } from '../../../../../src/core/cutting/sheets/fill/stackBook.ts'
import { readJob } from '../../../../../src/core/cutting/sheets/job.ts'
import { emptyPacking } from '../../../../../src/core/cutting/sheets/packing.ts'
import { listPieces } from '../../../../../src/core/cutting/sheets/pattern.ts'
import { createRandom } from '../../../../../src/core/cutting/sheets/random.ts'
import { cutSheets } from '../../../../../src/core/cutting/sheets.ts'
import { verifyCost, verifySheets } from '../../../../../src/core/cutting/verify.ts'
import { afterSteps } from '../steps.ts'

/** Some 540 parts of 60 sizes, a third of which may not be turned. */
const problem: SheetProblem = {
  parts: Array.from({ length: 60 }, (_, index) => ({
    id: `P${index}`,
    length: 200 + ((index * 137) % 401),
    width: 60 + ((index * 89) % 241),
    count: 5 + 2 * (index % 5),
    turnable: index % 3 > 0,
  })),
  stock: [
    { id: 'full', length: 2440, width: 1220, price: 60 },
    { id: 'half', length: 1220, width: 1220, price: 33 },
    { id: 'offcut', length: 900, width: 700, price: 0, onHand: 2, net: true },
  ],
  kerf: 3,
  trim: 5,
  keepable: 100,
}
const job = readJob(problem)
const never = () => false

describe('fillRoom', () => {
  const { sizes, left } = emptyPacking(job)
  const pool = { sizes, left: left.slice(), worth: sizes.area }
  const sheet = job.sheets[0]!
  const books = new StackBooks(job)
  const fill = fillRoom(pool, sheet, books, { turns: 1, tries: 4 }, createRandom(2), never)
  const pieces = listPieces(fillPattern(fill))

  it('fills most of a sheet from a pool of many parts', () => {
    const area = pieces.reduce((sum, index) => sum + sizes.area[index >> 1]!, 0)
    expect(area).toBe(fill.worth)
    expect(area / sheet.area).toBeGreaterThan(0.97)
    expect(area).toBeLessThanOrEqual(sheet.area)
  })

  it('takes no more parts than there are, none across the grain, and leaves the pool as it was', () => {
    expect(pool.left).toEqual(left)
    for (const [part, count] of left.entries())
      expect(pieces.filter((index) => index >> 1 === part).length).toBeLessThanOrEqual(count)
    for (const index of pieces) if (index % 2 === 1) expect(job.parts[index >> 1]!.turnable).toBe(true)
  })

  it('fills nothing once it is told to stop', () => {
    const stopped = fillRoom(pool, sheet, books, { turns: 1, tries: 4 }, createRandom(2), () => true)
    expect(fillPattern(stopped)).toBeUndefined()
  })
})

describe('cutSheets on a large job', () => {
  const run = async (steps: number) => {
    const outcome = await cutSheets(problem, { shouldStop: afterSteps(steps), seed: 1 })
    if (outcome.status === 'impossible') throw new Error(outcome.reason)
    return outcome
  }

  it.each([0, 30, 200, 600])('holds when stopped after %i steps', async (steps) => {
    expect(isLarge(job)).toBe(true)
    const outcome = await run(steps)
    expect(verifySheets(problem, outcome.layouts)).toEqual([])
    expect(verifyCost(problem, outcome)).toEqual([])
  })

  it('lays what the stock on hand just about holds, or says that it found no way', async () => {
    const need = job.parts.reduce((sum, part) => sum + part.area * part.count, 0)
    const [full] = job.sheets
    const onHand = Math.ceil(need / full!.area)
    const scarce = { ...problem, stock: [{ ...problem.stock[0]!, onHand }] }
    expect(need / (onHand * full!.area)).toBeGreaterThan(0.985)
    const outcome = await cutSheets(scarce, { shouldStop: afterSteps(400), seed: 1 })
    if (outcome.status === 'impossible') expect(outcome.proven).toBe(false)
    else expect(verifySheets(scarce, outcome.layouts)).toEqual([])
  })

  it('costs less with more time, and the same for the same time', async () => {
    const [short, long] = [await run(0), await run(600)]
    expect(long.cost).toBeLessThan(short.cost)
    expect(await run(600)).toEqual(long)
  })
})
