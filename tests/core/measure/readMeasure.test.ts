import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readMeasure } from '../../../src/core/measure/readMeasure.ts'
import { MORE_MEASURES } from './moreMeasures.ts'
import { expected, said } from './said.ts'
import { reading } from './stockTables.ts'

interface Row {
  readonly input: string
  readonly kind: string
  readonly mm?: readonly number[]
  readonly inches?: readonly string[]
  readonly degrees?: number
}

const { measures } = JSON.parse(
  readFileSync(new URL('../../data/measurements.json', import.meta.url), 'utf8'),
) as { measures: readonly Row[] }

const lineOf = ({ kind, mm = [], inches = [], degrees }: Row): string =>
  [
    kind,
    ...mm.map((value) => `${value} mm`),
    ...inches.map((value) => `${value} in`),
    ...(degrees === undefined ? [] : [`${degrees}`]),
  ].join(', ')

const sentenceOf = (input: string): string => {
  const read = readMeasure(input, reading())
  return read.status === 'ambiguous' ? read.question : read.status === 'invalid' ? read.problem : ''
}

const inputs = [...measures.map(({ input }) => input), ...Object.keys(MORE_MEASURES)]

describe('readMeasure in the US, no unit settled', () => {
  it.each(measures.map((row) => [row.input, lineOf(row)]))('%j is %s', (input, line) => {
    expect(said(readMeasure(input, reading()))).toBe(expected(line))
  })

  it.each(Object.entries(MORE_MEASURES))('%j is %s', (input, line) => {
    expect(said(readMeasure(input, reading()))).toBe(expected(line))
  })
})

