import { afterAll, describe, expect, it } from 'vitest'
import { PHONE_COLUMNS, tableLines } from '../../src/bot/format.ts'
import type { Reply } from '../../src/bot/reply.ts'
import { clubSheets } from '../bench/cutting/kits.ts'
import { openRoom } from '../room.ts'
import { verifiedSearch } from './sawdust.ts'

const search = verifiedSearch()
afterAll(async () => {
  expect(search.checked()).toBeGreaterThan(30)
  await search.close()
})

const quick = { search: { seconds: 0.6, queue: 32 } }

interface Figures {
  readonly sheets: number
  readonly boards: number
  readonly cost: number | null
  readonly lowerBound: number
  readonly optimal: boolean
  readonly gap: number
  readonly waste: number
  readonly offcuts: readonly object[]
  readonly sheetLayouts: readonly { stock: string; count: number; placements: readonly object[] }[]
  readonly boardLayouts: readonly { stock: string; of: string; count: number; parts: readonly string[] }[]
  readonly milliseconds: number
}
const figuresOf = (reply: Reply) => reply.figures as unknown as Figures

async function say(...lines: readonly string[]): Promise<Reply> {
  const room = await openRoom({ search, settings: quick })
  const replies = []
  for (const line of lines) replies.push(await room.reply(line))
  await room.close()
  return replies.at(-1) as Reply
}

async function refuse(...lines: readonly string[]): Promise<string> {
  const room = await openRoom({ search, settings: quick })
  for (const line of lines.slice(0, -1)) await room.reply(line)
  const refusal = await room.refusal(lines.at(-1) ?? '')
  await room.close()
  return refusal
}

const layout = (...lines: readonly string[]) => say(...lines, 'layout')
const figures = async (...lines: readonly string[]) => figuresOf(await layout(...lines))

const SHEET = 'stock add 4ft x 8ft sheet=1/2 ply price=$40'
const SMALL = 'stock add 4ft x 4ft sheet=1/2 ply price=$24'
const BOARD = 'stock add 2x4x8 price=4'

describe('the figures', () => {
  it('are these and no others', async () => {
    const found = await figures(SHEET, 'cutlist add 2x 24in x 12in; 2 @ 4ft')
    expect(Object.keys(found).sort()).toEqual(
      ['sheets boards cost lowerBound optimal gap waste offcuts sheetLayouts boardLayouts milliseconds'][0]
        ?.split(' ')
        .sort(),
    )
  })

  it('have a cost in the currency where every price is known, and none where one is not', async () => {
    const parts = 'cutlist add 2x 24in x 12in; 2 @ 4ft'
    expect(await figures(SHEET, BOARD, parts)).toMatchObject({ cost: 48, lowerBound: 48, optimal: true })
    expect(await figures(SHEET, parts)).toMatchObject({ cost: null, lowerBound: 3, sheets: 1, boards: 2 })
  })

  it('say how much is wasted: neither part nor kept offcut', async () => {
    // Two halves of a sheet and one kerf of 1/8 in across 48 in: 1/8 of 96 in is lost, and nothing else.
    const { waste, offcuts } = await figures(SHEET, 'cutlist add 1x 48in x 47 7/8in; 1x 48in x 48in')
    expect(waste).toBeCloseTo(0.125 / 96, 9)
    expect(offcuts).toEqual([])
    const kept = await figures(SHEET, 'cutlist add 1x 48in x 47 7/8in')
    expect(kept.waste).toBeCloseTo(0.125 / 96, 9)
    expect(kept.offcuts).toEqual([{ count: 1, length: 1219.2, width: 1219.2 }])
  })

  it('count what is ripped away as waste, and what is not ripped as kept', async () => {
    // 8 strips of 1/2 in from 5 1/2 in: 4 in of parts, 1 1/2 in of kerf and remainder, over the whole length.
    const { waste } = await figures('cutlist add 8x 96in 2x6 strip=1/2in')
    expect(waste).toBeCloseTo(1.5 / 5.5, 9)
    const one = await figures('cutlist add 1x 96in 2x6 strip=1/2in')
    expect(one.waste).toBeCloseTo(1.5 / 5.5, 9)
  })
})

