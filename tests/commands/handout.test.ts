import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Figure } from '../../src/bot/reply.ts'
import {
  blocksOf,
  labelNames,
  openPrintingRoom,
  type PrintingRoom,
  tablesOf,
  textsOf,
  titlesOf,
} from './printing.ts'

let printing: PrintingRoom
beforeAll(async () => {
  printing = await openPrintingRoom()
})
afterAll(() => printing.room.close())

const SMALL = { channel: 'small' }
const RICH = { channel: 'rich' }
type Part = { readonly label: string; readonly count: number; readonly name: string }
const partsIn = (figures: Readonly<Record<string, Figure>>) => figures.parts as unknown as readonly Part[]
const piecesOf = (parts: readonly Part[]) => parts.reduce((sum, { count }) => sum + count, 0)

describe('handout', () => {
  it('asks for a plan where there is none', async () => {
    for (const line of ['handout', 'handout labels', 'handout parts'])
      expect(await printing.room.refusal(line, { channel: 'empty' })).toMatch(
        /^invalid: there is nothing to cut yet/u,
      )
    expect(await printing.room.refusal('handout paper=a3', SMALL)).toMatch(/a4 or letter/u)
  })

  it('prints every part of the plan once, with its count, and a label for each piece', async () => {
    const { room, last } = printing
    const { figures } = await room.reply('project start 17in x 13in height=15in', SMALL)
    const parts = partsIn(figures)
    const reply = await room.reply('handout', SMALL)
    const [file] = reply.files ?? []
    expect([file?.name, file?.type]).toEqual(['handout-v1.pdf', 'application/pdf'])
    const { handout, pages } = last()
    const rows = tablesOf(handout, 'Cut list').flatMap((table) => table.rows)
    expect(rows.map(([, label, count]) => [label, count])).toEqual(
      parts.map(({ label, count }) => [label, String(count)]),
    )
    expect(labelNames(handout)).toHaveLength(piecesOf(parts))
    expect(reply.figures).toMatchObject({
      paper: 'letter',
      version: 1,
      parts: piecesOf(parts),
      rows: parts.length,
      labels: piecesOf(parts),
      pages: pages.length,
    })
    expect(reply.answer).toBe(`${pages.length} pages to print on Letter: 20 parts in 6 rows, plan version 1`)
    const texts = textsOf(pages)
    for (const { label } of parts) expect(texts).toContain(`${label}1`)
    for (const name of labelNames(handout)) expect(texts.filter((text) => text === name)).toHaveLength(1)
  })

  it('holds all that is needed at the bench, in one order', async () => {
    const { room, last } = printing
    await room.reply('project start 17in x 13in height=15in', SMALL)
    await room.reply('handout', SMALL)
    expect(titlesOf(last().handout)).toEqual([
      'What you build',
      'Cut list',
      'Before you start',
      'Drawings',
      'Layouts',
      'Cut order',
      'Steps',
      'Shopping',
      'Part labels',
    ])
  })

  it('prints on the paper that is asked for, else that of the region', async () => {
    const { room, last } = printing
    await room.reply('project start 17in x 13in height=15in', SMALL)
    await room.reply('handout labels paper=a4', SMALL)
    expect(Math.round(last().pages[0]?.width ?? 0)).toBe(595)
    await room.reply('units region=UK', { ...SMALL, user: 'jo' })
    const { figures } = await room.reply('handout labels', { ...SMALL, user: 'jo' })
    expect(figures.paper).toBe('a4')
  })

  it('says which version it is, and of when, on every page', async () => {
    const { room, last } = printing
    const channel = { channel: 'versions' }
    await room.reply('project start 17in x 13in height=15in', channel)
    await room.reply('project change height=16in', channel)
    const reply = await room.reply('handout labels', channel)
    expect(reply.files?.[0]?.name).toBe('labels-v2.pdf')
    for (const { runs } of last().pages)
      expect(runs.map(({ text }) => text)).toContain('Plan version 2, 6 March 2026')
  })

  it('has the same sheets in layouts, cut order and shopping: they are searched for once', async () => {
    const { room, last, searches } = printing
    await room.reply('project start 17in x 13in height=15in', SMALL)
    const before = searches()
    await room.reply('handout', SMALL)
    // The panels from sheets and the strips from boards: one search each.
    expect(searches() - before).toBe(2)
    const { handout } = last()
    const [taken] = blocksOf(handout, 'Layouts')
    expect(taken).toMatchObject({
      text: expect.stringContaining('Take 1 sheet (4x8) and 1 board (2x6 8 ft)'),
    })
    const bought = tablesOf(handout, 'Shopping')[0]?.rows.map((row) => row.at(-1))
    expect(bought).toEqual(expect.arrayContaining(['1/2 in plywood 4x8', '2x6 8 ft']))
    const titles = tablesOf(handout, 'Cut order').map(({ title }) => title ?? '')
    expect(titles.some((title) => title.startsWith('First rip 2x6 8 ft'))).toBe(true)
    // The steps rip what the layout takes, whatever board the plan assumes.
    const tasks = blocksOf(handout, 'Steps').flatMap((block) => (block.block === 'tasks' ? block.items : []))
    const rip = tasks.find(({ heading }) => heading.includes('rip strips'))
    const fences = tablesOf(handout, 'Cut order')
      .filter(({ title }) => title?.startsWith('First rip'))
      .flatMap(({ rows }) => rows.map((row) => String(row[2])))
    expect(rip?.settings).toEqual(fences.map((fence) => `rip fence: ${fence} in (2x6 8 ft)`))
  })

  it('shows a rich plan whole: lid, bottom, braces, grooves, and steps that are done', async () => {
    const { room, last } = printing
    const { figures } = await room.reply(
      'project start 600mm x 450mm height=500mm sheet=18mm ply braces=all grooves=5 lid=overlapping handle=strip bottom=cleats drain=12mm cord=50mm x 40mm',
      RICH,
    )
    await room.reply('steps done 1', RICH)
    const reply = await room.reply('handout paper=a4', RICH)
    const { handout, pages } = last()
    const rows = tablesOf(handout, 'Cut list').filter(({ title }) => !title?.startsWith('Cut out'))
    expect(rows.flatMap((table) => table.rows.map(([, label]) => label)).sort()).toEqual(
      partsIn(figures)
        .map(({ label }) => label)
        .sort(),
    )
    const drawings = blocksOf(handout, 'Drawings').map((block) =>
      block.block === 'picture' ? block.alt : '',
    )
    expect(drawings.length).toBeGreaterThanOrEqual(7)
    expect(drawings.join(' ')).toMatch(/brace[\s\S]*grooves/u)
    expect(drawings.join(' ')).toMatch(/The lid from above, \d[\s\S]*The bottom from above, \d/u)
    const tasks = blocksOf(handout, 'Steps').flatMap((block) => (block.block === 'tasks' ? block.items : []))
    expect(tasks).toHaveLength(Number(reply.figures.steps))
    expect(tasks.map(({ ticked }) => ticked).indexOf(false)).toBe(1)
    for (const { width, height, runs } of pages)
      for (const run of runs) {
        expect(run.x, run.text).toBeGreaterThanOrEqual(36)
        expect(run.right, run.text).toBeLessThanOrEqual(width - 36 + 0.01)
        expect(run.y, run.text).toBeLessThanOrEqual(height - 36)
      }
  })

  it('draws its layouts so large that their smallest words are read at arm\u2019s length', async () => {
    const { room, last } = printing
    const lengths = Array.from({ length: 12 }, (_, index) => `1x ${50 + index}in 2x4`)
    await room.ask(`cutlist add ${lengths.join('; ')} strip=1/2in`, { channel: 'many' })
    await room.ask('handout', { channel: 'many' })
    const small = last().pages.flatMap(({ runs }) =>
      runs.filter(({ text }) => text.includes('lengths to scale')).map(({ size }) => size),
    )
    expect(small.length).toBeGreaterThan(0)
    for (const size of small) expect(size).toBeGreaterThanOrEqual(8)
  })

  it('has every caution that the plan, its cuts or its steps call for, each once', async () => {
    const { room, last } = printing
    await room.reply('project start 17in x 13in height=15in', SMALL)
    const { figures } = await room.reply('handout', SMALL)
    const ids = figures.cautions as readonly string[]
    expect(new Set(ids).size).toBe(ids.length)
    const items = blocksOf(last().handout, 'Before you start').flatMap((block) =>
      block.block === 'points' ? block.items : [],
    )
    expect(items).toHaveLength(ids.length)
    const texts = textsOf(last().pages).join(' ')
    for (const text of items) expect(texts).toContain(text.split(' ').slice(0, 6).join(' '))
  })

  it('prints a cut list without a plan, and says when a list stands beside one', async () => {
    const { room, last } = printing
    const only = { channel: 'list' }
    await room.reply('cutlist add 4x 23 15/16in x 18in ply; 2 @ 4 ft', only)
    const reply = await room.reply('handout', only)
    expect(reply.answer).toMatch(/6 parts in 2 rows, cut list version 1$/u)
    expect(titlesOf(last().handout)).not.toContain('Steps')
    await room.reply('project start 17in x 13in height=15in', SMALL)
    await room.reply('cutlist plan', SMALL)
    const both = await room.reply('handout', SMALL)
    expect(both.answer).toMatch(/plan version \d+, cut list version 1$/u)
  })

  it('gives the parts for a spreadsheet', async () => {
    const { room } = printing
    await room.reply('project start 17in x 13in height=15in', { channel: 'csv' })
    const { files, figures } = await room.reply('handout file=parts', { channel: 'csv' })
    expect([files?.[0]?.name, files?.[0]?.type]).toEqual(['parts-v1.csv', 'text/csv'])
    const [heading = '', ...rows] = String(files?.[0]?.content).trim().split('\r\n')
    const at = heading.split(',').indexOf('count')
    expect(rows.reduce((sum, row) => sum + Number(row.split(',')[at]), 0)).toBe(figures.parts)
    expect(rows).toHaveLength(Number(figures.rows))
  })
})
