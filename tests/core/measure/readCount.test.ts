import { describe, expect, it } from 'vitest'
import { readCount } from '../../../src/core/measure/readCount.ts'

describe('readCount', () => {
  it.each([
    ['3', 3],
    ['three', 3],
    ['twenty-four', 24],
    ['x3', 3],
    ['3x', 3],
    ['3 off', 3],
    ['qty 3', 3],
    ['(3)', 3],
    ['10000', 10_000],
    ['1,000', 1000],
    ['３', 3],
  ])('%j is %d', (input, count) => {
    expect(readCount(input)).toEqual({ status: 'read', count })
  })

  it.each(['', '0', '-3', '2.5', '10001', '3 in', '3 4', 'a', 'banana', '1/2', '1e3', '∞'])(
    '%j is refused',
    (input) => {
      expect(readCount(input)).toMatchObject({
        status: 'invalid',
        problem: `cannot read ${JSON.stringify(input)} as a count; write a whole number`,
      })
    },
  )
})