describe('the first line', () => {
  it.each([
    ['Take 1 sheet (S1), $40.00; proven, fewer will not do', [SHEET, 'cutlist add 24in x 12in']],
    ['Take 1 board (L1), $4.00; proven, fewer will not do', [BOARD, 'cutlist add 1 @ 4ft']],
    ['Take 1 sheet (S2), $24.00; proven, nothing costs less', [SHEET, SMALL, 'cutlist add 24in x 12in']],
    [
      'Take 1 sheet (OFF); proven, nothing has to be bought',
      [SHEET, 'stock add 30in x 30in sheet=1/2 ply count=1 label=OFF', 'cutlist add 24in x 12in'],
    ],
    [
      'Take 2 sheets (1 of OFF, 1 of S1), $40.00; proven, buying less will not do',
      [
        SHEET,
        'stock add 30in x 30in sheet=1/2 ply count=1 label=OFF',
        'cutlist add 30in x 30in; 48in x 96in',
      ],
    ],
    [
      'Take 1 sheet (4x8) and 2 boards (2x4 8 ft); proven, fewer will not do',
      ['cutlist add 24in x 12in; 2 @ 4ft'],
    ],
  ])('is: %s', async (answer, lines) => {
    const said = (await layout(...lines)).answer
    // Which of two names comes first is the search's choice.
    expect(said.replace('1 of S1, 1 of OFF', '1 of OFF, 1 of S1')).toBe(answer)
  })

  it('has the money of the shopping list where no price says which, and its own where one does', async () => {
    const said = async (...lines: readonly string[]) => (await layout(...lines, 'cutlist add 1 @ 4ft')).answer
    expect(await said('stock add 2x4x8 price=4')).toContain(', $4.00;')
    expect(await said('shopping currency CAD', 'stock add 2x4x8 price=4')).toContain(', 4.00 CAD;')
    expect(await said('stock add 2x4x8 price=4 EUR')).toContain(', €4.00;')
  })

  it('does not say that fewer will not do where dearer ones would', async () => {
    // Two small sheets at 20 beat one large at 45; fewer would do, for more.
    const reply = await layout(
      'stock add 4ft x 8ft sheet=1/2 ply price=45',
      'stock add 4ft x 4ft sheet=1/2 ply price=20',
      'cutlist add 2x 47in x 47in',
    )
    expect(reply.answer).toBe('Take 2 sheets (S2), $40.00; proven, nothing costs less')
  })

  it('stays short however much is taken, with the rest in a table', async () => {
    const sections = [
      '2x2',
      '2x3',
      '2x4',
      '2x6',
      '2x8',
      '2x10',
      '2x12',
      '1x2',
      '1x3',
      '1x4',
      '1x6',
      '1x8',
      '1x10',
    ]
    const reply = await layout(`cutlist add ${sections.map((name) => `1 @ 30in ${name}`).join('\n')}`)
    expect(reply.answer.length).toBeLessThanOrEqual(160)
    expect(reply.answer).toMatch(/^Take 13 boards; proven/u)
    expect(reply.tables?.[0]).toMatchObject({ title: 'Take' })
    expect(reply.tables?.[0]?.rows).toHaveLength(sections.length)
  })
})

describe('strips', () => {
  it('are counted as whole boards, by the strips that can be counted on', async () => {
    // Eight strips of 1/2 in can be counted on from a 2x6: nine would leave nothing spare.
    expect(await figures('cutlist add 8x 90in 2x6 strip=1/2in')).toMatchObject({ boards: 1, optimal: true })
    expect(await figures('cutlist add 9x 90in 2x6 strip=1/2in')).toMatchObject({ boards: 2, optimal: true })
  })

  it('cost their boards, not their share of them', async () => {
    const found = await figures('stock add 2x6x8 price=9', 'cutlist add 9x 90in 2x6 strip=1/2in')
    expect(found).toMatchObject({ boards: 2, cost: 18, lowerBound: 18, gap: 0 })
  })

  it('come out of one kind of board where two kinds would take one more', async () => {
    // It ends when it is proven; the seconds are for a machine that is busy with something else.
    const reply = await say(
      'stock add 2x6x8 price=9',
      'stock add 2x6x10 price=12',
      'cutlist add 3x 115in 2x6; 2x 90in 2x6 strip=1/2in',
      'layout seconds=8',
    )
    expect(figuresOf(reply)).toMatchObject({ boards: 1, cost: 12, optimal: true })
  })

  it('use boards on hand first', async () => {
    const found = await figures(
      'stock add 2x6x8 price=9',
      'stock add 2x6x8 count=1 label=OWN',
      'cutlist add 10x 90in 2x6 strip=1/2in',
    )
    expect(found).toMatchObject({ boards: 2, cost: 9, optimal: true })
  })

  it('say which way they are ripped', async () => {
    const { boardLayouts } = await figures('cutlist add 2x 90in 2x6 strip=1/2in', 'cutlist add 1 @ 30in 1x4')
    expect(boardLayouts.map(({ of }) => of).sort()).toEqual(['board', 'strip'])
  })

  it('that no board is wide enough for are refused, by name', async () =>
    expect(await refuse('cutlist add 2x 30in strip=20in', 'layout')).toMatch(
      /^invalid: no board suits part A, 30 in of strips 20 in x 1 1\/2 in; add one/u,
    ))
})

