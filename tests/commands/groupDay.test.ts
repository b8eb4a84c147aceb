import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { PHONE_COLUMNS, tableLines } from '../../src/bot/format.ts'
import { openRoom, type Room, type Who } from '../room.ts'
import { textOf } from './asking.ts'

const rooms: Room[] = []
let room: Room
beforeEach(async () => {
  room = await openRoom()
  rooms.push(room)
  for (const line of [
    'project start 17in x 13in height=15in sheet=1/2in grooves=2',
    'group open Planters',
    'group join',
  ])
    await room.reply(line, ANN)
  await room.reply('group join height=12in', BOB)
  await room.reply('group join object=14in round grooves=0', CY)
})
afterAll(async () => {
  for (const each of rooms) await each.close()
})

const ANN: Who = { user: 'u1', name: 'Ann' }
const BOB: Who = { user: 'u2', name: 'Bob' }
const CY: Who = { user: 'u3', name: 'Cy' }

interface StationRow {
  readonly station: string
  readonly kits: number
  readonly settings: number
  readonly minutes: number
  readonly people: number
}

describe('group stations', () => {
  it('lists the day by station, on a phone, with one operator at a saw', async () => {
    const response = await room.ask('group stations hours=2', ANN)
    if (!response.ok) throw new Error(response.error)
    const { reply, show } = response
    const rows = reply.figures.stations as unknown as readonly StationRow[]
    expect(rows.map(({ station }) => station)).toEqual([
      'break down',
      'rip',
      'crosscut',
      'groove',
      'assemble',
      'finish',
    ])
    expect(rows.find(({ station }) => station === 'groove')?.kits).toBe(2)
    for (const { minutes, people } of rows) expect(people).toBe(Math.ceil(minutes / 120))
    expect(reply.figures.minutes).toBe(rows.reduce((sum, { minutes }) => sum + minutes, 0))
    expect(textOf(reply)).toMatch(/^one operator at each saw, and only adults at power tools$/mu)
    for (const table of reply.tables ?? [])
      for (const line of tableLines(table, show)) expect([...line].length).toBeLessThanOrEqual(PHONE_COLUMNS)
  })

  it('gives the settings of one, each once', async () => {
    const { tables, figures } = await room.reply('group stations crosscut')
    const rows = figures.stations as unknown as readonly StationRow[]
    const settings = rows.find(({ station }) => station === 'crosscut')?.settings
    expect(tables?.[0]?.rows).toHaveLength(settings ?? 0)
    expect(await room.refusal('group stations drill')).toMatch(/no kit of this group has anything to drill/u)
  })
})

describe('group tick', () => {
  it('is done by anybody, says who was first, and is taken back', async () => {
    expect(
      (await room.reply('group tick break down kits=1-2', { user: 'u9', name: 'Di' })).figures,
    ).toMatchObject({
      done: 2,
      next: { station: 'break down', kits: [3] },
    })
    expect((await room.reply('group tick rip', BOB)).answer).toMatch(/^Done: rip K02/u)
    const again = await room.reply('group tick break down kits=1', ANN)
    expect(again.answer).toMatch(/^break down K01 was ticked off already, by Di/u)
    expect((await room.reply('group tick break down kits=all', CY)).figures).toMatchObject({
      done: 4,
      next: { station: 'rip', kits: [1, 3] },
    })
    expect(textOf(await room.reply('group progress 2'))).toMatch(/^break down: Di, 2026-03-06 .* UTC$/mu)
    expect((await room.reply('group tick rip kits=2 off=yes')).figures).toMatchObject({ done: 3 })
    expect(await room.refusal('group tick rip', { user: 'u9' })).toMatch(/which kit\?/u)
    expect(await room.refusal('group tick rip kits=9')).toMatch(/there is no K09/u)
    expect(await room.refusal('group tick rip kits=some')).toMatch(/cannot read "some" as kits/u)
    expect(await room.refusal('group tick groove kits=3')).toMatch(/K03 has nothing to groove/u)
  })

  it('is flagged when the kit changes after it', async () => {
    for (const station of ['break down', 'rip']) await room.reply(`group tick ${station} kits=all`, ANN)
    await room.reply('group change height=13in', BOB)
    const { figures, notes = [] } = await room.reply('group progress')
    expect(figures).toMatchObject({ done: 5, changed: [{ kit: 2, station: 'break down' }] })
    expect(notes.join('\n')).toMatch(/changed since it was ticked off: break down K02/u)
    expect((await room.reply('group tick break down', BOB)).figures).toMatchObject({ done: 6, changed: [] })
  })

  it('ends when everything is done, and goes with the kit that leaves', async () => {
    for (const station of ['break down', 'rip', 'crosscut', 'groove', 'assemble', 'finish'])
      await room.reply(`group tick ${station} kits=all`, ANN)
    expect((await room.reply('group progress')).answer).toBe('All 3 kits are done')
    await room.reply('group leave', CY)
    expect((await room.reply('group progress')).figures).toMatchObject({ done: 12, cells: 12 })
  })
})

describe('the shared plan of a group', () => {
  it('changes exactly the kits that have not chosen otherwise', async () => {
    expect((await room.reply('group plan height=16in', ANN)).figures).toMatchObject({ changed: [1, 3] })
    expect((await room.reply('group plan grooves=3', ANN)).figures).toMatchObject({ changed: [1, 2] })
    await room.reply('group change anew=yes', BOB)
    expect((await room.reply('group plan height=15in', ANN)).figures).toMatchObject({ changed: [1, 2, 3] })
  })

  it('is said to change those who wait as well, and what none of them can build', async () => {
    await room.reply('group set places=3', ANN)
    await room.reply('group join height=10in', { user: 'u4' })
    expect((await room.reply('group plan clearance=5/8in', ANN)).figures).toMatchObject({
      changed: [1, 2, 3, 4],
    })
    expect((await room.reply('group plan width=1in', ANN)).figures).toMatchObject({ broken: [1, 2, 3, 4] })
  })

  it('is locked with the list, whoever asks, and nobody moves up until it is opened', async () => {
    await room.reply('group set places=3', ANN)
    await room.reply('group join', { user: 'u4' })
    await room.reply('group lock', ANN)
    for (const line of ['group plan height=16in', 'group set spare=10'])
      expect(await room.refusal(line, ANN)).toMatch(/list of this group is locked/u)
    await room.reply('group leave', CY)
    expect((await room.reply('group')).figures).toMatchObject({ kits: 2, waiting: 1 })
    await room.reply('group lock off=yes', ANN)
    expect((await room.reply('group')).figures).toMatchObject({ kits: 3, waiting: 0 })
  })

  it('is called by a plain name', async () => {
    expect((await room.reply('group plan low height=9in', ANN)).answer).toMatch(/^New plan low beside main/u)
    expect((await room.reply('group plan LOW height=8in', ANN)).answer).toMatch(/^Plan low changed/u)
    for (const name of ['__proto__', 'a'.repeat(30)])
      expect(await room.refusal(`group plan ${name} height=9in`, ANN)).toMatch(/is no name for a plan/u)
    expect(await room.refusal('group join plan=constructor', { user: 'u5' })).toMatch(/there is no plan/u)
    expect(textOf(await room.reply('group plan tiny width=1in', ANN))).toMatch(/plan tiny cannot be built/u)
  })
})
