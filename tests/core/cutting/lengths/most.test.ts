import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mostFromLengths } from '../../../../src/core/cutting/lengths/most.ts'
import { verifyLengths } from '../../../../src/core/cutting/verify.ts'
import { verifyYield } from '../../../../src/core/cutting/verify/yield.ts'
import { neverStop, problemOf } from './examples.ts'

const most = (
  parts: [number, number][],
  stock: { length: number; onHand?: number }[],
  measure: 'count' | 'length',
  kerf = 0,
) => {
  const kinds = stock.map((kind, place) => ({ id: `board ${place}`, price: 0, ...kind }))
  return mostFromLengths(problemOf(parts, kinds, kerf), measure, { shouldStop: neverStop })
}

describe('mostFromLengths', () => {
  it('says how many parts one board yields: (96 + 1/8) / (11 13/16 + 1/8) is 8.05', () => {
    const result = most([[189, 1000]], [{ length: 1536 }], 'count', 2)
    expect(result).toMatchObject({ status: 'optimal', count: 8, upperBound: 8 })
    expect(result.layouts).toEqual([
      { stock: 'board 0', count: 1, parts: Array.from({ length: 8 }, () => 'part 1'), offcut: 8 },
    ])
  })

  it('prefers many short parts by count, and a full board by length', () => {
    const parts: [number, number][] = [
      [60, 1],
      [40, 1],
      [25, 3],
    ]
    expect(most(parts, [{ length: 100 }], 'count')).toMatchObject({ status: 'optimal', count: 3 })
    expect(most(parts, [{ length: 100 }], 'length')).toMatchObject({ status: 'optimal', length: 100 })
  })

  it('makes no more than is asked for', () => {
    expect(most([[10, 3]], [{ length: 100, onHand: 2 }], 'count')).toMatchObject({
      status: 'optimal',
      count: 3,
      upperBound: 3,
    })
  })

  it('yields nothing from stock that is too short or not there', () => {
    for (const stock of [[{ length: 9 }], [{ length: 50, onHand: 0 }], []])
      expect(most([[10, 3]], stock, 'count')).toEqual({
        status: 'optimal',
        layouts: [],
        count: 0,
        length: 0,
        worth: 0,
        upperBound: 0,
      })
  })

  it('by worth agrees with every subset of the parts, also where one size is worth this or that', () => {
    const kinds = fc.array(fc.tuple(fc.integer({ min: 10, max: 50 }), fc.integer({ min: 0, max: 20 })), {
      minLength: 1,
      maxLength: 9,
    })
    fc.assert(
      fc.property(kinds, fc.integer({ min: 0, max: 3 }), (drawn, kerf) => {
        // Every third part is as long as the first, whatever it is worth.
        const sized = drawn.map(([length, worth], at) => ({
          length: at % 3 === 0 ? drawn[0]![0] : length,
          worth,
        }))
        let best = 0
        for (let chosen = 1; chosen < 1 << sized.length; chosen++) {
          const held = sized.filter((_, place) => (chosen >> place) & 1)
          const total = held.reduce((sum, { length }) => sum + length + kerf, -kerf)
          if (total <= 100)
            best = Math.max(
              best,
              held.reduce((sum, { worth }) => sum + worth, 0),
            )
        }
        const parts = sized.map((part, at) => ({ id: `part ${at}`, count: 1, ...part }))
        const problem = { ...problemOf([], [{ id: 'board', length: 100, price: 0 }], kerf), parts }
        const result = mostFromLengths(problem, 'worth', { shouldStop: neverStop })
        expect(result).toMatchObject({ status: 'optimal', worth: best, upperBound: best })
        expect(verifyLengths(problem, result.layouts, 'most')).toEqual([])
        expect(verifyYield(problem, result, 'worth')).toEqual([])
      }),
      { numRuns: 60, seed: 7 },
    )
  })

  it('agrees with every subset of the parts of one board', () => {
    const sizes = fc.array(fc.integer({ min: 3, max: 60 }), { minLength: 1, maxLength: 9 })
    fc.assert(
      fc.property(sizes, fc.integer({ min: 0, max: 3 }), (lengths, kerf) => {
        let best = 0
        for (let chosen = 1; chosen < 1 << lengths.length; chosen++) {
          const held = lengths.filter((_, place) => (chosen >> place) & 1)
          const total = held.reduce((sum, length) => sum + length, 0)
          if (total + (held.length - 1) * kerf <= 100) best = Math.max(best, total)
        }
        const parts = lengths.map((length) => [length, 1] as [number, number])
        const result = most(parts, [{ length: 100 }], 'length', kerf)
        expect(result).toMatchObject({ status: 'optimal', length: best, upperBound: best })
        const problem = problemOf(parts, [{ id: 'board 0', length: 100, price: 0 }], kerf)
        expect(verifyLengths(problem, result.layouts, 'most')).toEqual([])
        expect(verifyYield(problem, result, 'length')).toEqual([])
      }),
      { numRuns: 60, seed: 2 },
    )
  })
})
