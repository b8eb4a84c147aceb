import { describe, expect, it } from 'vitest'
import type { LengthLayout, Outcome } from '../../src/core/cutting/problem.ts'
import { faultOverall } from '../../src/core/cutting/verify/fault.ts'
import { order, verified, work } from '../../src/search/worker.ts'

const found: Outcome<LengthLayout> = {
  status: 'optimal',
  layouts: [{ stock: 'S', count: 1, parts: ['A'], offcut: 0 }],
  cost: 1,
  pieces: 1,
  lowerBound: 1,
}

describe('verified', () => {
  it('lets a sound layout through as it is', () => expect(verified(found, () => [])).toBe(found))

  it('never lets a wrong one through', () =>
    expect(() => verified(found, () => [faultOverall('demand', 'part "A" is cut twice')])).toThrow(
      'a layout does not hold: part "A" is cut twice',
    ))

  it('asks nothing of what cannot be cut', () => {
    const impossible: Outcome<LengthLayout> = {
      status: 'impossible',
      part: 'A',
      reason: 'too long',
      proven: true,
    }
    expect(verified(impossible, () => [faultOverall('demand', 'never asked')])).toBe(impossible)
  })
})

describe('work', () => {
  const stop = (value: number) => {
    const shared = new SharedArrayBuffer(4)
    new Int32Array(shared)[0] = value
    return shared
  }
  const parts = [{ id: 'A', length: 40, count: 4 }]
  const stock = [{ id: 'S', length: 96, price: 700 }]
  const problem = { parts, stock, kerf: 1, trim: 0, keepable: 10 }

  it('answers each kind of question', async () => {
    const lengths = await work({ kind: 'lengths', problem, seconds: 2, stop: stop(0) })
    expect(lengths.outcome).toMatchObject({ status: 'optimal', pieces: 2, cost: 1400 })
    const strips = { ...problem, stock: [{ ...stock[0]!, strips: 2 }] }
    const ripped = await work({ kind: 'strips', problem: strips, seconds: 2, stop: stop(0) })
    expect(ripped.outcome).toMatchObject({ status: 'optimal', pieces: 1, cost: 700 })
    const sheet = { parts: [{ id: 'P', length: 50, width: 50, count: 3, turnable: true }] }
    const sheets = await work({
      kind: 'sheets',
      problem: { ...problem, ...sheet, stock: [{ id: 'S', length: 101, width: 51, price: 5 }] },
      seconds: 2,
      stop: stop(0),
    })
    expect(sheets.outcome).toMatchObject({ status: 'optimal', pieces: 2, cost: 10 })
  })

  it('answers what the most is, by pieces and by worth', async () => {
    const boards = { ...problem, parts: [{ ...parts[0]!, count: 9, worth: 5 }] }
    const task = { kind: 'most from lengths', problem: boards, seconds: 2, stop: stop(0) } as const
    expect((await work({ ...task, measure: 'count' })).outcome).toMatchObject({ status: 'optimal', count: 2 })
    expect((await work({ ...task, measure: 'worth' })).outcome).toMatchObject({ worth: 10, upperBound: 10 })
    const sheets = await work({
      kind: 'most from sheets',
      problem: {
        ...problem,
        parts: [{ id: 'P', length: 50, width: 50, count: 9, turnable: true, worth: 1 }],
        stock: [{ id: 'S', length: 101, width: 51, price: 5 }],
      },
      seconds: 2,
      stop: stop(0),
    })
    expect(sheets.outcome).toMatchObject({ status: 'optimal', worth: 2, upperBound: 2 })
  })

  it('orders the cuts of what was laid out', () => {
    const layouts = [{ stock: 'S', count: 2, parts: ['A', 'A'], offcut: 14 }]
    const { steps } = order({ lengths: { problem, layouts }, safeWidth: 1, step: 1 })
    expect(steps.map(({ setting, cuts }) => [setting, cuts.length])).toEqual([[40, 4]])
  })

  it('gives what it has when it is told to stop from the first', async () => {
    const { outcome } = await work({ kind: 'lengths', problem, seconds: 8, stop: stop(1) })
    expect(outcome).toMatchObject({ pieces: 2 })
  })
})