describe('stock that several kinds of part draw on', () => {
  const TWO = 'cutlist add 8x 90in 2x6 strip=1/2in'
  const OTHER = 'cutlist add 2x 90in 2x6 strip=3/4in'

  it('is never taken twice', async () => {
    const own = 'stock add 2x6x8 count=1 label=OWN'
    const { boards, cost, boardLayouts } = await figures(own, 'stock add 2x6x8 price=9', TWO, OTHER)
    expect({ boards, cost }).toEqual({ boards: 2, cost: 9 })
    expect(boardLayouts.filter(({ stock }) => stock === 'OWN').every(({ parts }) => parts[0] === 'A')).toBe(
      true,
    )
    expect(await refuse(own, TWO, OTHER, 'layout')).toBe(
      'invalid: the boards on hand run out before part B is cut; add what the shop sells, such as: stock add 2x4x8 price=4.20',
    )
  })

  it('makes no claim that all of it together is the least', async () => {
    const reply = await layout('stock add 2x6x8 price=9', 'cutlist add 1x 90in 2x6 strip=1/2in', OTHER)
    expect(figuresOf(reply)).toMatchObject({ boards: 2, cost: 18, lowerBound: 9, optimal: false })
    expect(reply.answer).toMatch(/each kind of part proven by itself$/u)
    expect(reply.notes?.join()).toContain('whether one piece serves two')
  })

  it('is what was listed for it, not what another kind had to assume', async () => {
    // The listed 2x4 is priced and suits the strips; the 2x6 that the boards need is assumed and has no price.
    const found = await figures(BOARD, 'cutlist add 1 @ 30in 2x6', 'cutlist add 2x 90in 2x4 strip=1/2in')
    expect(found.boardLayouts.map(({ stock }) => stock).sort()).toEqual(['2x6 8 ft', 'L1'])
  })

  it('may be assumed for two kinds at once', async () => {
    const reply = await layout(TWO, OTHER)
    expect(figuresOf(reply).boards).toBe(2)
    expect(reply.notes?.filter((note) => note.includes('assumed'))).toHaveLength(1)
  })
})

