import { describe, expect, it } from 'vitest'
import { partsOfPlan } from '../../../src/bot/cutList.ts'
import { cautionSection } from '../../../src/bot/handout/cautionSection.ts'
import { cutListSection } from '../../../src/bot/handout/cutListSection.ts'
import { dateWords } from '../../../src/bot/handout/dateWords.ts'
import type { Block, HandoutTable } from '../../../src/bot/handout/handout.ts'
import { labelsOf, pieceName } from '../../../src/bot/handout/labels.ts'
import { paperOf } from '../../../src/bot/handout/paperOf.ts'
import { partPurpose } from '../../../src/bot/partPurpose.ts'
import { partsFile } from '../../../src/bot/handout/partsFile.ts'
import { onPaper } from '../../../src/bot/handout/points.ts'
import { printTable } from '../../../src/bot/handout/printTable.ts'
import { showCovering } from '../../../src/bot/showCovering.ts'
import { versionLine } from '../../../src/bot/handout/version.ts'
import { INCH, MILLIMETRE, nanometres } from '../../../src/core/measure/length.ts'
import { INCHES, METRIC, planOf, USUAL } from '../../drawing/corpus.ts'

const parts = partsOfPlan(planOf(USUAL))
const tablesOf = (blocks: readonly Block[]): readonly HandoutTable[] =>
  blocks.filter((each): each is HandoutTable => each.block === 'table')

describe('the cut list on paper', () => {
  it('has every part once, with a box for each piece, and what waits for the day apart', () => {
    const tables = tablesOf(cutListSection(parts, INCHES).blocks)
    const rows = tables.flatMap((table) => table.rows)
    expect(rows.map(([, label]) => label)).toHaveLength(parts.length)
    expect(new Set(rows.map(([, label]) => label))).toEqual(new Set(parts.map(({ label }) => label)))
    for (const [boxes, label, count] of rows) {
      const part = parts.find((each) => each.label === label)
      expect(count).toBe(String(part?.count))
      expect(boxes).toEqual({ boxes: part?.count })
    }
    const later = tables.find(({ title }) => title?.startsWith('Cut to fit'))
    expect(later?.rows.map(([, label]) => label)).toEqual(
      parts.filter((part) => part.later).map(({ label }) => label),
    )
  })

  it('has one box for a row of many pieces, and names owners only where there are some', () => {
    const [part] = parts
    if (!part) throw new Error('a plan has parts')
    const [table] = tablesOf(cutListSection([{ ...part, count: 40, whose: '40 K01-A' }], INCHES).blocks)
    expect(table?.rows[0]?.[0]).toEqual({ boxes: 1 })
    expect(table?.columns.at(-1)?.heading).toBe('Whose')
    expect(tablesOf(cutListSection([part], INCHES).blocks)[0]?.columns.at(-1)?.heading).toBe('What')
  })
})

describe('labels', () => {
  it('number the pieces of a row, apart from a figure that the label ends in', () => {
    expect([pieceName('B', 1, 2), pieceName('B', 0, 1), pieceName('A1', 1, 3)]).toEqual(['B2', 'B', 'A1-2'])
  })

  it('are one for each piece, no two with the same name', () => {
    const labels = labelsOf(parts, INCHES, { prefix: 'K07-', whose: 'Ann' })
    expect(labels).toHaveLength(parts.reduce((sum, { count }) => sum + count, 0))
    expect(new Set(labels.map(({ name }) => name)).size).toBe(labels.length)
    expect(labels[0]?.name).toBe('K07-A1')
    for (const { lines } of labels) expect(lines.at(-1)).toBe('Ann')
  })

  it('have both sides of a panel, and of a strip its length with the section under it', () => {
    const panel = labelsOf([{ ...part('end panel', 'sheet') }], INCHES)[0]
    expect(panel).toEqual({ name: 'A1', size: '24 x 12 in', lines: ['end panel'] })
    const strip = labelsOf([{ ...part('end rail', 'strip'), width: nanometres(1.5 * INCH) }], INCHES)[0]
    expect(strip).toEqual({ name: 'A1', size: '24 in', lines: ['end rail, 1/2 x 1 1/2'] })
  })
})

const part = (name: string, from: 'sheet' | 'strip') => ({
  label: 'A',
  count: 2,
  from,
  length: nanometres(24 * INCH),
  width: nanometres(12 * INCH),
  thickness: nanometres(INCH / 2),
  grain: false,
  later: false,
  name,
})

