import { describe, expect, it } from 'vitest'
import type { Yield } from '../../../../src/core/cutting/lengths/most.ts'
import { verifyLengths } from '../../../../src/core/cutting/verify.ts'
import { verifyYield } from '../../../../src/core/cutting/verify/yield.ts'

const problem = {
  parts: [
    { id: 'A', length: 40, count: 4, worth: 5 },
    { id: 'B', length: 15, count: 1, worth: 1 },
  ],
  stock: [{ id: 'S', length: 100, price: 0, onHand: 2 }],
  kerf: 1,
  trim: 0,
  keepable: 10,
}
const layouts = [{ stock: 'S', count: 2, parts: ['A', 'A'], offcut: 18 }]
const found: Yield = { status: 'optimal', layouts, count: 4, length: 160, worth: 20, upperBound: 20 }

describe('verifyYield', () => {
  it('has nothing to say of sums that hold', () => {
    expect(verifyYield(problem, found, 'worth')).toEqual([])
    expect(verifyYield(problem, { ...found, upperBound: 4 }, 'count')).toEqual([])
  })

  it.each([
    [{ count: 5 }, 'a count of 5 is claimed, but 4 is laid'],
    [{ length: 1 }, 'a length of 1 is claimed, but 160 is laid'],
    [{ worth: 21 }, 'a worth of 21 is claimed, but 20 is laid'],
    [{ upperBound: 19 }, 'the upper bound 19 is below the worth 20'],
    [{ upperBound: 22 }, 'called optimal at 20 on a bound of 22'],
  ])('tells of %j', (wrong, said) =>
    expect(verifyYield(problem, { ...found, ...wrong }, 'worth').map(({ sentence }) => sentence)).toEqual([
      said,
    ]),
  )

  it('leaves a bound open where the search was stopped', () =>
    expect(verifyYield(problem, { ...found, status: 'stopped', upperBound: 22 }, 'worth')).toEqual([]))
})

describe('verifyLengths, of the most', () => {
  it('lets parts be left over, but none be made too often, and no stock be used that is not there', () => {
    expect(verifyLengths(problem, layouts, 'most')).toEqual([])
    expect(verifyLengths(problem, layouts).map(({ rule }) => rule)).toEqual(['demand'])
    const often = [{ ...layouts[0]!, count: 3 }]
    expect(verifyLengths(problem, often, 'most').map(({ rule }) => rule)).toEqual(['demand', 'onHand'])
  })
})
