import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Densest } from '../../../../../src/core/cutting/sheets/fill/densest.ts'

describe('Densest', () => {
  const densities = fc.array(fc.integer({ min: 1, max: 50 }), { maxLength: 200 })

  it('gives so many of the densest pairs, the densest first, each as it was added', () => {
    fc.assert(
      fc.property(densities, fc.integer({ min: 1, max: 6 }), (added, limit) => {
        const densest = new Densest(limit)
        for (const [index, density] of added.entries()) densest.add(index, index + 1, density)
        const taken = densest.take((first, second) => ({ first, second }))
        const sorted = [...added].sort((a, b) => b - a).slice(0, limit)
        expect(taken.map(({ first }) => added[first])).toEqual(sorted)
        expect(new Set(taken.map(({ first }) => first)).size).toBe(taken.length)
        for (const { first, second } of taken) expect(second).toBe(first + 1)
      }),
      { seed: 1 },
    )
  })

  it('forgets what was taken', () => {
    const densest = new Densest(2)
    for (let index = 0; index < 40; index++) densest.add(index, -1, 100 + index)
    expect(densest.take((first) => first)).toEqual([39, 38])
    densest.add(7, -1, 1)
    expect(densest.take((first) => first)).toEqual([7])
  })
})
