import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mentions } from '../../../src/core/checks/cautionWords.ts'

describe('mentions', () => {
  it.each([
    ['a generator', 'generator'],
    ['GENERATORS', 'generator'],
    ["my neighbour's generator's box", 'generator'],
    ['batteries', 'battery'],
    ['two boxes', 'box'],
    ['heat pump', 'heatpump'],
    ['heatpump', 'heat pump'],
    ['heat-pumps', 'heat pump'],
    ['the heat\u00a0pump', 'heat pump'],
    ['A/C', 'ac'],
    ['a.c. unit', 'ac'],
    ['rétro radiátor', 'radiator'],
    ['generater', 'generator'],
    ['genrator', 'generator'],
    ['air conditionner', 'air conditioner'],
  ])('%s names %s', (text, phrase) => {
    expect(mentions(text, [phrase])).toBe(true)
  })

  it.each([
    ['home theater', 'heater'],
    ['heather', 'heater'],
    ['a c clamp', 'ac'],
    ['pump for heat', 'heat pump'],
    ['fire', 'fire pit'],
    ['pack of cards', 'ac'],
    ['', 'heater'],
    ['!?', 'heater'],
  ])('%s does not name %s', (text, phrase) => {
    expect(mentions(text, [phrase])).toBe(false)
  })

  it.each([
    ['hair dryer', false],
    ['hair dryer beside a dryer', true],
    ['dryer and hair dryers', true],
    ['hair-dryer, hairdryer', false],
  ])('%s, apart from a hair dryer: %s', (text, named) => {
    expect(mentions(text, ['dryer'], ['hair dryer'])).toBe(named)
  })

  it.each([
    ['heat-coloured pump', 'heat pump', false],
    ['grill-pattern grill', 'grill', true],
    ['a heater-shaped box', 'heater', false],
    ['generator trophies', 'generator', false],
    ['trophy generator', 'generator', true],
  ])('sees that %s only looks like it, or not: %s %s', (text, phrase, named) => {
    expect(mentions(text, [phrase])).toBe(named)
  })

  it('passes nothing over for a slip', () => {
    expect(mentions('a cover to engine spec', ['engine'], ['toy engine'])).toBe(true)
    expect(mentions('toy engines', ['engine'], ['toy engine'])).toBe(false)
  })

  it('does not join the words on both sides of what it passes over', () => {
    expect(mentions('heat fan grill pump', ['heat pump'], ['fan grill'])).toBe(false)
  })

  it('finds a phrase anywhere among other words, in any case', () => {
    const word = fc.constantFrom('the', 'old', 'red', 'box', 'big')
    fc.assert(
      fc.property(fc.array(word), fc.array(word), fc.boolean(), (before, after, loud) => {
        const text = [...before, 'fire pit', ...after].join(' ')
        expect(mentions(loud ? text.toUpperCase() : text, ['fire pit'])).toBe(true)
        expect(mentions([...before, ...after].join(' '), ['fire pit'])).toBe(false)
      }),
    )
  })

  it('finds a word after any text at all', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(mentions(`${text} generator`, ['generator'], ['ac adapter'])).toBe(true)
      }),
    )
  })
})
