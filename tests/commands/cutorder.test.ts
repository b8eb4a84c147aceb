import { afterAll, describe, expect, it } from 'vitest'
import { PHONE_COLUMNS, tableLines } from '../../src/bot/format.ts'
import type { Reply } from '../../src/bot/reply.ts'
import { openRoom } from '../room.ts'
import { verifiedSearch } from './sawdust.ts'

const search = verifiedSearch()
afterAll(async () => {
  expect(search.checked()).toBeGreaterThan(5)
  await search.close()
})

interface Step {
  readonly setting: number
  readonly mark: number
  readonly kind: string
  readonly of: string
  readonly cuts: number
  readonly parts: readonly string[]
  readonly narrow: boolean
}
interface Figures {
  readonly settings: number
  readonly cuts: number
  readonly steps: readonly Step[]
}
const figuresOf = (reply: Reply) => reply.figures as unknown as Figures

async function say(...lines: readonly string[]): Promise<Reply> {
  const room = await openRoom({ search, settings: { search: { seconds: 0.5, queue: 32 } } })
  const replies = []
  for (const line of lines) replies.push(await room.reply(line))
  await room.close()
  return replies.at(-1) as Reply
}

const PANELS = 'cutlist add A 2 @ 24in x 12in x 1/2 ply\nB 3 @ 18in x 11 7/8in x 1/2 ply'
const STRIPS = 'cutlist add R 10 @ 80in 2x6 strip=1/2in'

describe('the figures', () => {
  it('are settings, cuts and steps, and add up', async () => {
    const reply = await say(PANELS, 'cutorder')
    expect(Object.keys(reply.figures)).toEqual(['settings', 'cuts', 'steps'])
    const { settings, cuts, steps } = figuresOf(reply)
    expect(settings).toBeLessThanOrEqual(steps.length)
    expect(cuts).toBe(steps.reduce((sum, step) => sum + step.cuts, 0))
    expect(reply.answer).toMatch(
      new RegExp(`^${steps.length} saw settings for ${cuts} cuts; start with `, 'u'),
    )
  })

  it('finish every part once, with every setting a side of a part or what leads to it', async () => {
    const { steps } = figuresOf(await say(PANELS, 'cutorder'))
    expect(steps.flatMap(({ parts }) => parts).sort()).toEqual(['A', 'A', 'B', 'B', 'B'])
  })

  it('are the same for the layout just shown', async () => {
    const room = await openRoom({ search })
    await room.reply(PANELS)
    await room.reply('layout seconds=1')
    expect((await room.reply('cutorder')).figures).toEqual((await room.reply('cutorder')).figures)
    await room.close()
  })
})

describe('the settings', () => {
  it('are said with the parts that they finish', async () => {
    const reply = await say('cutlist add A 2 @ 30in 2x4', 'cutorder')
    expect(reply.tables).toEqual([
      {
        title: 'Boards: set to nearest tooth (in)',
        columns: ['', 'Set', 'Cut'],
        rows: [[1, '30', 'crosscut: 2 A']],
      },
    ])
    expect(reply.answer).toBe('1 saw setting for 2 cuts; start with crosscut at 30 in')
  })

  it('are to 1/32 in, or 0.5 mm, where they are no side of a part, and never further off than half of that', async () => {
    const list = 'cutlist add R 10 @ 80in 2x6 strip=12mm'
    const inches = figuresOf(await say(list, 'units inch', 'cutorder'))
    const others = inches.steps.filter(({ of, kind }) => of === 'board' && kind === 'rip')
    expect(others.length).toBeGreaterThan(0)
    for (const { setting, mark } of others)
      expect(Math.abs(setting - mark)).toBeLessThanOrEqual(25.4 / 64 + 1e-9)
    const metric = figuresOf(await say('units mm', 'cutlist add A 2 @ 23 15/16in x 301mm x 12mm', 'cutorder'))
    for (const { mark } of metric.steps) expect((mark * 2) % 1).toBe(0)
  })

  it('are of a side of a part what the list of parts has: never over what goes into its place', async () => {
    // 23 15/16 in is 608.0125 mm, and 425.5 mm is half a mark over 425.
    const lines = ['units mm', 'cutlist add A 2 @ 23 15/16in x 425.5mm x 12mm'] as const
    const reply = await say(...lines, 'cutorder')
    const sides = figuresOf(reply).steps.filter(({ setting }) => setting === 608.0125 || setting === 425.5)
    expect(new Map(sides.map(({ setting, mark }) => [setting, mark]))).toEqual(
      new Map([
        [608.0125, 608],
        [425.5, 425],
      ]),
    )
    const set = reply.tables?.flatMap(({ rows }) => rows.map(([, mark]) => mark))
    expect(set).toEqual(expect.arrayContaining(['608', '425']))
    expect(set).not.toContain('425.5')
    expect(reply.pictures?.[0]?.alt).toContain('A 425 x 608')
    expect(reply.notes?.join()).toContain('set by the mark that the list of parts has')
  })

  it('say so where a part may be a hair over or under for that', async () => {
    const rounded = await say(
      'units inch',
      'cutlist add R 10 @ 80in 2x6 strip=12.7mm',
      'units kerf=3mm',
      'cutorder',
    )
    expect(rounded.notes?.join()).toContain('up to 1/64 in over or under')
    const exact = await say('cutlist add A 2 @ 24in 2x4', 'cutorder')
    expect(exact.notes?.join()).not.toContain('over or under')
  })
})