describe('sizes on paper', () => {
  it('are rounded up only where every part of the row covers', () => {
    expect(partPurpose({ name: 'end brace' })).toBe('cover')
    expect(partPurpose({ name: 'end brace, side brace' })).toBe('cover')
    expect(partPurpose({ name: 'end rail, lid rim' })).toBe('into')
    expect(partPurpose({ name: undefined })).toBe('into')
  })

  it('are in a layout what they are in the list', () => {
    const long = nanometres(742.4 * MILLIMETRE)
    const brace = { ...part('side brace', 'strip'), length: long }
    expect(showCovering([brace], METRIC).mark(long, 'into')).toBe('743')
    expect(showCovering([brace, { ...brace, name: 'side rail' }], METRIC).mark(long, 'into')).toBe('742')
    expect(showCovering([part('end rail', 'strip')], METRIC).mark(long, 'into')).toBe('742')
  })
})

describe('the parts for a spreadsheet', () => {
  it('have marks for the tape, and exact millimetres', () => {
    const { content, name, type } = partsFile([part('end panel', 'sheet')], INCHES, 'parts-v3.csv')
    expect([name, type]).toEqual(['parts-v3.csv', 'text/csv'])
    expect(String(content).split('\r\n')).toEqual([
      'part,what,from,material,count,length in,width in,thickness in,length mm,width mm,thickness mm,grain,when',
      'A,end panel,sheet,,2,24,12,1/2,609.6,304.8,12.7,,now',
      '',
    ])
  })

  it('have no tape marks in metric, and leave empty what nobody said', () => {
    const { width: _width, thickness: _thickness, ...bare } = part('rail', 'strip')
    const { content } = partsFile([{ ...bare, later: true, grain: true }], METRIC, 'parts.csv')
    expect(String(content).split('\r\n').slice(0, 2)).toEqual([
      'part,what,from,material,count,length mm,width mm,thickness mm,grain,when',
      'A,rail,strip,,2,609.6,,,along the length,on the day',
    ])
  })
})

describe('what a reply says, on paper', () => {
  it('is without hints for whoever types', () => {
    expect(onPaper('1 coat of oil stain (product=, coats=), yellow glue (glue=)')).toBe(
      '1 coat of oil stain, yellow glue',
    )
    expect(onPaper('1/2 in plywood taken as 15/32 in thick (measure yours: sheet=)')).toBe(
      '1/2 in plywood taken as 15/32 in thick (measure yours)',
    )
    expect(onPaper('4x8 assumed, for want of stock that suits (stock add)')).toBe(
      '4x8 assumed, for want of stock that suits',
    )
    expect(onPaper('inside 625 x 475 mm (-0.40, -0.40)')).toBe('inside 625 x 475 mm (-0.40, -0.40)')
  })

  it('keeps the rows of its tables, under headings that have room', () => {
    const table = printTable(
      {
        title: 'Sheets',
        columns: ['', 'Set', 'Cut'],
        rows: [[1, { length: nanometres(18 * INCH) }, 'rip: 2 A']],
      },
      INCHES,
      { headings: { '': 'Step' }, boxes: true, strong: ['Set'] },
    )
    expect(table).toEqual({
      block: 'table',
      title: 'Sheets',
      columns: [
        { heading: '' },
        { heading: 'Step', strong: false, right: true },
        { heading: 'Set', strong: true, right: false },
        { heading: 'Cut', strong: false, right: false },
      ],
      rows: [[{ boxes: 1 }, '1', '18', 'rip: 2 A']],
    })
  })

  it('names the day so that nobody misreads it, and the paper of the region', () => {
    expect(versionLine('plan version 12', new Date(Date.UTC(2026, 2, 6, 23)))).toBe(
      'Plan version 12, 6 March 2026',
    )
    expect(dateWords(new Date(Date.UTC(2027, 11, 31)))).toBe('31 December 2027')
    expect((['US', 'UK', 'AU', 'EU'] as const).map(paperOf)).toEqual(['letter', 'a4', 'a4', 'a4'])
  })

  it('has each caution once, gravest first', () => {
    const rule = (id: string) => ({ id, tasks: ['rip' as const], when: [], text: `mind ${id}`, source: '' })
    const caution = (id: string) => ({ id, task: 'rip', text: `mind ${id}` })
    const [section] = cautionSection([caution('b'), caution('a'), caution('b')], [rule('a'), rule('b')])
    expect(section?.blocks[0]).toEqual({ block: 'points', items: ['mind a', 'mind b'] })
    expect(cautionSection([], [])).toEqual([])
  })
})
