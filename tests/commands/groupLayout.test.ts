import fc from 'fast-check'
import { afterAll, describe, expect, it } from 'vitest'
import { createSearch } from '../../src/search/pool.ts'
import { openRoom, type Room, type Who } from '../room.ts'
import { textOf } from './asking.ts'

const search = createSearch({ threads: 1, queue: 8 })
const rooms: Room[] = []
afterAll(async () => {
  for (const each of rooms) await each.close()
  await search.close()
})

const ANN: Who = { user: 'u1', name: 'Ann' }
const STOCK = ['stock add 4ft x 8ft sheet=1/2in price=41.99', 'stock add 2x4x8 price=4.23']

async function openGroup(channel: string): Promise<{ room: Room; who: Who }> {
  const room = await openRoom({ search })
  rooms.push(room)
  const who = { ...ANN, channel }
  await room.reply('project start 17in x 13in height=15in sheet=1/2in', who)
  await room.reply('group open Planters', who)
  return { room, who }
}

const kit = fc.record({
  long: fc.integer({ min: 12, max: 24 }),
  wide: fc.integer({ min: 10, max: 14 }),
  height: fc.constantFrom(10, 12, 15),
})

const sizeOf = ({ long, wide, height }: { long: number; wide: number; height: number }) =>
  `${long}in x ${wide}in height=${height}in`

describe('the layout of a group', () => {
  it('never costs more than the layouts of its kits one by one', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(kit, { minLength: 2, maxLength: 4 }), async (kits) => {
        const { room, who } = await openGroup('bench')
        for (const line of STOCK) await room.reply(line, who)
        let apart = 0
        for (const [index, each] of kits.entries()) {
          await room.reply(`group join object=${sizeOf(each)}`, { user: `p${index}` })
          const alone = { ...ANN, channel: `alone${index}` }
          for (const line of [...STOCK, `project start ${sizeOf(each)} sheet=1/2in`])
            await room.reply(line, alone)
          apart += Number((await room.reply('layout seconds=1', alone)).figures.cost)
        }
        const { figures } = await room.reply('group layout seconds=1', who)
        expect(Number(figures.cost)).toBeLessThanOrEqual(apart + 1e-6)
        expect(figures.kits).toBe(kits.length)
      }),
      { numRuns: 3 },
    )
  })

  it('cuts a panel that no sheet gives whole from its pieces, until a larger sheet is sold', async () => {
    const { room, who } = await openGroup('bench')
    const sam = { user: 'p1', channel: 'bench' }
    const card = await room.reply('group join object=110in x 20in height=20in', sam)
    expect(card.notes?.[0]).toMatch(/K01-Ba, K01-Bb/u)
    const found = await room.reply('group layout seconds=1', who)
    expect(textOf(found)).not.toContain('left out')
    expect(found.figures.sheets).toBeGreaterThan(0)
    await room.reply('stock add 4ft x 10ft sheet=1/2in', who)
    expect((await room.reply('group kit K01', who)).notes?.[0]).not.toMatch(/K01-Ba/u)
  })

  it('buys what members do not bring', async () => {
    const { room, who } = await openGroup('bench')
    for (let index = 0; index < 6; index += 1) await room.reply('group join', { user: `p${index}` })
    const before = (await room.reply('group layout seconds=1', who)).figures
    await room.reply('group bring 2ft x 4ft sheet=1/2in', { user: 'p1' })
    await room.reply('group bring 2x4x8', { user: 'p1' })
    const reply = await room.reply('group layout seconds=1', who)
    expect(Number(reply.figures.sheets)).toBeGreaterThan(1)
    expect(Number(reply.figures.boards)).toBeGreaterThan(1)
    expect(Number(reply.figures.completeKits)).toBeLessThan(6)
    expect(textOf(reply)).toMatch(/4x8 assumed/u)
    const money = (await room.reply('group money', who)).figures
    expect(money).toMatchObject({ unpriced: [], example: true })
    expect(Number(money.cost)).toBeGreaterThan(0)
    expect(before.parts).toBe(reply.figures.parts)
  })
})
