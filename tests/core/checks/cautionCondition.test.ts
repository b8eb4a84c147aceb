import { describe, expect, it } from 'vitest'
import { type Conditions, meets } from '../../../src/core/checks/cautionCondition.ts'
import type { Facts } from '../../../src/core/checks/cautionFacts.ts'

const CASES: readonly (readonly [string, Facts, Conditions, boolean])[] = [
  ['below is strict', { weight: 25 }, { weight: { below: 25 } }, false],
  ['below', { weight: 24.9 }, { weight: { below: 25 } }, true],
  ['above is strict', { weight: 25 }, { weight: { above: 25 } }, false],
  ['above', { weight: 25.1 }, { weight: { above: 25 } }, true],
  ['at least takes the limit in', { weight: 25 }, { weight: { atLeast: 25 } }, true],
  ['at most takes the limit in', { weight: 25 }, { weight: { atMost: 25 } }, true],
  ['at most', { weight: 26 }, { weight: { atMost: 25 } }, false],
  ['two tests on one fact', { weight: 30 }, { weight: { above: 16, atMost: 25 } }, false],
  ['two facts, both', { weight: 30, scrap: true }, { weight: { above: 16 }, scrap: { is: true } }, true],
  ['two facts, one', { weight: 30, scrap: false }, { weight: { above: 16 }, scrap: { is: true } }, false],
  ['nothing is not zero', {}, { weight: { below: 25 } }, false],
  ['zero is a number', { weight: 0 }, { weight: { below: 25 } }, true],
  ['times another fact', { height: 901, base: 300 }, { height: { above: { fact: 'base', times: 3 } } }, true],
  [
    'times another, at it',
    { height: 900, base: 300 },
    { height: { above: { fact: 'base', times: 3 } } },
    false,
  ],
  ['times one not known', { height: 900 }, { height: { above: { fact: 'base', times: 3 } } }, false],
  ['is', { finishKind: 'oil' }, { finishKind: { is: 'oil' } }, true],
  ['is another', { finishKind: 'water' }, { finishKind: { is: 'oil' } }, false],
  ['is false', { scrap: false }, { scrap: { is: false } }, true],
  ['is false of nothing', {}, { scrap: { is: false } }, false],
  ['any of', { finishKind: 'solvent' }, { finishKind: { anyOf: ['oil', 'solvent'] } }, true],
  ['none of any of', { finishKind: 'water' }, { finishKind: { anyOf: ['oil', 'solvent'] } }, false],
  ['any of nothing', {}, { finishKind: { anyOf: ['oil'] } }, false],
  ['none of', { open: 'none' }, { open: { noneOf: ['top', 'both'] } }, true],
  ['one of none of', { open: 'both' }, { open: { noneOf: ['top', 'both'] } }, false],
  ['none of, of nothing', {}, { open: { noneOf: ['top', 'both'] } }, true],
  ['present', { mitre: 0 }, { mitre: { present: true } }, true],
  ['not present', { temperature: 5 }, { temperature: { present: false } }, false],
  ['absent as asked', {}, { temperature: { present: false } }, true],
  ['words', { object: 'my heaters' }, { object: { words: ['heater'] } }, true],
  ['words passed over', { object: 'toy oven' }, { object: { words: ['oven'], except: ['toy oven'] } }, false],
  ['words of nothing', {}, { object: { words: ['heater'] } }, false],
  ['no conditions', {}, {}, true],
]

describe('meets', () => {
  it.each(CASES)('%s', (_, facts, conditions, outcome) => {
    expect(meets(facts, conditions)).toBe(outcome)
  })
})
