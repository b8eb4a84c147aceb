import { afterAll, describe, expect, it } from 'vitest'
import { PHONE_COLUMNS, tableLines } from '../../src/bot/format.ts'
import type { Reply } from '../../src/bot/reply.ts'
import { createSearch } from '../../src/search/pool.ts'
import { openRoom } from '../room.ts'

const search = createSearch({ threads: 1, queue: 8 })
afterAll(() => search.close())

interface Item {
  readonly label: string
  readonly kind: string
  readonly length: number
  readonly width: number
  readonly thickness: number
  readonly price: number | null
  readonly onHand: number | null
}
const items = (reply: Reply) => reply.figures.items as unknown as readonly Item[]

async function say(...lines: readonly string[]): Promise<Reply> {
  const room = await openRoom({ search })
  const replies = []
  for (const line of lines) replies.push(await room.reply(line))
  await room.close()
  return replies.at(-1) as Reply
}

async function refuse(...lines: readonly string[]): Promise<string> {
  const room = await openRoom({ search })
  for (const line of lines.slice(0, -1)) await room.reply(line)
  const refusal = await room.refusal(lines.at(-1) ?? '')
  await room.close()
  return refusal
}

const SHEET = 'stock add 4ft x 8ft sheet=1/2 ply price=$42.50'

describe('adding stock', () => {
  it('takes a sheet, longest side first, as thick as it really is', async () => {
    const reply = await say(SHEET)
    // 1/2 plywood is 15/32 in thick in the US (config/sheets.yaml).
    expect(items(reply)).toEqual([
      {
        label: 'S1',
        kind: 'sheet',
        length: 2438.4,
        width: 1219.2,
        thickness: 11.90625,
        price: 42.5,
        onHand: null,
      },
    ])
    expect(reply.tables?.[0]?.rows).toEqual([['S1', 'shop', '96 x 48', '$42.50']])
  })

  it('takes boards by name and length', async () => {
    // A 2x6 is dressed to 1 1/2 x 5 1/2 in (PS 20, American Softwood Lumber Standard).
    expect(items(await say('stock add 2x6x8'))).toMatchObject([
      { label: 'L1', kind: 'board', length: 2438.4, width: 139.7, thickness: 38.1, price: null },
    ])
  })

  it('takes offcuts on hand', async () => {
    const reply = await say('stock add 22in x 40in sheet=1/2 ply count=3 label=OFF1')
    expect(items(reply)).toMatchObject([{ label: 'OFF1', length: 1016, width: 558.8, onHand: 3 }])
    expect(reply.tables?.[0]?.rows[0]?.[1]).toBe(3)
  })

  it('takes a price of nothing', async () =>
    expect(items(await say('stock add 2x4x8 price=0'))).toMatchObject([{ price: 0 }]))

  it.each([
    ['UK', 'stock add 2440mm x 1220mm sheet=12mm ply price=£38', '2440 x 1220', '£38.00'],
    ['AU', 'stock add 2400mm x 1200mm sheet=12mm ply price=61.50 AUD', '2400 x 1200', '61.50 AUD'],
  ])('speaks as they do in %s', async (region, sheet, size, price) => {
    const reply = await say(`units region=${region}`, sheet)
    expect(reply.tables?.[0]).toMatchObject({ title: 'Stock (mm)', rows: [['S1', 'shop', size, price]] })
  })

  it('gives labels that are free, and finds them in any case', async () => {
    const reply = await say('stock add 2x4x8 label=l1', 'stock add 2x4x10', SHEET, 'stock add 2x4x12')
    expect(items(reply).map(({ label }) => label)).toEqual(['l1', 'L2', 'S1', 'L3'])
  })

  it.each([
    ['stock add 1/2 ply', 'shop', '96 x 48'],
    ['stock add 3 sheets 1/2 ply', 3, '96 x 48'],
    ['stock add 2 @ 1/2 ply 4ft x 4ft', 2, '48 x 48'],
    ['stock add 4ft x 4ft 1/2 ply', 'shop', '48 x 48'],
    ['stock add 4x8 1/2 ply price=42.50', 'shop', '96 x 48'],
  ])('takes a sheet by what it is sold as: %s', async (line, number, size) => {
    const reply = await say(line)
    expect(items(reply)).toMatchObject([{ kind: 'sheet', thickness: 11.90625 }])
    expect(reply.tables?.[0]?.rows[0]?.slice(1, 3)).toEqual([number, size])
  })

  it('says which size it took for want of one, and takes that of the region', async () => {
    expect((await say('stock add 1/2 ply')).notes?.[0]).toContain('"1/2 ply" taken as 4x8, the usual size')
    const reply = await say('units region=AU', 'stock add 12mm ply')
    expect(reply.tables?.[0]?.rows[0]?.[2]).toBe('2400 x 1200')
  })

  it.each([
    ['stock add 2x4', /how long is the board/u],
    ['stock add 2 1/2 ply 4ft x 8ft', /could be 2 sheets of 1\/2 ply 4ft x 8ft, .*write 2 @ 1\/2 ply/u],
    ['stock add half sheet 3/4 ply', /half a sheet .* such as 4ft x 4ft sheet=3\/4 ply/u],
    ['stock add 4ft x 8ft', /or is it a sheet\?/u],
    ['stock add nonsense', /cannot read "nonsense" as stock/u],
    ['stock add 4ft x 8ft x 2ft sheet=1/2 ply', /cannot read .* as stock/u],
    ['stock add 2x4x8 label=averyverylonglabel', /label "averyverylonglabel" is too long; write 12 letters/u],
    ['stock add 2x4x8 count=0', /count="0" is out of range/u],
    ['stock add 2x4x8 count=-3', /count/u],
    ['stock add 2x4x8 price=-3', /price/u],
    ['stock add 2x4x8 price=cheap', /cannot read "cheap" as price; write an amount such as 42.50/u],
  ])('refuses %s and keeps nothing', async (line, said) => {
    const room = await openRoom({ search })
    expect(await room.refusal(line)).toMatch(said)
    expect(items(await room.reply('stock'))).toEqual([])
    await room.close()
  })

  it('refuses a label twice, and a second currency', async () => {
    expect(await refuse('stock add 2x4x8 label=L1', 'stock add 2x4x8 label=l1')).toContain('"l1" is taken')
    expect(await refuse(SHEET, 'stock add 2x4x8 price=£4')).toContain('in $, not £')
    const reply = await say(SHEET, 'stock remove S1', 'stock add 2x4x8 price=£4')
    expect(reply.tables?.[0]?.rows[0]?.[3]).toBe('£4.00')
  })

  it('takes the same piece twice under two labels: one from the shop, one on hand', async () =>
    expect(items(await say(SHEET, 'stock add 4ft x 8ft sheet=1/2 ply count=1'))).toHaveLength(2))

  it('takes two hundred rows and no more, and can still be read then', async () => {
    const room = await openRoom({ search })
    for (let row = 0; row < 200; row += 1) await room.reply('stock add 2x4x8')
    expect(await room.refusal('stock add 2x4x8')).toContain('has 200 rows')
    expect(items(await room.reply('stock'))).toHaveLength(200)
    await room.close()
  })
})

