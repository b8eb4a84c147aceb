import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readLine } from '../../src/bot/line.ts'

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
