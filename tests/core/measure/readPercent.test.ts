import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readPercent } from '../../../src/core/measure/readPercent.ts'

describe('readPercent', () => {
  it.each([
    ['65%', 65],
    ['65', 65],
    ['7.5 percent', 7.5],
    ['7,5 %', 7.5],
    ['65 % RH', 65],
    ['0%', 0],
    ['100 per cent', 100],
    ['0.5%', 0.5],
  ])('%s is %d', (text, percent) => {
    expect(readPercent(text)).toEqual({ status: 'read', percent })
  })

  it('asks whether a bare part of one is a part or a percentage', () => {
    expect(readPercent('0.65')).toEqual({
      status: 'ambiguous',
      question: '"0.65" could be 0.65% or 65%; write 0.65% or 65%',
    })
  })

  it.each(['101%', '-5%', 'damp', '65C', '65 in', '1/2', '', '%', '5%5%', '6'.repeat(300)])(
    'refuses %s',
    (text) => {
      expect(readPercent(text).status).toBe('invalid')
    },
  )

  it('reads back every tenth of a percent', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 1000 }), (tenths) => {
        expect(readPercent(`${tenths / 10}%`)).toEqual({ status: 'read', percent: tenths / 10 })
      }),
    )
  })
})