describe('how many are on hand', () => {
  it.each(['3 @ 2x4x8', '8ft 2x4 x3', '2x4x8 (x3)', '2x4x8 count=3'])('is read from %s', async (typed) =>
    expect((await say(`stock add ${typed}`)).figures.items).toMatchObject([
      { kind: 'board', length: 2438.4, width: 88.9, onHand: 3 },
    ]),
  )

  it('is read of a sheet, and what the shop sells has no count', async () => {
    expect((await say('stock add 2 @ 2ft x 4ft sheet=1/2 ply')).figures.items).toMatchObject([{ onHand: 2 }])
    expect((await say('stock add 2ft x 4ft sheet=1/2 ply')).figures.items).toMatchObject([{ onHand: null }])
  })

  it('is asked where it is said twice', async () => {
    expect(await refuse('stock add 3 @ 2x4x8 count=5')).toMatch(/"3 @ 2x4x8" says 3, count= says 5/u)
    expect(await refuse('stock add 3 @ 2x4x8 (x4)')).toMatch(/gives two counts, 4 and 3/u)
  })
})

describe('changing stock', () => {
  it('removes, undoes and does again', async () => {
    const room = await openRoom({ search })
    await room.reply(SHEET)
    expect((await room.reply('stock remove s1')).figures.items).toEqual([])
    expect((await room.reply('stock undo')).answer).toBe('Undone: "stock remove s1": 1 row')
    expect((await room.reply('stock redo')).answer).toBe('Done again: "stock remove s1"')
    await room.close()
  })

  it.each([
    ['stock remove S2', /nothing on the stock list is called "S2"\. Did you mean S1\?/u],
    ['stock set', /what is to be set\?/u],
    ['stock set sheettrim=-1in', /sheettrim/u],
    ['stock redo', /nothing to redo in this stock list/u],
  ])('refuses %s', async (line, said) => expect(await refuse(SHEET, line)).toMatch(said))

  it('sets trim and what is kept, and says so', async () => {
    const reply = await say(SHEET, 'stock set sheettrim=1/4in boardtrim=1/2in keep=10in')
    expect(reply.notes).toContain('1/4 in off every edge of a bought sheet')
    expect(reply.notes).toContain('1/2 in off one end of every board')
    expect(reply.notes).toContain('offcuts are kept from 10 in on')
    const none = await say(SHEET, 'stock set sheettrim=1/4in', 'stock set sheettrim=0')
    expect(none.notes?.join()).not.toContain('edge')
  })

  it('says what is used where nothing is listed', async () =>
    expect((await say('stock')).answer).toBe(
      'Nothing listed; the usual sheets and boards of the region are used',
    ))
})

describe('on a phone', () => {
  it('no line of the table is too wide', async () => {
    const room = await openRoom({ search })
    await room.reply(
      'stock add 107 15/16in x 47 31/32in sheet=3/4 ply price=1234.56 AUD count=100 label=longestlabel',
    )
    const response = await room.ask('stock')
    if (!response.ok) throw new Error(response.error)
    for (const table of response.reply.tables ?? [])
      for (const line of tableLines(table, response.show))
        expect([...line].length, line).toBeLessThanOrEqual(PHONE_COLUMNS)
    await room.close()
  })
})
