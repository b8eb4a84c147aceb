import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches, type Length, ZERO } from '../../../src/core/measure/length.ts'
import { chooseEnds } from '../../../src/core/panelling/brace.ts'
import { diagonal } from '../../../src/core/panelling/diagonal.ts'
import { lengths } from './specs.ts'

describe('chooseEnds', () => {
  it('ends a low brace on the stiles and a steep one on the rails', () => {
    const low = chooseEnds(inches(46), inches(29), inches(7, 2), 45)
    expect(low).toMatchObject({ status: 'within', diagonal: { ends: 'stiles' } })
    const steep = chooseEnds(inches(29), inches(46), inches(7, 2), 45)
    expect(steep).toMatchObject({ status: 'within', diagonal: { ends: 'rails' } })
  })

  it('takes the smaller of the two settings, and every saw that reaches 45 has one', () => {
    fc.assert(
      fc.property(lengths(60, 2500), lengths(60, 2500), lengths(5, 59), (width, height, strip) => {
        const found = chooseEnds(width, height, strip, 45)
        if (found.status === 'impossible') throw new Error(found.kind)
        expect(found.status).toBe('within')
        const both = (['rails', 'stiles'] as const).map((ends) => diagonal({ width, height, strip, ends }))
        const saws = both.map((one) => (one.status === 'laid' ? one.saw : Number.NaN))
        expect(found.diagonal.saw).toBe(Math.min(...saws))
        expect(both).toContainEqual(found.diagonal)
      }),
    )
  })

  it('names the complementary setting where the saw does not reach', () => {
    const found = chooseEnds(inches(40), inches(40), inches(1, 2), 30)
    if (found.status === 'impossible') throw new Error(found.kind)
    expect(found.status).toBe('jig')
    expect(found.diagonal.saw).toBeGreaterThan(30)
    expect(found.complement + found.diagonal.saw).toBeCloseTo(90, 12)
    expect(chooseEnds(inches(40), inches(40), inches(1, 2), found.diagonal.saw).status).toBe('within')
  })

  it('has no answer for a strip as wide as the opening', () => {
    expect(chooseEnds(inches(9), inches(4), inches(4), 45)).toMatchObject({
      status: 'impossible',
      below: inches(4),
    })
    expect(chooseEnds(inches(9), ZERO, 1 as Length, 45)).toMatchObject({
      status: 'impossible',
      kind: 'notPositive',
    })
  })
})
