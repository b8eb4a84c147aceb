import { describe, expect, it } from 'vitest'
import { cautionsFile } from '../../src/config/cautions.ts'
import { expected } from '../../src/config/explain.ts'
import { shippedRules } from '../core/checks/shippedRules.ts'

const RULE = {
  id: 'thin',
  tasks: ['rip'],
  when: [{ ripWidth: { below: '1in' } }],
  text: 'Mind it.',
  source: 'common practice',
}

/** The first thing wrong with a rule, as `path: what was expected`. */
function fault(change: object): string {
  const outcome = cautionsFile.safeParse({ rules: [{ ...RULE, ...change }] }, { error: expected })
  const [issue] = outcome.success ? [] : outcome.error.issues
  return issue ? `${issue.path.slice(2).join('.')}: ${issue.message}` : 'fine'
}

describe('the shape of config/cautions.yaml', () => {
  it('reads lengths as mm and multiples of other facts', () => {
    const when = [{ ripWidth: { below: '1/4in', atLeast: '3mm' } }, { height: { above: '3 x base' } }]
    expect(cautionsFile.parse({ rules: [{ ...RULE, when }] })[0]?.when).toEqual([
      { ripWidth: { below: 6.35, atLeast: 3 } },
      { height: { above: { fact: 'base', times: 3 } } },
    ])
  })

  const when = (conditions: object): object => ({ when: [conditions] })
  const LENGTH = 'a length such as "2in", or times another length such as "3 x base"'
  it.each([
    ['as it is', {}, 'fine'],
    ['a fact that is not one', when({ ripWdith: { below: '1in' } }), 'when.0: Unrecognized key: "ripWdith"'],
    [
      'a test that is not one',
      when({ ripWidth: { under: '1in' } }),
      'when.0.ripWidth: Unrecognized key: "under"',
    ],
    ['a test of another kind', when({ scrap: { below: 3 } }), 'when.0.scrap.is: true or false'],
    ['a length without a unit', when({ ripWidth: { below: '25' } }), `when.0.ripWidth.below: ${LENGTH}`],
    ['a bare number for a length', when({ ripWidth: { below: 25 } }), `when.0.ripWidth.below: ${LENGTH}`],
    ['times what is no length', when({ height: { above: '3 x grooves' } }), `when.0.height.above: ${LENGTH}`],
    ['times nothing', when({ height: { above: '0 x base' } }), `when.0.height.above: ${LENGTH}`],
    ['a text for a number', when({ mitre: { above: 'steep' } }), 'when.0.mitre.above: a number'],
    ['no test', when({ mitre: {} }), 'when.0.mitre: at least one test'],
    ['no condition', when({}), 'when.0: at least one test that fails where the fact is not known'],
    [
      'only an absence',
      when({ mitre: { present: false } }),
      'when.0: at least one test that fails where the fact is not known',
    ],
    [
      'only an opening',
      when({ open: { noneOf: ['top'] } }),
      'when.0: at least one test that fails where the fact is not known',
    ],
    [
      'an opening that is none',
      when({ open: { noneOf: ['lid'] } }),
      'when.0.open.noneOf.0: none, top, sides or both',
    ],
    [
      'a finish that is none',
      when({ finishKind: { is: 'oyl' } }),
      'when.0.finishKind.is: oil, water or solvent',
    ],
    [
      'an exception to nothing',
      when({ object: { except: ['toy'] } }),
      'when.0.object.except: "words" beside "except"',
    ],
    [
      'capitals in words',
      when({ object: { words: ['AC'] } }),
      'when.0.object.words.0: words in lower case with single spaces',
    ],
    ['no alternative', { when: [] }, 'when: a list with a length of at least 1'],
    ['no when', { when: undefined }, 'when: a list'],
    ['a long text', { text: `${'a'.repeat(160)}.` }, 'text: text with a length of at most 160'],
    ['no full stop', { text: 'Mind it' }, 'text: one or two sentences that end in a full stop'],
    ['long advice', { more: 'a'.repeat(601) }, 'more: text with a length of at most 600'],
    [
      'a stop with no way on',
      { stops: true },
      'text: a text that says what to type to go on, such as "open=top"',
    ],
    ['a stop with a way on', { stops: true, text: 'Ask again with open=top.' }, 'fine'],
    ['no source', { source: '' }, 'source: text with a length of at least 1'],
    ['an id in capitals', { id: 'Thin' }, 'id: a name in lower case such as "rip-thin"'],
    ['an unknown key', { txt: 'x' }, ': Unrecognized key: "txt"'],
  ])('%s', (_, change, message) => {
    expect(fault(change)).toBe(message)
  })

  it('lists the tasks where one is wrong', () => {
    expect(fault({ tasks: ['ripping'] })).toMatch(/^tasks\.0: rip, crosscut, .* or use$/)
  })

  it('refuses an id that stands twice, at the second', () => {
    const outcome = cautionsFile.safeParse({ rules: [RULE, RULE] })
    expect(outcome.error?.issues[0]).toMatchObject({
      path: ['rules', 1, 'id'],
      message: 'an id that no other rule has',
    })
  })
})

describe('config/cautions.yaml', () => {
  it('keeps each text to one or two sentences', () => {
    const long = shippedRules.filter(({ text }) => text.split(/[.] (?=[A-Z])/).length > 2)
    expect(long.map(({ id }) => id)).toEqual([])
  })

  it('gives the fuller advice to every rule, in sentences', () => {
    expect(shippedRules.filter(({ more }) => !more?.endsWith('.')).map(({ id }) => id)).toEqual([])
  })

  it('names a source in words, never a bare address', () => {
    expect(shippedRules.filter(({ source }) => /www|https?:|\.com/.test(source)).map(({ id }) => id)).toEqual(
      [],
    )
  })

  it('says sizes in both systems where it says them in one', () => {
    const oneSided = shippedRules.filter(({ text }) => {
      const bare = text.replace(/\([^)]*\)/g, '')
      return /\d (in|ft|lb)\b/.test(bare) && !/\(.*\d.*(mm|m|kg).*\)/.test(text)
    })
    expect(oneSided.map(({ id }) => id)).toEqual([])
  })
})
