import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { describe as describeAll } from '../../src/bot/catalogue.ts'
import type { OptionRow } from '../../src/bot/option.ts'
import type { Response } from '../../src/bot/request.ts'
import { typedForm } from '../../src/bot/usage.ts'
import { catalogue, openRoom, type Room } from '../room.ts'

let room: Room
beforeAll(async () => {
  room = await openRoom({ settings: { search: { seconds: 0.02, queue: 32 } } })
  await room.reply('project start 17in x 13in height=15in sheet=15/32in')
  await room.reply('units tape=1/32')
})
afterAll(() => room.close())

/** What is kept, all of it. */
const kept = () =>
  Promise.all(['project', 'person', 'channel'].map((kind) => room.store.read(room.key(kind))))

/** Every action, as it is typed, with its options. */
const actions = describeAll(catalogue).flatMap(({ name, uses }) =>
  uses.map(({ verb, options }) => ({ start: verb ? `${name} ${verb}` : name, options })),
)

/** What to type to satisfy every required option but one. */
const required = (options: readonly OptionRow[], but?: OptionRow): string =>
  options
    .filter((option) => option.required && option !== but)
    .map((option) => `${option.name}=${formOf(option)}`)
    .join(' ')

/** What may be typed for it: the first of several, the least of a count. */
const formOf = (option: OptionRow): string => {
  const [form = ''] = typedForm(option).split('|')
  return form.replace(/^(\d+)-\d+$/u, '$1')
}