describe('what cannot be cut', () => {
  it.each([
    [
      [SHEET, 'cutlist add 100in x 60in'],
      'part A, 100 x 60 in, is larger than any sheet: the largest is S1, 96 x 48 in. Some shops order larger ones: stock add 1525mm x 3050mm sheet=15/32in; or list its pieces to be joined in its place (cutlist remove A, cutlist add)',
    ],
    [
      [SHEET, 'stock set sheettrim=1/4in', 'cutlist add 96in x 40in'],
      'part A, 96 x 40 in, is larger than any sheet: the largest is S1, 96 x 48 in, less 1/4 in of trim on every edge. Some shops order larger ones: stock add 4ft x 10ft sheet=15/32in; or list its pieces to be joined in its place (cutlist remove A, cutlist add)',
    ],
    [
      [SHEET, 'cutlist add 40in x 90in grain=yes'],
      'part A, 40 x 90 in with the grain along its length, fits a sheet only when turned; let it turn with: cutlist change A grain=no',
    ],
    [
      [BOARD, 'cutlist add 1 @ 100in'],
      'part A, 100 in long, is longer than any board that suits it: the longest is L1, 96 in. List a longer one where a yard has it (stock add), or list its pieces to be joined in its place (cutlist remove A, cutlist add)',
    ],
    [
      [BOARD, 'stock set boardtrim=1/2in', 'cutlist add 1 @ 96in'],
      'part A, 96 in long, is longer than any board that suits it: the longest is L1, 96 in, less 1/2 in of trim. List a longer one where a yard has it (stock add), or list its pieces to be joined in its place (cutlist remove A, cutlist add)',
    ],
    [
      ['stock add 2x6x8', 'cutlist add 2x 100in 2x6 strip=1/2in'],
      'part A, 100 in long, is longer than any board that it can be ripped from: the longest is L1, 96 in. List a longer one where a yard has it (stock add), or list its pieces to be joined in its place (cutlist remove A, cutlist add)',
    ],
    [
      ['stock add 30in x 30in sheet=1/2 ply count=1', 'cutlist add 2x 24in x 24in'],
      'the sheets on hand run out before part A is cut; add what the shop sells, such as: stock add 4ft x 8ft sheet=1/2 ply',
    ],
    [['units region=EU', 'cutlist add 1 @ 20000mm'], /no board suits part A, 20000 mm of/u],
    [
      ['stock add 2440mm x 1220mm sheet=12mm', 'cutlist add 2500mm x 600mm x 12mm'],
      'part A, 2500 x 600 mm, is larger than any sheet: the largest is S1, 2440 x 1220 mm. Some shops order larger ones: stock add 1220mm x 3050mm sheet=12mm; or list its pieces to be joined in its place (cutlist remove A, cutlist add)',
    ],
  ])('names the part, and the sizes in the units of the list: %j', async (lines, said) => {
    const refusal = await refuse(...lines, 'layout')
    if (typeof said === 'string') expect(refusal).toBe(`invalid: ${said}`)
    else expect(refusal).toMatch(said)
    expect(refusal).not.toMatch(/\d{7}/u)
  })

  it('is said where there is nothing to cut', async () => {
    expect(await refuse('layout')).toMatch(/nothing to cut yet/u)
    expect(await refuse('layout seconds=9')).toMatch(/1 to 8/u)
  })
})

describe('the saw', () => {
  it('takes its kerf: two parts of 48 in are no board of 96 in', async () => {
    expect(await figures(BOARD, 'cutlist add 2 @ 48in')).toMatchObject({ boards: 2 })
    expect(await figures(BOARD, 'cutlist add 1 @ 48in; 1 @ 47 7/8in')).toMatchObject({ boards: 1 })
  })

  it('trims bought sheets on every edge, and offcuts on hand on none', async () => {
    const trim = 'stock set sheettrim=1/2in'
    expect(await figures(SHEET, trim, 'cutlist add 95in x 47in')).toMatchObject({ sheets: 1 })
    const own = 'stock add 96in x 48in sheet=1/2 ply count=1'
    expect(await figures(own, trim, 'cutlist add 96in x 48in')).toMatchObject({ sheets: 1 })
  })

  it('does not turn what has a grain', async () => {
    const small = 'stock add 30in x 20in sheet=1/2 ply price=5'
    expect(await figures(small, 'cutlist add 2x 20in x 14in')).toMatchObject({ sheets: 1 })
    expect(await figures(small, 'cutlist add 2x 20in x 14in grain=yes')).toMatchObject({ sheets: 2 })
  })
})

describe('more or less', () => {
  const PARTS = 'cutlist add 3x 30in x 20in; 5x 23in x 11 1/2in; 2x 40in x 15in; 4 @ 31in; 3 @ 22in'

  it('more stock never costs more', async () => {
    const before = await figures(SHEET, BOARD, PARTS)
    const after = await figures(SHEET, BOARD, SMALL, 'stock add 2x4x10 price=4.50', PARTS)
    expect(after.cost).toBeLessThanOrEqual(before.cost ?? 0)
  })

  it('a part less never needs more', async () => {
    const room = await openRoom({ search, settings: quick })
    for (const line of [SHEET, BOARD, PARTS]) await room.reply(line)
    let before = figuresOf(await room.reply('layout'))
    for (const label of ['A', 'D', 'B']) {
      await room.reply(`cutlist remove ${label}`)
      const after = figuresOf(await room.reply('layout'))
      expect(after.cost).toBeLessThanOrEqual(before.cost ?? 0)
      before = after
    }
    await room.close()
  })

  it('a wider kerf never needs fewer', async () => {
    const costs = []
    for (const kerf of ['1/16in', '1/8in', '3/16in', '1/4in'])
      costs.push((await figures(`units kerf=${kerf}`, SHEET, BOARD, PARTS)).cost ?? 0)
    expect(costs).toEqual(costs.toSorted((a, b) => a - b))
  })

  it('twice the parts never needs more than twice the stock', async () => {
    const once = await figures(SHEET, BOARD, PARTS)
    const twice = await figures(SHEET, BOARD, PARTS, PARTS)
    expect(twice.cost).toBeLessThanOrEqual(2 * (once.cost ?? 0))
  })
})