describe('strips', () => {
  it('are ripped before they are crosscut, every board at a setting before the next', async () => {
    const reply = await say(STRIPS, 'cutorder')
    const [rip, crosscut] = reply.tables ?? []
    // 5 1/2 in less 5/8 in for each strip and kerf; eight from the first board, two from the second.
    expect(rip?.rows.map((row) => row[1])).toEqual([
      '4 7/8',
      '4 1/4',
      '3 5/8',
      '3',
      '2 3/8',
      '1 3/4',
      '1 1/8',
      '1/2',
    ])
    expect(rip?.rows[0]?.[2]).toBe('rip 2 boards')
    expect(rip?.rows[2]?.[2]).toBe('rip 1 board')
    expect(crosscut?.title).toMatch(/^Strips, after ripping/u)
    const { steps, cuts } = figuresOf(reply)
    expect(steps.filter(({ kind }) => kind === 'rip').reduce((sum, step) => sum + step.cuts, 0)).toBe(10)
    expect(cuts).toBe(20)
    expect(reply.answer).toBe('9 saw settings for 20 cuts; start with rip at 4 7/8 in')
  })

  it('say where too little is left at the fence, by the width that is asked for', async () => {
    const narrow = async (...options: readonly string[]) =>
      figuresOf(await say(STRIPS, ['cutorder', ...options].join(' ')))
        .steps.filter((step) => step.narrow)
        .map(({ setting }) => setting)
    expect(await narrow()).toEqual([44.45, 28.575, 12.7])
    expect(await narrow('safe=4in')).toHaveLength(6)
    const rows = (await say(STRIPS, 'cutorder')).tables?.[0]?.rows ?? []
    expect(rows.at(-1)?.[2]).toBe('rip 1 board, push block')
  })

  it('bring their cautions: thin strips on the free side, push stick, crosscuts', async () => {
    const ids = (await say(STRIPS, 'cutorder')).cautions?.map(({ id }) => id) ?? []
    const words = (await say(STRIPS, 'cutorder')).cautions?.map(({ text }) => text).join(' ') ?? ''
    expect(ids).toContain('manual')
    expect(words).toMatch(/thin strip fall on the free side/u)
    expect(words).toMatch(/stop block/u)
  })
})

describe('what is said beside', () => {
  it('is what is easily mixed up, in one line', async () => {
    const two = await say('cutlist add A 2 @ 24in 2x4\nB 2 @ 23 15/16in 2x4', 'cutorder')
    expect(two.notes).toContain('A and B are nearly the same size: mark them as you cut')
    const lines = Array.from({ length: 9 }, (_, index) => `P${index} 1 @ 24 ${index + 1}/32in 2x4`)
    const many = (await say(`cutlist add ${lines.join('\n')}`, 'cutorder')).notes ?? []
    expect(many.filter((note) => note.includes('nearly the same size'))).toHaveLength(1)
    expect(many.join()).toMatch(/and \d+ more pairs/u)
  })

  it('is what waits for the day, and what is assumed', async () => {
    const reply = await say('cutlist add A 2 @ 24in 2x4 later=yes', 'cutorder')
    expect(reply.notes?.join()).toContain('A: laid out, but cut to fit on the day')
    expect(reply.notes?.join()).toContain('2x4 8 ft assumed')
  })

  it('is that stock which is a part needs no cut', async () => {
    const reply = await say(
      'stock add 24in x 12in sheet=1/2 ply count=1',
      'cutlist add 24in x 12in',
      'cutorder',
    )
    expect(reply.answer).toBe('Nothing to saw: the stock is the parts as it stands')
    expect(reply.notes).toContain('A: no cut, the stock is the part')
    expect(figuresOf(reply)).toEqual({ settings: 0, cuts: 0, steps: [] })
  })

  it('fits a phone', async () => {
    const room = await openRoom({ search })
    await room.reply('cutlist add topmostshelf 3 @ 23 15/16in x 17 15/16in\nbottom shelf 2 @ 40in x 20in')
    await room.reply(STRIPS)
    const response = await room.ask('cutorder')
    if (!response.ok) throw new Error(response.error)
    for (const table of response.reply.tables ?? [])
      for (const line of tableLines(table, response.show))
        expect([...line].length, line).toBeLessThanOrEqual(PHONE_COLUMNS)
    await room.close()
  })
})