describe('what a question or a refusal says', () => {
  it.each([
    ['4/12', ['write 4/12 pitch or 0.3333in']],
    ['12/12', ['12/12 pitch', '1in', '12in x 12in']],
    ['16/12', ['16/12 pitch', '1.3333in', '16in x 12in']],
    ['24/12', ['24/12 pitch', '2in', '24in x 12in']],
    ['1.500', ['write 1 1/2in, 1500mm or 1.5mm']],
    ['1,220 x 2,440', ['1.22in x 2.44in', '1220mm x 2440mm']],
    ['1.220 x 2.440 x 18mm', ['1220mm x 2440mm x 18mm', '1.22in x 2.44in x 18mm']],
    ["1 1/2 x 3 1/2 x 8'", ['write 1 1/2in or 1 1/2ft']],
    ['six twenty', ['write 6in x 20in or 6mm x 20mm']],
    ['1.7m x 70', ['write 70mm or 70cm']],
    ['2.4m x 18', ['18mm, 18cm']],
    ['2.4m x 1.2m x 18', ['(x18)', '2.4m x 1.2m x 18mm']],
    ['4in - 6in', ['a size, or a range', 'write 4in x 6in, 4in or 6in']],
    ['six three', ['write 6ft 3in or 6in x 3in']],
    ['8/4', ['could be 2in, or rough lumber of 8 quarters']],
    ['24-36', ['a size, or a range', 'write 24in x 36in, 24in or 36in']],
    ['12/16', ['write 3/4in or 1 1/8in']],
    ['- 12in', ['12in as an entry of a list', 'a negative number', 'write 12in']],
    ['1. 12in', ['12in as entry 1 of a list', 'write 12in or 1.12in']],
    ['M6x50', ['write 50mm for the length']],
  ])('the question about %j names its readings', (input, parts) => {
    for (const part of parts) expect(sentenceOf(input)).toContain(part)
  })

  const asked = inputs.filter((input) => readMeasure(input, reading()).status === 'ambiguous')

  it.each(asked)('the readings that the question about %j offers can be typed back', (input) => {
    const offered =
      /write (?:the (?:size|length) itself, such as |one measure, such as |the length of the nail, such as )?(.*)$/u.exec(
        sentenceOf(input),
      )?.[1] ?? ''
    const choices = offered
      .replace(/ if it does$| for the length$/u, '')
      .split(/, or |, (?!ripped|or )| or | for a size, or one (?:of them|length), such as /u)
      .map((choice) => choice.replace(/ for a size$|^one (?:of them|length), such as /u, ''))
    expect(choices.length).toBeGreaterThan(0)
    for (const choice of choices)
      expect([choice, readMeasure(choice, reading()).status]).toEqual([choice, 'read'])
  })

  it.each(inputs.filter((input) => sentenceOf(input) !== ''))(
    '%j is quoted, and something is offered',
    (input) => {
      const sentence = sentenceOf(input)
      expect(sentence).toMatch(/write /u)
      if (input !== '') expect(sentence).toMatch(/^(?:cannot read )?"/u)
    },
  )

  it('names both readings', () => {
    expect(sentenceOf('24')).toBe('"24" could be 24 in or 24 mm; write 24in or 24mm')
    expect(sentenceOf('237/8"')).toBe(
      '"237/8"" could be 29 5/8 in or 23 7/8 in (a space may be lost); write 29 5/8in or 23 7/8in',
    )
    expect(sentenceOf('4x2')).toBe(
      '"4x2" could be 2x4, 4 ft x 2 ft or 4 in x 2 in (4x2 is no board here); write 2x4, 4ft x 2ft or 4in x 2in',
    )
  })

  it('names what a number with a foreign unit is', () => {
    expect(sentenceOf('3 cups')).toContain('is a volume')
    expect(sentenceOf('5 lbs')).toContain('is a weight')
    expect(sentenceOf('20 minutes')).toContain('is a time')
  })
})

describe('units settled', () => {
  it.each([
    ['24', 'inch', 'length, 24 in'],
    ['24', 'metric', 'length, 24 mm'],
    ['24 by 12', 'inch', 'size, 24 in, 12 in'],
    ['600x400', 'metric', 'size, 600 mm, 400 mm'],
    ['30x60', 'metric', 'size, 30 mm, 60 mm'],
    ['W24 H36 D12', 'inch', 'dimension, 24 in, 36 in, 12 in'],
    ['3 @ 24', 'inch', 'dimension, 24 in'],
    ['39.4375', 'metric', 'length, 39.4375 in'],
    ['3/8', 'metric', 'length, 3/8 in'],
    ['1220x2440', 'inch', 'size, 1220 mm, 2440 mm'],
    ['70 x 70 x 810', 'inch', 'size, 70 mm, 70 mm, 810 mm'],
    ['2x4', 'metric', 'lumber, 1 1/2 in, 3 1/2 in'],
  ] as const)('%j with %s settled is %s', (input, units, line) => {
    expect(said(readMeasure(input, reading('US', units)))).toBe(expected(line))
  })

  it.each(['11/4', '13/16', '4x8', '2068', '24-36', '24,36', '24 - 1/8', '6x4'])(
    '%j stays a question',
    (input) => {
      expect(readMeasure(input, reading('US', 'inch')).status).toBe('ambiguous')
      expect(readMeasure(input, reading('US', 'metric')).status).toBe('ambiguous')
    },
  )

  it('says what was assumed', () => {
    expect(readMeasure('24', reading('US', 'inch'))).toMatchObject({
      note: '24 read as 24 in',
      units: 'inch',
    })
    expect(readMeasure('twenty four', reading('US', 'metric'))).toMatchObject({
      note: 'twenty four read as 24 mm',
    })
    expect(readMeasure('3/8', reading('US', 'metric'))).toMatchObject({
      note: '3/8 read as inches',
      units: 'inch',
    })
    expect(readMeasure('1220x2440', reading('US', 'inch'))).toMatchObject({ units: 'metric' })
  })
})

describe('regions', () => {
  it.each([
    ['UK', '4x2', 'lumber, 47 mm, 100 mm'],
    ['UK', '2x4', 'lumber, 47 mm, 100 mm'],
    ['UK', '2x6', 'lumber, 47 mm, 150 mm'],
    ['UK', '4x2 PAR', 'lumber, 44 mm, 94 mm'],
    ['UK', '8x4 sheet', 'lumber, 2440 mm, 1220 mm'],
    ['UK', '1x6', 'ambiguous'],
    ['AU', '4x2', 'lumber, 45 mm, 90 mm'],
    ['AU', '90x45x2400', 'lumber, 45 mm, 90 mm, 2400 mm'],
    ['EU', '4x2', 'ambiguous'],
    ['EU', '100x200', 'lumber, 100 mm, 200 mm'],
    ['US', '100x200', 'ambiguous'],
    ['US', '90x45x2400', 'size, 90 mm, 45 mm, 2400 mm'],
  ] as const)('in %s %j is %s', (region, input, line) => {
    expect(said(readMeasure(input, reading(region)))).toBe(expected(line))
  })

  it('says what a name was taken as', () => {
    expect(readMeasure('2x6', reading())).toMatchObject({
      name: '2x6',
      note: '2x6 taken as 1 1/2 x 5 1/2 in, dressed',
    })
    expect(readMeasure('4x2', reading('UK'))).toMatchObject({
      note: '4x2 taken as 47 x 100 mm, sold as 47x100',
    })
    expect(readMeasure('1/2 ply', reading())).toMatchObject({
      note: '1/2in plywood taken as 15/32in, as made; measure yours',
    })
    expect(readMeasure('1/2 ply', reading('UK'))).toMatchObject({
      note: expect.stringContaining('no 1/2in plywood'),
    })
  })
})

describe('counts, shapes and kerf', () => {
  it('keeps the count apart from the lengths', () => {
    expect(readMeasure('24 1/2 x 18 3/8 (x3)', reading())).toMatchObject({ count: 3 })
    expect(readMeasure('three 2x4x8', reading())).toMatchObject({ count: 3, name: '2x4' })
  })

  it('marks a diameter', () => {
    expect(readMeasure('Ø300', reading())).toMatchObject({ round: true })
    expect(readMeasure('24in square', reading())).not.toHaveProperty('round')
  })

  it('halves a board by the kerf in the settings', () => {
    const thin = { ...reading(), kerf: reading().kerf * 0 } as ReturnType<typeof reading>
    expect(said(readMeasure('half a 2x4, ripped', thin))).toBe(expected('lumber, 1 1/2 in, 1 3/4 in'))
  })

  it('refuses a long text without reading it', () => {
    expect(readMeasure('24'.repeat(5000), reading())).toMatchObject({
      status: 'invalid',
      problem: expect.stringContaining('200 characters'),
    })
  })
})
