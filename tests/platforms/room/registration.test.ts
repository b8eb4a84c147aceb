import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { completions } from '../../../src/platforms/room/registration.ts'
import { catalogue } from '../../room.ts'

describe('completions', () => {
  it.each([
    ['', [...catalogue.keys()]],
    ['si', ['sizing']],
    ['project ch', ['change']],
    ['project st', ['start']],
    ['project start hei', ['height=']],
    ['strips 2x6 ri', ['rip=']],
    ['sizing corner=c', ['corner=captured', 'corner=cleated']],
    ['sizing 17in x 13in braces=a', ['braces=all']],
    ['project constructor ', []],
    ['constructor ', []],
    ['wat ', []],
  ])('after %j', (line, expected) => {
    expect(completions(line, catalogue)).toEqual(expected)
  })

  it('offer every option after a space', () => {
    expect(completions('grooves ', catalogue)).toEqual([
      'panel=',
      'count=',
      'pitch=',
      'kerf=',
      'thickness=',
      'stiles=',
    ])
  })

  it('go on from what was typed, whatever that is', () => {
    const words = fc.array(
      fc.oneof(
        fc.constantFrom(...catalogue.keys(), 'start', 'corner=', '__proto__', 'toString'),
        fc.string(),
      ),
    )
    fc.assert(
      fc.property(words, (typed) => {
        const line = typed.join(' ')
        for (const each of completions(line, catalogue))
          expect(each.startsWith(line.split(/\s+/u).at(-1) ?? '')).toBe(true)
      }),
    )
  })
})
