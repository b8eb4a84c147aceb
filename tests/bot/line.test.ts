import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { optionSaying, readLine } from '../../src/bot/line.ts'

describe('readLine', () => {
  it.each([
    ['strips 2x6 rip=1/2in', 'strips', '2x6', [['rip', '1/2in']]],
    ['/Strips 2x6', 'strips', '2x6', []],
    [
      'sizing 17in x 13in height = 15 in, sheet=1/2 ply',
      'sizing',
      '17in x 13in',
      [
        ['height', '15 in'],
        ['sheet', '1/2 ply'],
      ],
    ],
    ['convert 24"', 'convert', '24"', []],
    [`convert 2' 6" x 3' 4 1/2"`, 'convert', `2' 6" x 3' 4 1/2"`, []],
    ['convert "24 by 12 in"', 'convert', '24 by 12 in', []],
    [
      'finish 40 sq ft product="latex paint" coats=2',
      'finish',
      '40 sq ft',
      [
        ['product', 'latex paint'],
        ['coats', '2'],
      ],
    ],
    [
      'cutlist add part="flap, width=3 to 4" height=15"',
      'cutlist',
      'add',
      [
        ['part', 'flap, width=3 to 4'],
        ['height', '15"'],
      ],
    ],
    [
      'sizing height=15" width=3" sheet="1/2" ply',
      'sizing',
      '',
      [
        ['height', '15"'],
        ['width', '3"'],
        ['sheet', '"1/2" ply'],
      ],
    ],
    ['sizing HEIGHT=15in', 'sizing', '', [['height', '15in']]],
    ['sizing height=', 'sizing', '', [['height', '']]],
    ['units kerf＝3mm', 'units', '', [['kerf', '3mm']]],
    ['convert - 2x4x8', 'convert', '- 2x4x8', []],
    ['help', 'help', '', []],
    ['', '', '', []],
    ['height=15in', '', '', []],
  ])('takes %j apart', (line, command, first, options) => {
    expect(readLine(line)).toEqual({ command, first, options })
  })

  it('takes control characters as spaces', () => {
    expect(readLine('strips\u00002x6\trip=1/2in\u200b')).toEqual(readLine('strips 2x6 rip=1/2in'))
  })

  it('gives back any options written with names and plain values', () => {
    const name = fc.stringMatching(/^[a-z]{1,12}$/)
    const value = fc.stringMatching(/^[0-9a-z/ ]{0,12}$/).map((text) => text.trim())
    fc.assert(
      fc.property(fc.array(fc.tuple(name, value), { maxLength: 6 }), (options) => {
        const line = `strips 2x6 ${options.map(([key, text]) => `${key}=${text}`).join(' ')}`
        expect(readLine(line).options).toEqual(options)
      }),
    )
  })

  it('never throws', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => void readLine(text)))
  })
})

describe('optionSaying', () => {
  it.each(['2x6', '1/2 in', 'flap, width=3 to 4', 'a = b', 'kerf=1/8in', 'the 4" flap, width=3', 'x＝y'])(
    'says %j so that it is read back',
    (value) => {
      const line = `cutlist add first=1 ${optionSaying('part', value)} ${optionSaying('last', 2)}`
      expect(readLine(line).options).toEqual([
        ['first', '1'],
        ['part', value],
        ['last', '2'],
      ])
    },
  )

  it('adds no quotation marks where none are needed', () => {
    expect(optionSaying('rip', '1/2 in')).toBe('rip=1/2 in')
    expect(optionSaying('off', true)).toBe('off=true')
  })
})