describe('what is said beside', () => {
  it('is what waits for the day', async () => {
    const reply = await layout('cutlist add 2x 24in x 12in later=yes', 'cutlist add 24in x 12in')
    expect(reply.notes).toContain('A: laid out, but cut to fit on the day; keep its piece whole till then')
  })

  it('is that more time may help only where it may', async () => {
    const reply = await layout('cutlist add 24in x 12in')
    expect(reply.notes?.join()).not.toContain('seconds=8')
  })

  it('is metric where people are', async () => {
    const reply = await layout('units region=AU', 'cutlist add 2x 600mm x 300mm; 2 @ 900mm')
    const text = JSON.stringify([reply.answer, reply.tables, reply.notes])
    expect(text).toContain('mm')
    expect(text).not.toMatch(/\bin\b/u)
  })

  it('says which stock a row is of where there are two', async () => {
    const reply = await layout(
      'stock add 50in x 50in sheet=1/2 ply count=1 label=OWN',
      SMALL,
      'cutlist add 2x 47in x 47in',
    )
    expect(reply.tables?.[0]?.columns).toEqual(['', 'No', 'Of', 'Left', 'Parts'])
  })

  it('fits a phone', async () => {
    const room = await openRoom({ search, settings: quick })
    await room.reply(
      'cutlist add topmostshelf 3 @ 23 15/16in x 17 15/16in\nbottom shelf 2 @ 40in x 20in\nC 9 @ 31 5/16in 2x4',
    )
    const response = await room.ask('layout')
    if (!response.ok) throw new Error(response.error)
    for (const table of response.reply.tables ?? [])
      for (const line of tableLines(table, response.show))
        expect([...line].length, line).toBeLessThanOrEqual(PHONE_COLUMNS)
    await room.close()
  })
})

describe('time', () => {
  it('that others took is said in a sentence', async () => {
    // Another channel holds the one thread for longer than this command may take in all.
    const room = await openRoom({ search, settings: { ...quick, commandSeconds: 2 } })
    await room.reply('cutlist add 23 7/16in x 11 5/16in')
    const { signal } = new AbortController()
    const others = search.cutSheets(clubSheets(12), { channel: 'others', seconds: 3, signal })
    const refusal = await room.refusal('layout')
    expect(refusal).toMatch(/^fault: this layout did not get done in time: others were before it/u)
    expect((await others).outcome).toMatchObject({ status: 'stopped' })
    expect(await room.ask('layout')).toMatchObject({ ok: true })
    await room.close()
  })
})

describe('a part that misses one more by a kerf', () => {
  const MISS = /would give/u
  const missed = async (...lines: readonly string[]) =>
    (await layout(...lines)).notes?.filter((note) => MISS.test(note)) ?? []

  it('is told with the size at which one more comes out, on sheets as on boards', async () => {
    expect(await missed('units inch', SHEET, BOARD, 'cutlist add 4x 24in x 18in ply; 3 @ 4 ft')).toEqual([
      'A 1/16 in shorter, at 23 15/16 in, would give 2 out of 48 in, not 1 (the kerf counts)',
      'B 1/16 in shorter, at 47 15/16 in, would give 2 out of 96 in, not 1 (the kerf counts)',
    ])
  })

  it('is not told where it comes out, where too few are wanted, or where the grain forbids it', async () => {
    expect(await missed('units inch', SHEET, 'cutlist add 4x 23 7/8in x 17in ply')).toEqual([])
    expect(await missed('units inch', BOARD, 'cutlist add 1 @ 4 ft')).toEqual([])
    const turned = ['units inch', SHEET, 'cutlist add 2x 48in x 17in ply'] as const
    expect(await missed(...turned)).toHaveLength(1)
    expect(await missed('units inch', SHEET, 'cutlist add 2x 17in x 24in ply grain=yes')).toHaveLength(1)
    expect(await missed('units inch', SHEET, 'cutlist add 2x 24in x 17in ply grain=yes')).toEqual([])
  })
})
