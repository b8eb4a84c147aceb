import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Reply } from '../../src/bot/reply.ts'
import { showIn } from '../../src/bot/show.ts'
import { INCH, nanometres } from '../../src/core/measure/length.ts'
import { giveWay } from '../../src/platforms/giveWay.ts'

const terms = { units: 'inch', tape: 16, millimetreStep: 1 } as const
const show = showIn(terms, terms)

const scene = { width: 1, height: 1, shapes: [] }
const table = (title: string, rows: number) => ({
  title,
  columns: ['Part', 'Long'],
  rows: Array.from({ length: rows }, (_, row) => [`P${row + 1}`, { length: nanometres((row + 1) * INCH) }]),
})

const full: Reply = {
  answer: 'Cut 2 panels',
  cautions: [{ id: 'rip', text: 'Use a push stick.', task: 'rip' }],
  tables: [table('Panels', 4), table('Strips', 20)],
  pictures: [
    { name: 'one', alt: 'first', scene },
    { name: 'two', alt: 'second', scene },
  ],
  notes: ['first note', 'second note', 'third note'],
  files: [{ name: 'plan.pdf', type: 'application/pdf', content: 'x' }],
  figures: {},
}

const rowsOf = (reply: Reply) => (reply.tables ?? []).map(({ rows }) => rows.length)
const same = (reply: Reply) => reply

const fitting = (fits: (reply: Reply) => boolean, reply = full) => giveWay(reply, same, fits, show)

describe('giveWay', () => {
  it('leaves a reply that fits as it is', () => {
    expect(fitting(() => true)).toBe(full)
  })

  it('gives up the last notes first, and keeps all of them in a file', () => {
    const left = fitting((reply) => !reply.notes?.includes('second note'))
    expect(left.notes).toEqual(['2 more notes in the file notes.txt', 'first note'])
    expect(left.files?.[0]).toMatchObject({
      name: 'notes.txt',
      content: 'first note\nsecond note\nthird note\n',
    })
    expect(left.pictures).toEqual(full.pictures)
    expect(left.tables).toEqual(full.tables)
  })

  it('then pictures, the last first', () => {
    const left = fitting((reply) => (reply.pictures?.length ?? 0) < 2)
    expect(left.pictures?.map(({ name }) => name)).toEqual(['one'])
    expect(left.notes).toContain('1 picture left out: no room here')
    expect(rowsOf(left)).toEqual([4, 20])
  })

  it('then rows, the last of the last table first, with the whole table in a file', () => {
    const left = fitting((reply) => rowsOf(reply).reduce((sum, rows) => sum + rows, 0) <= 12)
    expect(rowsOf(left)).toEqual([4, 8])
    expect(left.tables?.[1]?.rows.at(-1)?.[0]).toBe('P8')
    expect(left.pictures).toEqual([])
    expect(left.notes?.[0]).toBe('12 more rows of Strips in the file strips-2.csv')
    const file = left.files?.find(({ name }) => name === 'strips-2.csv')
    expect(file?.type).toBe('text/csv')
    expect(String(file?.content).split('\r\n')).toHaveLength(22)
    expect(file?.content).toMatch(/^Part,Long\r\nP1,1\r\n/u)
    expect(file?.content).toMatch(/P20,20\r\n$/u)
  })

  it('then whole tables', () => {
    const left = fitting((reply) => (reply.tables ?? []).length === 0)
    expect(left.tables).toEqual([])
    expect(left.notes?.slice(0, 2)).toEqual([
      '4 rows of Panels in the file panels-1.csv',
      '20 rows of Strips in the file strips-2.csv',
    ])
  })

  it('never gives up the answer, the cautions, the files or the buttons', () => {
    const left = fitting(() => false)
    expect(left).toMatchObject({ answer: full.answer, cautions: full.cautions })
    expect(left.files).toContainEqual(full.files?.[0])
    expect(left.tables).toEqual([])
    expect(left.pictures).toEqual([])
  })

  it('gives up no more than it must, whatever the limit', () => {
    const size = (reply: Reply) => JSON.stringify([reply.notes, reply.pictures, reply.tables]).length
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3000 }), fc.nat(60), fc.nat(60), (limit, first, second) => {
        const reply = { ...full, tables: [table('Panels', first), table('Strips', second)] }
        const left = fitting((each) => size(each) <= limit, reply)
        if (size(reply) <= limit) expect(left).toBe(reply)
        const [ofFirst = 0, ofSecond = 0] = [first, second].map(
          (_, index) =>
            left.tables?.find(({ title }) => title === reply.tables[index]?.title)?.rows.length ?? 0,
        )
        // Rows of the first table only go once those of the second are down to one.
        if (ofFirst < first && left.tables?.length === 2) expect(ofSecond).toBeLessThanOrEqual(1)
        for (const [index, kept, all] of [
          [1, ofFirst, first],
          [2, ofSecond, second],
        ] as const)
          if (kept < all) expect(left.files?.some(({ name }) => name.endsWith(`-${index}.csv`))).toBe(true)
      }),
    )
  })

  it('writes cells with commas and quotation marks as a spreadsheet reads them, and no formula', () => {
    const odd = {
      columns: ['What, where', 'n'],
      rows: [
        ['a "b"', 1],
        ['=1+1', -2],
        ['-1/2', 0],
        ['-cmd', 3],
      ],
    }
    const left = fitting((reply) => rowsOf(reply).length === 0, { ...full, tables: [odd] })
    expect(left.files?.find(({ name }) => name === 'table-1.csv')?.content).toBe(
      '"What, where",n\r\n"a ""b""",1\r\n\'=1+1,-2\r\n\'-1/2,0\r\n\'-cmd,3\r\n',
    )
  })
})
