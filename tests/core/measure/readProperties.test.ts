import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { INCH, inches } from '../../../src/core/measure/length.ts'
import { readAngle } from '../../../src/core/measure/readAngle.ts'
import { readBoard } from '../../../src/core/measure/readBoard.ts'
import { readCount } from '../../../src/core/measure/readCount.ts'
import { readLength } from '../../../src/core/measure/readLength.ts'
import { readMeasure } from '../../../src/core/measure/readMeasure.ts'
import { readSheet } from '../../../src/core/measure/readSheet.ts'
import { readSize } from '../../../src/core/measure/readSize.ts'
import { reading } from './stockTables.ts'
import { INCH_STYLES, type Inches, METRIC_STYLES, SEPARATORS } from './typings.ts'

const settings = reading()

const anyInches = fc
  .record({ whole: fc.integer({ min: 0, max: 400 }), parts: fc.integer({ min: 0, max: 63 }) })
  .filter(({ whole, parts }) => whole + parts > 0)

const nanometres = ({ whole, parts }: Inches) => inches(whole * 64 + parts, 64)

describe('any length in 64ths of an inch reads back exactly', () => {
  it.each(Object.entries(INCH_STYLES))('typed in the style %s', (_name, style) => {
    fc.assert(
      fc.property(anyInches, (length) => {
        const read = readLength(style(length), settings)
        expect([style(length), read]).toMatchObject([
          style(length),
          { status: 'read', length: nanometres(length), units: 'inch' },
        ])
      }),
    )
  })

  it('and is one length to readMeasure too', () => {
    fc.assert(
      fc.property(anyInches, fc.constantFrom(...Object.values(INCH_STYLES)), (length, style) => {
        expect(readMeasure(style(length), settings)).toMatchObject({
          kind: 'length',
          lengths: [nanometres(length)],
        })
      }),
    )
  })

  it('adding and taking away in words is exact', () => {
    fc.assert(
      fc.property(anyInches, anyInches, (long, short) => {
        const [a, b] = [nanometres(long), nanometres(short)]
        fc.pre(a > b)
        const text = `${INCH_STYLES.mark?.(long)} less ${INCH_STYLES.mark?.(short)}`
        expect(readLength(text, settings)).toMatchObject({ length: a - b })
      }),
    )
  })
})

describe('any number of tenths of a mm reads back exactly', () => {
  it.each(Object.entries(METRIC_STYLES))('typed in the style %s', (_name, style) => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99_999 }), (tenths) => {
        const text = style(tenths)
        const read = readLength(text, settings)
        // Three places with a 0 last (1.220), and three figures after a comma (3,175), may be thousands: those are asked about.
        const asked = read.status === 'ambiguous' && /^\d{1,3}[.,]\d{3} /u.test(text)
        if (!asked)
          expect([text, read]).toMatchObject([
            text,
            { status: 'read', length: tenths * 100_000, units: 'metric' },
          ])
      }),
    )
  })
})

describe('sizes', () => {
  const separator = fc.constantFrom(...SEPARATORS)
  const UNITED = Object.entries(INCH_STYLES).flatMap(([name, style]) => (name === 'words' ? [] : [style]))

  it('two or three lengths, each with its unit, whatever stands between', () => {
    fc.assert(
      fc.property(
        fc.array(anyInches, { minLength: 2, maxLength: 3 }),
        fc.constantFrom(...UNITED),
        separator,
        (sides, style, between) => {
          const text = sides.map(style).join(between)
          expect([text, readSize(text, settings)]).toMatchObject([
            text,
            { status: 'read', lengths: sides.map(nanometres) },
          ])
          expect(readMeasure(text, settings)).toMatchObject({ kind: 'size', lengths: sides.map(nanometres) })
        },
      ),
    )
  })

  it('a unit at the end governs the rest', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 2, max: 140 }), { minLength: 2, maxLength: 3 }),
        separator,
        (sides, between) => {
          expect(readSize(`${sides.join(between)} in`, settings)).toMatchObject({
            lengths: sides.map((side) => side * INCH),
          })
          expect(readSize(`${sides.map((side) => side * 50).join(between)}mm`, settings)).toMatchObject({
            lengths: sides.map((side) => side * 50_000_000),
          })
        },
      ),
    )
  })

  it('bare sides are read in the unit settled, and asked about otherwise', () => {
    fc.assert(
      fc.property(fc.integer({ min: 13, max: 140 }), fc.integer({ min: 13, max: 140 }), (a, b) => {
        expect(readSize(`${a} x ${b}`, settings).status).toBe('ambiguous')
        expect(readSize(`${a} x ${b}`, reading('US', 'inch'))).toMatchObject({
          lengths: [a * INCH, b * INCH],
        })
        expect(readSize(`${a} x ${b}`, reading('US', 'metric'))).toMatchObject({
          lengths: [a * 1_000_000, b * 1_000_000],
        })
      }),
    )
  })
})

