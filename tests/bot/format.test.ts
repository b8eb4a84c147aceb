import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { PHONE_COLUMNS, tableLines, wrap } from '../../src/bot/format.ts'
import { showIn } from '../../src/bot/show.ts'
import { inches } from '../../src/core/measure/length.ts'

const inch = { units: 'inch', tape: 16, millimetreStep: 1 } as const
const show = showIn(inch, { ...inch, tape: 32 })

describe('tableLines', () => {
  it('sets columns side by side, numbers to the right', () => {
    const table = {
      title: 'Strips (in)',
      columns: ['', 'No', 'Long', 'For'],
      rows: [
        ['C', 4, { length: inches(14937, 1000), purpose: 'into' as const }, 'end rail'],
        ['D', 12, { length: inches(9) }, 'end stile'],
      ],
    }
    expect(tableLines(table, show)).toEqual([
      'Strips (in)',
      '   No    Long  For',
      '-  --  ------  ---------',
      'C   4  14 7/8  end rail',
      'D  12       9  end stile',
    ])
  })

  it('stacks what is too wide, and loses nothing', () => {
    const table = {
      columns: ['Part', 'What it is for', 'Where'],
      rows: [['A', 'holds the corner together', 'left of the door']],
    }
    const lines = tableLines(table, show)
    expect(lines.every((line) => line.length <= PHONE_COLUMNS)).toBe(true)
    expect(lines.join(' ').replace(/\s+/gu, ' ')).toBe(
      'A What it is for holds the corner together Where left of the door',
    )
  })

  it('never passes the width, whatever is in the cells', () => {
    const cell = fc.oneof(
      fc.string({ maxLength: 30 }),
      fc.integer(),
      fc.integer({ min: 1, max: 1e10 }).map((nm) => ({ length: nm as never })),
    )
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 3, maxLength: 3 }), { maxLength: 8 }), (rows) => {
        const lines = tableLines({ columns: ['one', 'two', 'three'], rows }, show)
        for (const line of lines) expect([...line].length).toBeLessThanOrEqual(PHONE_COLUMNS)
      }),
    )
  })
})

describe('wrap', () => {
  it('keeps every word and every limit', () => {
    fc.assert(
      fc.property(
        fc.array(fc.stringMatching(/^[a-z]{1,40}$/)),
        fc.integer({ min: 5, max: 40 }),
        (words, width) => {
          const lines = wrap(words.join(' '), width)
          expect(lines.join('').replaceAll(' ', '')).toBe(words.join(''))
          for (const line of lines) expect(line.length).toBeLessThanOrEqual(width)
        },
      ),
    )
  })
})
