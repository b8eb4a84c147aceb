import { describe, expect, it } from 'vitest'
import { didYouMean, listed, suggest } from '../../src/bot/suggest.ts'

const COMMANDS = [
  'cautions',
  'convert',
  'diagonal',
  'finish',
  'grooves',
  'help',
  'project',
  'sizing',
  'spacing',
  'strips',
  'units',
]

describe('suggest', () => {
  it.each([
    ['strip', 'strips'],
    ['stripes', 'strips'],
    ['sizng', 'sizing'],
    ['diag', 'diagonal'],
    ['projcet', 'project'],
    ['unit', 'units'],
    ['sizign', 'sizing'],
    ['hlep', 'help'],
    ['HELP', 'help'],
  ])('takes %s for %s first', (typed, meant) => {
    expect(suggest(typed, COMMANDS)[0]).toBe(meant)
  })

  it('offers nothing for something else altogether', () => {
    expect(suggest('bananas', COMMANDS)).toEqual([])
    expect(didYouMean('bananas', COMMANDS)).toBe('')
  })

  it('asks in one sentence', () => {
    expect(didYouMean('strps', COMMANDS)).toBe(' Did you mean strips?')
  })
})

describe('listed', () => {
  it.each([
    [[], ''],
    [['a'], 'a'],
    [['a', 'b'], 'a or b'],
    [['a', 'b', 'c'], 'a, b or c'],
  ])('joins %j', (words, text) => {
    expect(listed(words, 'or')).toBe(text)
  })
})
