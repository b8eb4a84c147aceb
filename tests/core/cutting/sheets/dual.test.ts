import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dualFunctions } from '../../../../src/core/cutting/sheets/dual.ts'

describe('dualFunctions', () => {
  const whole = 60
  const functions = dualFunctions(whole, [7, 13, 20, 25, 30, 41], 20)

  it('makes a good many', () => {
    expect(functions.length).toBeGreaterThan(30)
  })

  it('gives a sum at least what it gives its parts together', () => {
    for (const apply of functions)
      for (let first = 0; first <= whole; first++)
        for (let second = 0; first + second <= whole; second++)
          expect(apply(first) + apply(second)).toBeLessThanOrEqual(apply(first + second))
  })

  it('never falls', () => {
    for (const apply of functions)
      for (let length = 1; length <= whole; length++)
        expect(apply(length)).toBeGreaterThanOrEqual(apply(length - 1))
  })

  it('is superadditive for any whole and any lengths', () => {
    const lengths = fc.array(fc.integer({ min: 1, max: 500 }), { minLength: 1, maxLength: 6 })
    fc.assert(
      fc.property(
        fc.integer({ min: 500, max: 900 }),
        lengths,
        fc.nat(500),
        fc.nat(400),
        (size, list, a, b) => {
          fc.pre(a + b <= size)
          for (const apply of dualFunctions(size, list, 10))
            expect(apply(a) + apply(b)).toBeLessThanOrEqual(apply(a + b))
        },
      ),
      { numRuns: 300, seed: 1 },
    )
  })
})