const READERS = {
  readMeasure: (text: string) => readMeasure(text, settings),
  readLength: (text: string) => readLength(text, settings),
  readSize: (text: string) => readSize(text, settings),
  readBoard: (text: string) => readBoard(text, settings),
  readSheet: (text: string) => readSheet(text, settings),
  readAngle,
  readCount,
}

/** Signs and words that measures are made of, so that what comes out is nearly a measure. */
const pieces = fc.constantFrom(
  ...[
    '1',
    '2',
    '24',
    '7/8',
    '½',
    '"',
    "'",
    '”',
    '’',
    'x',
    ' by ',
    '*',
    '-',
    ' - ',
    '–',
    '/',
    '.',
    ',',
    ' ',
    'in',
    ' ft ',
    'mm',
    'm',
    'cm',
    '°',
    ':',
  ],
  ...[
    'and',
    ' half ',
    'an inch',
    ' foot ',
    ' ply',
    '2x4',
    'kerf',
    ' wide',
    'h',
    'Ø',
    '#',
    '@',
    '(',
    ')',
    '~',
    '±',
    '+',
    'twenty ',
    'three ',
    ' eighths',
    'of',
    'less',
    'to',
    '?',
    '0',
    '00',
    'e3',
    '∞',
    '{',
    '}',
  ],
)

describe('total', () => {
  it.each(Object.entries(READERS))('%s answers whatever is typed', (_name, reader) => {
    const text = fc.oneof(
      fc.string({ unit: 'grapheme' }),
      fc.string({ unit: 'binary' }),
      fc.array(pieces, { maxLength: 14 }).map((all) => all.join('')),
    )
    fc.assert(
      fc.property(text, (typed) => {
        const read = reader(typed)
        expect(['read', 'ambiguous', 'invalid']).toContain(read.status)
        if (read.status === 'ambiguous') expect(read.question).toMatch(/write /u)
        if (read.status === 'invalid') expect(read.problem).toMatch(/write /u)
      }),
      { numRuns: 2000 },
    )
  })

  it('gives no length where there is no figure and no word for a number', () => {
    const wordless = fc.string({ unit: fc.constantFrom(...'xyz"\'/-+.,*()#@~±° ”’×'), maxLength: 30 })
    fc.assert(
      fc.property(wordless, (typed) => {
        for (const reader of Object.values(READERS))
          expect([typed, reader(typed).status]).toEqual([typed, 'invalid'])
      }),
      { numRuns: 1000 },
    )
  })

  it('gives only whole nanometres between 0.1 mm and 20 m', () => {
    fc.assert(
      fc.property(
        fc.array(pieces, { maxLength: 10 }).map((all) => all.join('')),
        (typed) => {
          const read = readMeasure(typed, settings)
          if (read.status !== 'read' || read.kind === 'angle') return
          for (const length of read.lengths) {
            expect(Number.isInteger(length)).toBe(true)
            expect(length).toBeGreaterThanOrEqual(100_000)
            expect(length).toBeLessThanOrEqual(20_000_000_000)
          }
        },
      ),
      { numRuns: 5000 },
    )
  })

  it.each(Object.getOwnPropertyNames(Object.prototype))('takes %s for a word like any other', (word) => {
    for (const reader of Object.values(READERS))
      for (const typed of [word, `24 ${word}`, `${word} 24in`, `2x4 ${word}`, `&${word};`, `${word} corner`])
        expect([typed, ['read', 'ambiguous', 'invalid'].includes(reader(typed).status)]).toEqual([
          typed,
          true,
        ])
  })

  it('refuses 10 000 characters at once', () => {
    for (const reader of Object.values(READERS)) expect(reader('1/2 '.repeat(2500)).status).toBe('invalid')
  })
})
