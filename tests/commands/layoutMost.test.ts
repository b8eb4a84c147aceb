import { afterAll, describe, expect, it } from 'vitest'
import { PHONE_COLUMNS, tableLines } from '../../src/bot/format.ts'
import type { Reply } from '../../src/bot/reply.ts'
import { SHEET_EXAMPLES } from '../data/sheetExamples.ts'
import { openRoom } from '../room.ts'
import { verifiedSearch } from './sawdust.ts'

const search = verifiedSearch()
afterAll(() => search.close())

const settings = { search: { seconds: 1, queue: 32 } }

async function say(...lines: readonly string[]): Promise<Reply> {
  const room = await openRoom({ search, settings })
  const replies = []
  for (const line of lines) replies.push(await room.reply(line))
  await room.close()
  return replies.at(-1) as Reply
}

async function refuse(...lines: readonly string[]): Promise<string> {
  const room = await openRoom({ search, settings })
  for (const line of lines.slice(0, -1)) await room.reply(line)
  const refusal = await room.refusal(lines.at(-1) ?? '')
  await room.close()
  return refusal
}

describe('the most of one part', () => {
  it('out of a sheet: by area 18 of 12 x 5 fit 24 x 48, with kerfs 15', async () => {
    const reply = await say('layout most 12in x 5in from=2ft x 4ft')
    expect(reply.answer).toBe('15 parts out of 1 sheet; proven, no more will come out')
    expect(reply.figures).toMatchObject({ count: 15, upperBound: 15, optimal: true, sheets: 1, worth: null })
  })

  it('out of a board: (96 + 1/8) / (11 13/16 + 1/8) is 8.05', async () => {
    expect((await say('layout most 11 13/16in from=2x4x8')).figures).toMatchObject({ count: 8, boards: 1 })
    expect((await say('layout most 12in from=8ft')).figures).toMatchObject({ count: 7, boards: 1 })
    expect((await say('layout most 12in from=8ft kerf=0')).figures).toMatchObject({ count: 8, boards: 1 })
  })

  it('out of strips ripped from two boards: 8 strips of each, 6 parts of each', async () => {
    const { figures } = await say('layout most 15in from=2 @ 2x6x8 strip=1/2in')
    expect(figures).toMatchObject({ count: 96, boards: 2, optimal: true })
    expect(figures.boardLayouts).toMatchObject([{ of: 'strip', count: 16 }])
  })

  it('is no more than is asked for, and less with the grain', async () => {
    expect((await say('layout most 4x 12in x 5in from=2ft x 4ft')).figures).toMatchObject({ count: 4 })
    const across = await say('layout most 30in x 5in from=2ft x 4ft grain=yes')
    const free = await say('layout most 30in x 5in from=4ft x 2ft')
    expect(across.figures).toMatchObject({ count: 4 })
    expect(free.figures).toMatchObject({ count: 4 })
    expect((await say('layout most 20in x 30in from=2ft x 4ft grain=yes')).figures).toMatchObject({
      count: 0,
    })
  })

  it('is nothing where it does not fit', async () => {
    const reply = await say('layout most 9ft from=8ft')
    expect(reply.answer).toBe('Nothing: no part comes out of this stock')
    expect(reply.notes).toContain('A: none comes out')
  })
})

describe('the most of several parts', () => {
  it.each(SHEET_EXAMPLES)('by worth is the printed value of $name', async ({ problem, most, mostTurned }) => {
    const parts = problem.parts.map(({ length, width, count }) =>
      count > 1000 ? `${length}in x ${width}in` : `${count} @ ${length}in x ${width}in`,
    )
    const worth = problem.parts.map((part) => part.worth).join(', ')
    const [sheet] = problem.stock
    const line = `layout most ${parts.join('; ')} from=${sheet?.length}in x ${sheet?.width}in kerf=0 worth=${worth}`
    const fixed = await say(`${line} grain=yes`)
    expect(fixed.figures).toMatchObject({ worth: most, upperBound: most, optimal: true, by: 'worth' })
    expect(fixed.answer).toContain(`worth ${most}.00; proven`)
    expect((await say(line)).figures).toMatchObject({ worth: mostTurned, optimal: true })
  })

  it('by count is the small ones, by size the most wood', async () => {
    const line = 'layout most 47in x 23in; 11in x 5in from=2ft x 4ft'
    const counted = (await say(`${line} by=count`)).figures
    const sized = (await say(line)).figures
    expect(counted).toMatchObject({ by: 'count', worth: null })
    expect(sized.by).toBe('size')
    expect(counted.count as number).toBeGreaterThan(sized.count as number)
    const made = (figures: Reply['figures']) =>
      figures.parts as { count: number; length: number; width: number }[]
    const area = (figures: Reply['figures']) =>
      made(figures).reduce((sum, { count, length, width }) => sum + count * length * width, 0)
    expect(area(sized)).toBeGreaterThan(area(counted))
    expect(sized.upperBound as number).toBeGreaterThanOrEqual(area(sized) - 50)
    expect(made(counted)[0]?.count).toBe(0)
  })

  it('of boards by worth: two of 50 at 3 beat one of 95 at 5', async () => {
    const line = 'layout most 95in; 47in from=8ft kerf=0'
    expect((await say(`${line} worth=A 5, B 3`)).figures).toMatchObject({ worth: 6, count: 2 })
    expect((await say(`${line} worth=A 7, B 3`)).figures).toMatchObject({ worth: 7, count: 1 })
  })
})