/** One clear sentence, and the fault is not ours. */
function expectSentence(response: Response, line: string): void {
  const said = line.length > 120 ? `${line.slice(0, 120)}...` : line
  if (response.ok) throw new Error(`${said}: answered with ${response.reply.answer}`)
  const { kind, error } = response
  expect(kind, `${said}: ${error}`).not.toBe('fault')
  expect(error.length, `${said}: ${error}`).toBeGreaterThan(10)
  expect(error.length, `${said}: ${error}`).toBeLessThan(300)
  expect(error, said).not.toMatch(/[\n\r\p{Cc}]/u)
  const ours = error.replace(/"[^"]*"/gu, '').replace(/"[^"]*$/u, '')
  expect(ours, said).not.toMatch(/undefined|NaN|Infinity|\[object|\bnull\b|Error:|\bat \S+:\d+/u)
}

/** Asks each line; each is refused with a sentence, and nothing that is kept has changed. */
async function expectRefused(lines: readonly string[]): Promise<readonly string[]> {
  const [before, logged] = [await kept(), room.logged.length]
  const errors = []
  for (const line of lines) {
    const response = await room.ask(line)
    expectSentence(response, line)
    errors.push(response.ok ? '' : response.error)
  }
  expect(await kept()).toEqual(before)
  expect(room.logged.slice(logged)).toEqual([])
  return errors
}

const PROTOTYPE_NAMES = [
  'constructor',
  '__proto__',
  'toString',
  'hasOwnProperty',
  'valueOf',
  '__defineGetter__',
]

/** Values that nothing reads: no length, board, sheet, area, product, choice or count. */
const JUNK = [
  ...PROTOTYPE_NAMES,
  '-5in',
  '-1',
  '1e400in',
  `${'9'.repeat(30)}in`,
  '99999999999ft',
  'NaN',
  'Infinity',
  'undefined',
  'null',
  '5 bananas',
  '=',
  '/',
  '1/0in',
  '1/0',
  '..',
  '🪚',
  '🪚🪵',
  "'; DROP TABLE revisions; --",
  '<script>alert()</script>',
  '<@U024BE7LH>',
  '$(process.exit())',
  '../../etc/passwd',
  '%s%n',
  '{{7*7}}',
  'ｆｕｌｌ',
  'ｎａｎ',
  '\ud800',
  'ي١٢',
  'x'.repeat(1500),
  '1'.repeat(1500),
  '('.repeat(1500),
  '1 '.repeat(700),
]

describe('a value that nothing reads', () => {
  it.each(actions)('of any option of $start is told in a sentence', async ({ start, options }) => {
    const measured = options.filter((option) => option.type !== 'string' || option.choices)
    for (const option of measured)
      await expectRefused(JUNK.map((junk) => `${start} ${required(options, option)} ${option.name}=${junk}`))
  })

  it.each([['strips 2x6 rip=1/2in need='], ['units '], ['help ']])(
    'is told as well where words are taken: %s',
    async (start) => {
      await expectRefused(JUNK.map((junk) => `${start}${junk}`))
    },
  )

  it.each(actions)('of $start is told where the words stand first', async ({ start, options }) => {
    if (options.some((option) => option.first && option.type === 'string' && !option.choices)) return
    await expectRefused(JUNK.map((junk) => `${start} ${junk}`))
  })
})

describe('a value out of all bounds', () => {
  const zero = actions.flatMap(({ start, options }) =>
    options
      .filter(
        (option) => ['length', 'size', 'board', 'area', 'sheet'].includes(option.kind ?? '') && !option.zero,
      )
      .map(
        (option) =>
          `${start} ${required(options, option)} ${option.name}=${option.kind === 'area' ? '0 sq ft' : '0in'}`,
      ),
  )
  it.each(zero)('nothing at all: %s', async (line) => {
    await expectRefused([line])
  })

  it.each([
    'sizing 0in x 13in height=15in',
    'sizing 17in x 13in height=9000000in',
    'sizing 17in x 13in height=0.000000001in',
    'sizing 17in x 13in height=15in grooves=41',
    'sizing 17in x 13in height=15in grooves=1.5',
    'sizing 17in x 13in height=15in strip=20in',
    'sizing 17in x 13in height=15in width=15in',
    'sizing 17in x 13in height=1in',
    'strips 2x6 rip=9in',
    'strips 2x6 rip=1/2in need=0',
    'strips 2x6 rip=1/2in need=-4',
    'strips 2x6 rip=1/2in need=4000000000',
    'diagonal 46in x 29in strip=40in',
    'diagonal 46in strip=3in',
    'diagonal 46in x 29in x 3in strip=3in',
    'grooves 23in count=0 thickness=1/2in',
    'grooves 23in count=100 thickness=1/2in kerf=1/2in',
    'grooves 23in pitch=30in thickness=1/2in',
    'grooves 23in count=3 thickness=1/2in stiles=12in',
    'spacing 36in piece=40in count=2',
    'spacing 36in piece=1in count=501',
    'spacing 36in piece=1in gap=1/1000in',
    'spacing 36in piece=2in count=1 ends=flush',
    'finish 9e99 sq ft',
    'finish 40 sq ft coats=11',
    'convert 0.0000000000001mm',
    'convert bananas',
    'strips 2x6 rip=1/2in need=0m length=8ft',
    'units kerf=0',
    'units kerf=15in',
    'strips 2x6 rip=1/2in kerf=15in',
    'units tape=1/7',
    'units region=mars',
    'project change',
    'project change height=1in',
    'project start 17in x 13in height=1in',
  ])('%s', async (line) => {
    await expectRefused([line])
  })
})

describe('a slip of the thumb', () => {
  it.each([
    ['stripes 2x6 rip=1/2in', 'Did you mean strips?'],
    ['sizng 17in x 13in', 'Did you mean sizing?'],
    ['Unit metric', 'Did you mean units?'],
    ['strips 2x6 rib=1/2in', 'Did you mean rip?'],
    ['sizing 17in x 13in hieght=15in', 'Did you mean height?'],
    ['sizing 17in x 13in height=15in corner=captrued', 'Did you mean captured?'],
    ['project strat 17in x 13in', 'Did you mean start?'],
    ['project chnage sheet=18mm', 'Did you mean change?'],
    ['cautions ripp', 'Did you mean rip?'],
    ['finish 40 sq ft product=shelac', 'Did you mean shellac?'],
    ['help stripes', 'Did you mean strips?'],
  ])('%s', async (line, hint) => {
    expect(await expectRefused([line])).toEqual([
      expect.stringMatching(new RegExp(`${hint.replace('?', '\\?')}$`, 'u')),
    ])
  })

  it('is an unknown option of every action, which says what there is', async () => {
    for (const { start, options } of actions) {
      const [error] = await expectRefused([`${start} ${required(options)} wxyz=3`])
      expect(error).toContain('"wxyz')
      for (const { name } of options) expect(error, start).toContain(name)
    }
  })

  it('is an option given twice', async () => {
    const twice = actions.flatMap(({ start, options }) =>
      options.map(({ name, ...option }) => [
        name,
        `${start} ${name}=${typedForm({ name, ...option }).split('|')[0]} ${name}=2`,
      ]),
    )
    const errors = await expectRefused(twice.map(([, line]) => line ?? ''))
    for (const [index, error] of errors.entries())
      expect(error).toMatch(new RegExp(`^${twice[index]?.[0]} is given twice, as ".+" and "2"`, 'u'))
  })

  it('is an option with nothing after it', async () => {
    const empty = actions.flatMap(({ start, options }) => options.map(({ name }) => `${start} ${name}=`))
    for (const error of await expectRefused(empty))
      expect(error).toMatch(/^\S+ has nothing after it; write \S+=\S/u)
  })

  it('is a required option left out', async () => {
    const left = actions.flatMap(({ start, options }) =>
      options
        .filter((option) => option.required)
        .map((option) => [option.name, `${start} ${required(options, option)}`] as const),
    )
    expect(left.length).toBeGreaterThan(3)
    const errors = await expectRefused(left.map(([, line]) => line))
    for (const [index, error] of errors.entries())
      expect(error).toMatch(new RegExp(`^${left[index]?.[0]} is missing \\(.+\\); write `, 'u'))
  })

  it('is a name that every object has', async () => {
    for (const name of PROTOTYPE_NAMES) {
      const lines = actions.map(
        ({ start, options }) => `${start} ${required(options)} ${name.replaceAll('_', '')}=1`,
      )
      await expectRefused([name, `${name} 2x6`, `/${name}`, `project ${name}`, `help ${name}`, ...lines])
    }
  })
})

describe('a line that is none', () => {
  it.each([
    ['nothing', ''],
    ['a space', ' '],
    ['a slash', '/'],
    ['an option', 'height=15in'],
    ['an equals sign', '='],
    ['control characters', '\u0000\u0007\u001b[31m'],
    ['10 000 letters', 'x'.repeat(10_000)],
    ['10 000 digits behind a command', `convert ${'9'.repeat(10_000)}`],
    ['10 000 options', 'a=1 '.repeat(10_000)],
    ['10 000 wide characters', '🪚'.repeat(10_000)],
    ['an emoji', '🪚'],
    ['markup', '<b>strips</b> 2x6'],
    ['a query', "' OR 1=1; --"],
    ['a lone surrogate', '\ud83e'],
    ['right to left', '\u202estrips'.repeat(3)],
  ])('%s', async (_, line) => {
    await expectRefused([line])
  })

  it('never sends a control character on', async () => {
    await room
      .reply('project change height=15in\u001b[31m\u0007'.replace('15in', '15in '), {})
      .catch(() => undefined)
    const { notes = [] } = await room.reply('project history')
    expect(notes.join('')).not.toMatch(/\p{Cc}/u)
    expect(await room.refusal('strips \u001b]0;title\u0007')).not.toMatch(/\p{Cc}/u)
  })
})

describe('whatever is typed', () => {
  const optionNames = [
    ...new Set(actions.flatMap(({ options }) => options.map(({ name }) => name))),
    ...PROTOTYPE_NAMES,
  ]
  const choices = [
    ...new Set(actions.flatMap(({ options }) => options.flatMap((option) => option.choices ?? []))),
  ]
  const number = fc.oneof(
    fc.nat(200),
    fc.double({ min: 0, max: 1e6, noNaN: true }),
    fc.constantFrom('1/2', '15 3/8', '1-1/2', '½', '3,5', '1e5'),
  )
  const measure = fc
    .tuple(
      number,
      fc.constantFrom('', 'in', '"', 'mm', 'cm', 'ft', "'", ' x 12in', 'in x 13in', ' round', ' sq ft', '°'),
    )
    .map(([amount, unit]) => `${amount}${unit}`)
  const value = fc.oneof(
    { weight: 4, arbitrary: measure },
    {
      weight: 1,
      arbitrary: fc.constantFrom(
        ...choices,
        '2x6',
        '1/2 ply',
        '2x4x8',
        '38x140',
        'latex paint',
        'planter',
        'generator',
        'yes',
      ),
    },
    { weight: 1, arbitrary: fc.string({ maxLength: 12 }) },
    { weight: 1, arbitrary: fc.constantFrom(...JUNK) },
  )
  const option = fc.tuple(fc.constantFrom(...optionNames), value).map(([name, text]) => `${name}=${text}`)
  const start = fc.constantFrom(...actions.map((action) => action.start), ...catalogue.keys())
  const line = fc
    .tuple(start, fc.option(value, { nil: '' }), fc.array(option, { maxLength: 4 }))
    .map(([words, first, options]) => [words, first, ...options].join(' '))

  const check = async (typed: string) => {
    const logged = room.logged.length
    const response = await room.ask(typed)
    if (!response.ok) expectSentence(response, typed)
    else {
      const { answer, notes = [], cautions = [] } = response.reply
      expect([answer, ...notes, ...cautions.map(({ text }) => text)].join('\n'), typed).not.toMatch(
        /undefined|NaN|Infinity|\[object/u,
      )
      const figures = JSON.stringify(response.reply.figures, (_, each: unknown) =>
        Number.isNaN(each) ? 'not a number' : each,
      )
      expect(figures, typed).not.toContain('not a number')
    }
    expect(room.logged.slice(logged), typed).toEqual([])
  }

  it('commands and options at random are answered or refused, never a fault', async () => {
    await fc.assert(fc.asyncProperty(line, check), { numRuns: 800 })
  })

  it('any characters at random are answered or refused, never a fault', async () => {
    const text = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 80 }),
      fc.string({ unit: 'grapheme', maxLength: 80 }),
    )
    await fc.assert(fc.asyncProperty(text, check), { numRuns: 150 })
    await fc.assert(
      fc.asyncProperty(start, text, (words, rest) => check(`${words} ${rest}`)),
      { numRuns: 400 },
    )
  })
})
