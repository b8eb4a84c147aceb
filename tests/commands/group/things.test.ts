import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { openRoom, type Room, type Who } from '../../room.ts'

const rooms: Room[] = []
let room: Room
const ANN: Who = { user: 'u1', name: 'Ann' }
const BOB: Who = { user: 'u2', name: 'Bob' }

beforeEach(async () => {
  room = await openRoom()
  rooms.push(room)
  await room.reply('project start 17in x 13in height=15in sheet=1/2in', ANN)
  await room.reply('group open Planters', ANN)
  await room.reply('group join', BOB)
})
afterAll(async () => {
  for (const each of rooms) await each.close()
})

describe('what is needed', () => {
  it.each([
    ['8 clamps', 'clamps', 8],
    ['8x clamps', 'clamps', 8],
    ['8 x clamps', 'clamps', 8],
    ['clamps x8', 'clamps', 8],
    ['clamps x 8', 'clamps', 8],
    ['clamps (8)', 'clamps', 8],
    ['2 G clamps', 'G clamps', 2],
    ['2x4 offcuts', '2x4 offcuts', 1],
    ['4 x 8 sheets', '4 x 8 sheets', 1],
    ['18 gauge brads', '18 gauge brads', 1],
    ['2 quarts paint', '2 quarts paint', 1],
    ['sandpaper 120', 'sandpaper 120', 1],
    ['clamps', 'clamps', 1],
  ])('"%s" is %s, %i', async (typed, name, count) => {
    const { figures } = await room.reply(`group need ${typed}`, ANN)
    expect(figures.needs).toEqual([{ name, count, missing: count }])
  })

  it('is one row however it is written, and another where it is something else', async () => {
    for (const line of ['8 clamps', 'clamp count=9', 'wood glue', 'glue'])
      await room.reply(`group need ${line}`, ANN)
    const { figures } = await room.reply('group needs', ANN)
    expect(figures.needs).toMatchObject([
      { name: 'clamps', count: 9 },
      { name: 'wood glue', count: 1 },
      { name: 'glue', count: 1 },
    ])
  })

  it.each([
    ['2 clamps', 6],
    ['clamps 2', 6],
    ['clamps x2', 6],
    ['clamp count=2', 6],
    ['clamps', 0],
  ])('is claimed as "%s"', async (typed, missing) => {
    await room.reply('group need 8 clamps', ANN)
    await room.reply('group need 5 sheets of sandpaper', ANN)
    expect((await room.reply(`group claim ${typed}`, BOB)).figures.needs).toMatchObject([
      { missing },
      { missing: 5 },
    ])
    expect((await room.reply('group claim sandpaper', BOB)).figures.needs).toMatchObject([{}, { missing: 0 }])
    expect((await room.reply('group drop clamp', BOB)).figures.needs).toMatchObject([{ missing: 8 }, {}])
  })

  it('is asked about where two things may be meant', async () => {
    for (const line of ['bar clamps', 'spring clamps']) await room.reply(`group need ${line}`, ANN)
    expect(await room.refusal('group claim clamps', BOB)).toMatch(/"clamps" is not on the list/u)
  })
})

describe('what the kits take', () => {
  const needed = async (who: Who = ANN) => (await room.reply('group needs kits=yes', who)).figures.needs

  it('goes on the list with its amounts, keeps what is claimed, and goes when it is not taken any more', async () => {
    await room.reply('group join', ANN)
    await room.reply('group need clamps count=8', ANN)
    expect(await room.refusal('group needs kits=yes', BOB)).toMatch(/only an organiser says what is needed/u)
    const layout = (await room.reply('group layout', ANN)).figures
    const first = await needed()
    const row = (name: RegExp) => expect.objectContaining({ name: expect.stringMatching(name) })
    expect(first).toEqual(
      expect.arrayContaining([
        { name: 'clamps', count: 8, missing: 8 },
        { name: '1/2 in plywood 4x8', count: layout.sheets, missing: layout.sheets },
        { name: 'safety glasses', count: 2, missing: 2 },
        row(/brads box/u),
        row(/glue/u),
        row(/grit sandpaper/u),
      ]),
    )
    await room.reply('group claim safety glasses count=1', BOB)
    await room.reply('group bring 1 sheet 4ft x 8ft sheet=1/2in', BOB)
    const next = await needed()
    expect(next).not.toEqual(expect.arrayContaining([row(/plywood/u)]))
    expect(next).toEqual(expect.arrayContaining([{ name: 'safety glasses', count: 2, missing: 1 }]))
    expect(await needed()).toEqual(next)
  })

  it('costs what the channel pays for it, and nothing twice', async () => {
    await needed()
    const wood = (await room.reply('group money', ANN)).figures.perKit
    expect(wood).toMatchObject([{ shared: 0 }])
    await room.reply('shopping price yellow glue 4 oz price=3.50', ANN)
    await needed()
    expect((await room.reply('group money', ANN)).figures.perKit).toMatchObject([{ shared: 3.5 }])
  })
})

describe('stock that is brought', () => {
  it.each([
    ['2 boards 2x4x8', 2],
    ['3 boards of 2x4x8', 3],
    ['2 sheets 4ft x 8ft sheet=1/2in', 2],
    ['4ft x 8ft sheet=1/2in', 1],
  ])('"%s" is %i', async (typed, count) => {
    const { tables = [] } = await room.reply(`group bring ${typed}`, BOB)
    expect(tables.find(({ title }) => title?.startsWith('Stock'))?.rows[0]?.[1]).toBe(count)
  })
})

describe('a kit', () => {
  it('is named by its number or as it is written on its parts', async () => {
    for (const kit of ['1', 'K01', 'k1', 'kit 1']) {
      expect((await room.reply(`group kit ${kit}`, ANN)).figures).toMatchObject({ kit: 1 })
      expect((await room.reply(`group progress ${kit}`, ANN)).figures).toMatchObject({ kit: 1 })
      expect((await room.reply(`group paid ${kit} $20`, ANN)).figures).toMatchObject({ kit: 1, paid: 20 })
    }
    expect((await room.reply('group paid K01 amount=5', ANN)).figures).toMatchObject({ kit: 1, paid: 5 })
    expect(await room.refusal('group paid K01', ANN)).toMatch(/how much has been paid/u)
    expect(await room.refusal('group kit sam', ANN)).toMatch(/cannot read "sam" as a kit/u)
    expect(await room.refusal('group kit K00', ANN)).toMatch(/cannot read "K00" as a kit/u)
    expect(await room.refusal('group paid 9 20', ANN)).toMatch(/there is no K09/u)
  })
})