describe('the stock on hand', () => {
  const lines = [
    'stock add 2ft x 4ft sheet=1/2 ply count=2',
    'stock add 2x4x8 count=3',
    'stock add 4ft x 8ft sheet=1/2 ply price=40',
    'cutlist add A 40 @ 12in x 5in; R 20 @ 20in',
  ]

  it('gives what it can of the list, and what the shop sells is left alone', async () => {
    const reply = await say(...lines, 'layout most')
    expect(reply.figures).toMatchObject({
      sheets: 2,
      boards: 3,
      count: 42,
      parts: [
        { label: 'A', count: 30 },
        { label: 'R', count: 12 },
      ],
    })
    expect(reply.tables?.[0]?.rows.map((row) => row[1])).toEqual(['30 of 40', '12 of 20'])
  })

  it('is not given twice to two kinds of parts', async () => {
    const reply = await say(
      'stock add 2x6x8 count=1',
      'cutlist add S 40 @ 30in 2x6 strip=1/2in',
      'cutlist add B 40 @ 30in 2x6',
      'layout most',
    )
    expect(reply.figures).toMatchObject({ boards: 1, optimal: false })
    expect(reply.notes?.join()).toMatch(/B: none comes out/u)
  })

  it('says which parts nothing suits', async () => {
    const reply = await say(
      'stock add 2x4x8 count=1',
      'cutlist add A 2 @ 20in; B 2 @ 9in x 9in',
      'layout most',
    )
    expect(reply.notes).toContain('B: nothing on hand suits')
  })
})

describe('what cannot be asked', () => {
  it.each([
    ['layout most 12in x 5in', /nothing is on hand; say what it comes out of, such as from=2ft x 4ft/u],
    ['layout most', /there is nothing to cut yet/u],
    ['layout most 12in from=2ft x 4ft', /part A has no width, but "2ft x 4ft" is a sheet/u],
    ['layout most 12in x 5in from=8ft', /part A has a width, but "8ft" is a board/u],
    ['layout most 12in x 5in from=banana', /from: cannot read "banana" as one piece/u],
    ['layout most 12in x 5in from=2 @ 8ft (x3)', /gives two counts/u],
    ['layout most 12in x 5in; 3in x 3in from=2ft x 4ft worth=A 12', /what is part B worth/u],
    ['layout most 12in x 5in from=2ft x 4ft worth=C 12', /"C 12" is of no part here; there is A/u],
    ['layout most 12in x 5in from=2ft x 4ft worth=lots', /cannot read "lots" as an amount/u],
    ['layout most 12in x 5in from=2ft x 4ft by=worth', /worth of what\?/u],
    ['layout most 12in x 5in from=2ft x 4ft kerf=2in', /no saw blade takes 2 in/u],
  ])('is answered in one sentence: %s', async (line, said) => expect(await refuse(line)).toMatch(said))
})

it('fits a phone', async () => {
  const room = await openRoom({ search, settings })
  const response = await room.ask(
    'layout most topmost shelf 23 15/16in x 17 15/16in; 107x 11 1/16in x 3 5/16in from=12 @ 4ft x 8ft',
  )
  if (!response.ok) throw new Error(response.error)
  for (const table of response.reply.tables ?? [])
    for (const line of tableLines(table, response.show))
      expect([...line].length, line).toBeLessThanOrEqual(PHONE_COLUMNS)
  expect([...response.reply.answer].length).toBeLessThanOrEqual(200)
  await room.close()
})
