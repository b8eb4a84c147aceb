import fc from 'fast-check'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import type { Figure, Notice, Reply } from '../../src/bot/reply.ts'
import { openRoom, type Room, type Who } from '../room.ts'
import { inch, textOf } from './asking.ts'

const rooms: Room[] = []
let room: Room
beforeEach(async () => {
  room = await openRoom()
  rooms.push(room)
})
afterAll(async () => {
  for (const each of rooms) await each.close()
})

const ANN: Who = { user: 'u1', name: 'Ann' }
const BOB: Who = { user: 'u2', name: 'Bob' }
const CY: Who = { user: 'u3', name: 'Cy' }
const DI: Who = { user: 'u4', name: 'Di' }

/** Opens a group that Ann organises. */
async function open(options = ''): Promise<Reply> {
  await room.reply('project start 17in x 13in height=15in sheet=1/2in', ANN)
  return room.reply(`group open Spring planters ${options}`, ANN)
}

/** Every piece of a cut list, `count` times its sides in mm and where it comes from. */
async function pieces(file: string): Promise<ReadonlyMap<string, number>> {
  const [heading = '', ...rows] = file.trim().split('\r\n')
  const names = heading.split(',')
  const counts = new Map<string, number>()
  for (const row of rows) {
    const cells = row.split(',')
    const cell = (name: string) => cells[names.findIndex((each) => each.startsWith(name))] ?? ''
    const key = [cell('from'), cell('length'), cell('width'), cell('when')].join(' ')
    counts.set(key, (counts.get(key) ?? 0) + Number(cell('count')))
  }
  return counts
}

const fileOf = (reply: Reply): string => String(reply.files?.[0]?.content ?? '')

describe('group open', () => {
  it('begins with the plan of the channel, and makes the first who does so an organiser', async () => {
    expect(await room.refusal('group open Planters', ANN)).toMatch(/^invalid: a group builds from a plan/u)
    const { answer, figures } = await open('date=Saturday 9 May places=3')
    expect(answer).toBe('Open: Spring planters, Saturday 9 May: 0 of 3 places taken')
    expect(figures).toMatchObject({ members: 0, kits: 0, parts: 0, version: 0, unclaimed: [] })
    expect(await room.refusal('group open Another', ANN)).toMatch(/there is a group here already/u)
    expect((await room.reply('organisers')).figures).toMatchObject({ organisers: ['u1'] })
    expect(await room.refusal('group join', { ...BOB, channel: 'elsewhere' })).toMatch(
      /no group in this channel/u,
    )
  })

  it('ends when an organiser says so twice, with all that was kept', async () => {
    await open()
    await room.reply('group join', BOB)
    expect(await room.refusal('group close', BOB)).toMatch(/only an organiser/u)
    const [button] = (await room.reply('group close', ANN)).buttons ?? []
    await room.reply(button?.line ?? '', ANN)
    expect(await room.refusal('group')).toMatch(/no group in this channel/u)
    expect((await room.store.read(room.key('group'))).revision).toBe(0)
  })
})

describe('members', () => {
  it('take places in turn, wait when there are none, and move up when somebody leaves', async () => {
    await open('places=2')
    for (const who of [ANN, BOB, CY, DI]) await room.reply('group join', who)
    expect((await room.reply('group')).figures).toMatchObject({ members: 4, waiting: 2, kits: 2 })
    expect((await room.reply('group kit', CY)).figures).toMatchObject({ kit: 3, waiting: true })
    const left = await room.reply('group leave', BOB)
    expect(textOf(left)).toContain('K03 moves up from the waiting list')
    expect((await room.reply('group kit', CY)).figures).toMatchObject({ waiting: false })
    expect((await room.reply('group kit', DI)).figures).toMatchObject({ waiting: true })
    await room.reply('group set places=3', ANN)
    expect((await room.reply('group kit', DI)).figures).toMatchObject({ kit: 4, waiting: false })
    expect((await room.reply('group join', BOB)).figures).toMatchObject({ kit: 5, waiting: true })
  })

  it('build what they ask for, and are refused what cannot be built, with nothing kept', async () => {
    await open()
    const { figures } = await room.reply('group join object=14in round height=16in', BOB)
    const alone = await room.reply('sizing 14in round height=16in sheet=1/2in', BOB)
    expect(figures).toMatchObject({ ...alone.figures, kit: 1, sound: true })
    expect(await room.refusal('group join width=1/2in', CY)).toMatch(/^invalid: no captured corner/u)
    expect(await room.refusal('group change width=1/2in', BOB)).toMatch(/^invalid: no captured corner/u)
    expect((await room.reply('group')).figures).toMatchObject({ members: 1 })
    expect((await room.reply('group kit', BOB)).figures).toEqual(figures)
    expect(await room.refusal('group join', BOB)).toMatch(/you have K01 already/u)
    expect(await room.refusal('group change height=12in', CY)).toMatch(/you have not joined/u)
    expect(await room.refusal('group join plan=low', CY)).toMatch(/there is no plan "low"/u)
  })

  it('leave nothing behind when they leave', async () => {
    await open()
    await room.reply('group join object=19in x 11in', BOB)
    await room.reply('group need clamps count=4', ANN)
    await room.reply('group claim clamps count=2', BOB)
    await room.reply('group bring 3 @ 2x4x8', BOB)
    await room.reply('group leave', BOB)
    const kept = await room.store.read(room.key('group'))
    expect(JSON.stringify(kept.body)).not.toContain('u2')
    expect(await room.store.history(room.key('group'), 100)).toHaveLength(1)
    expect((await room.reply('group needs')).figures).toMatchObject({ unclaimed: ['clamps'] })
    expect(await room.refusal('group leave', BOB)).toMatch(/you have not joined/u)
  })

  it('are taken off the list by an organiser where they do not come, and by nobody else', async () => {
    await open('places=2')
    for (const who of [BOB, CY, DI]) await room.reply('group join', who)
    await room.reply('group need clamps count=4', ANN)
    await room.reply('group claim clamps count=2', BOB)
    await room.reply('group paid K01 amount=$20', ANN)
    expect(await room.refusal('group leave K01', CY)).toMatch(/only an organiser takes somebody else/u)
    expect(await room.refusal('group leave K09', ANN)).toMatch(/there is no K09/u)
    const gone = await room.reply('group leave K01', ANN)
    expect(gone.answer).toMatch(/^K01 is off the list/u)
    expect(textOf(gone)).toMatch(/K03 moves up from the waiting list\n\$20\.00 was marked as paid/u)
    expect(gone.figures).toMatchObject({ kit: 1, members: 2, waiting: 0, kits: 2 })
    expect(JSON.stringify((await room.store.read(room.key('group'))).body)).not.toContain('u2')
    expect((await room.reply('group needs')).figures.needs).toMatchObject([{ missing: 4 }])
    expect((await room.reply('group leave K02', CY)).answer).toMatch(/^You have left/u)
  })

  it('keep their places where there are fewer of them, and nobody moves up', async () => {
    await open()
    for (const who of [ANN, BOB, CY]) await room.reply('group join', who)
    const fewer = await room.reply('group set places=2', ANN)
    expect(textOf(fewer)).toContain(
      'all 3 keep the place they have; nobody moves up until fewer than 2 are left',
    )
    await room.reply('group join', DI)
    await room.reply('group leave', BOB)
    expect((await room.reply('group')).figures).toMatchObject({ kits: 2, waiting: 1 })
  })

  it('may not touch what is the organisers’', async () => {
    await open()
    await room.reply('group join', BOB)
    for (const line of [
      'group plan sheet=18mm',
      'group set places=5',
      'group need clamps',
      'group need clamps off=yes',
      'group post',
      'group lock',
      'group paid 1 amount=5',
      'group close',
    ])
      expect(await room.refusal(line, BOB), line).toMatch(/^invalid: only an organiser/u)
  })
})

describe('the shared plan', () => {
  it('reaches what nobody has changed for themselves, and says whom it changes', async () => {
    await open()
    await room.reply('group join', ANN)
    await room.reply('group join height=12in', BOB)
    await room.reply('group join sheet=3/4in', CY)
    const changed = await room.reply('group plan height=18in', ANN)
    expect(changed.figures).toMatchObject({ changed: [1, 3], broken: [] })
    expect((await room.reply('group kit 1')).figures).toMatchObject({ panelHeight: inch(18) })
    expect((await room.reply('group kit 2')).figures).toMatchObject({ panelHeight: inch(12) })
    const thicker = await room.reply('group plan sheet=5/8in', ANN)
    expect(thicker.figures).toMatchObject({ changed: [1, 2] })
    const narrow = await room.reply('group plan width=1in', ANN)
    expect(narrow.figures).toMatchObject({ broken: [1, 2, 3] })
    expect(textOf(narrow)).toContain('K01 is left out: no captured corner')
    expect((await room.reply('group')).figures).toMatchObject({ kits: 0, members: 3 })
  })

  it('may stand beside others', async () => {
    await open()
    await room.reply('group plan low height=8in', ANN)
    await room.reply('group join', ANN)
    await room.reply('group join plan=low', BOB)
    expect((await room.reply('group kit 2')).figures).toMatchObject({ panelHeight: inch(8) })
    expect((await room.reply('group plan low height=9in', ANN)).figures).toMatchObject({ changed: [2] })
    expect((await room.reply('group change plan=main', BOB)).figures).toMatchObject({
      panelHeight: inch(15),
    })
  })
})

describe('group list', () => {
  const kit = fc.record({
    long: fc.integer({ min: 14, max: 20 }),
    wide: fc.integer({ min: 10, max: 14 }),
    height: fc.constantFrom(12, 15),
  })

  it('has the parts of all kits and no others, whatever the kits', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(kit, { minLength: 1, maxLength: 6 }), async (kits) => {
        room = await openRoom()
        rooms.push(room)
        await open()
        const single = new Map<string, number>()
        for (const [index, { long, wide, height }] of kits.entries()) {
          const options = `object=${long}in x ${wide}in height=${height}in`
          await room.reply(`group join ${options}`, { user: `p${index}` })
          const alone = { ...ANN, channel: `alone${index}` }
          await room.reply(`project start ${long}in x ${wide}in height=${height}in sheet=1/2in`, alone)
          await room.reply('group open One', alone)
          await room.reply('group join', alone)
          for (const [key, count] of await pieces(fileOf(await room.reply('group list', alone))))
            single.set(key, (single.get(key) ?? 0) + count)
        }
        const merged = await room.reply('group list')
        const found = await pieces(fileOf(merged))
        expect([...found].sort()).toEqual([...single].sort())
        expect(merged.figures.parts).toBe([...single.values()].reduce((sum, count) => sum + count, 0))
      }),
      { numRuns: 8 },
    )
  })

  it('says whose each part is, which are nearly alike, and keeps what waits apart', async () => {
    await open('spare=10')
    await room.reply('group join', ANN)
    await room.reply('group join', BOB)
    const reply = await room.reply('group list')
    expect(fileOf(reply)).toContain('2 K01-A 2 K02-A')
    expect(textOf(reply)).toMatch(/^G5 and G6 are nearly the same size: mark them as you cut$/mu)
    expect((reply.tables ?? []).map(({ title = '' }) => title.split('.')[0])).toEqual([
      'Cut now',
      'Cut now',
      'Cut on the day',
    ])
    // Ten percent of 8 strips of a row, rounded up, is one; there are three rows that are cut ahead.
    expect(reply.figures).toMatchObject({ kits: 2, spare: 3, parts: 43 })
  })
})

describe('group layout', () => {
  beforeEach(async () => {
    await open()
    await room.reply('stock add 4ft x 8ft sheet=1/2in price=42', ANN)
    await room.reply('stock add 2x4x8 price=4.20', ANN)
    await room.reply('group join', ANN)
    await room.reply('group join object=14in round', BOB)
  })

  it('needs no more than the kits one by one', async () => {
    const together = (await room.reply('group layout')).figures
    let apart = 0
    for (const options of ['17in x 13in', '14in round']) {
      const alone = { ...ANN, channel: `alone ${options}`.replaceAll(' ', '-') }
      await room.reply('stock add 4ft x 8ft sheet=1/2in price=42', alone)
      await room.reply('stock add 2x4x8 price=4.20', alone)
      await room.reply(`project start ${options} height=15in sheet=1/2in`, alone)
      apart += Number((await room.reply('layout', alone)).figures.cost)
    }
    expect(Number(together.cost)).toBeLessThanOrEqual(apart)
    expect(together).toMatchObject({ kits: 2, completeKits: 0 })
  })

  it('uses what members bring first, at no cost, and says which kits that makes complete', async () => {
    const before = (await room.reply('group layout')).figures
    await room.reply('group bring 4ft x 8ft sheet=1/2in', BOB)
    const sheet = (await room.reply('group layout')).figures
    expect(Number(before.cost) - Number(sheet.cost)).toBe(42)
    expect(sheet.completeKits).toBe(0)
    expect(sheet.limitingPart).toMatch(/^G\d+$/u)
    await room.reply('group bring 2x4x8 count=4', BOB)
    const all = (await room.reply('group layout')).figures
    expect(all).toMatchObject({ cost: 0, completeKits: 2, limitingPart: null })
    await room.reply('group drop M1', BOB)
    expect((await room.reply('group layout')).figures).toMatchObject({ completeKits: 0 })
  })

  it('gives one cut order for all', async () => {
    const { figures } = await room.reply('group order')
    expect(figures).toMatchObject({ kits: 2 })
    expect(Number(figures.settings)).toBeGreaterThan(0)
    expect(Number(figures.cuts)).toBeGreaterThan(Number(figures.settings))
  })
})

describe('group money', () => {
  const cents = (value: Figure | undefined) => Math.round(Number(value) * 100)
  type Row = Readonly<Record<'kit' | 'wood' | 'shared' | 'paid' | 'due', number>>

  it.each(['evenly', 'by size'])('adds up to the cent, shared %s', async (share) => {
    await open(`share=${share}`)
    await room.reply('stock add 4ft x 8ft sheet=1/2in price=41.99', ANN)
    await room.reply('stock add 2x4x8 price=4.23', ANN)
    for (const [index, size] of ['17in x 13in', '14in round', '20in x 12in'].entries())
      await room.reply(`group join object=${size}`, { user: `p${index}` })
    await room.reply('group need glue cost=10', ANN)
    await room.reply('group need brads cost=3.01', ANN)
    const { figures } = await room.reply('group money')
    const layout = await room.reply('group layout')
    const rows = figures.perKit as unknown as readonly Row[]
    const sum = (name: keyof Row) => rows.reduce((all, row) => all + Math.round(row[name] * 100), 0)
    expect(sum('wood')).toBe(cents(layout.figures.cost))
    expect(sum('shared')).toBe(1301)
    expect(sum('wood') + sum('shared')).toBe(cents(figures.cost))
    if (share === 'evenly') expect(rows.map(({ shared }) => shared)).toEqual([4.34, 4.34, 4.33])
    await room.reply('group paid 2 amount=20', ANN)
    const after = (await room.reply('group money')).figures.perKit as unknown as readonly Row[]
    const second = after.find(({ kit: number }) => number === 2)
    expect(second).toMatchObject({ paid: 20 })
    expect(Math.round(((second?.wood ?? 0) + (second?.shared ?? 0) - 20) * 100)).toBe(
      Math.round((second?.due ?? 0) * 100),
    )
    expect(await room.refusal('group paid 9 amount=5', ANN)).toMatch(/there is no K09/u)
  })

  it('takes example prices and says so, and never counts what has none as nothing', async () => {
    await open()
    await room.reply('group join', ANN)
    const example = await room.reply('group money')
    expect(example.figures).toMatchObject({ example: true, unpriced: [], currency: 'USD' })
    expect(Number(example.figures.cost)).toBeGreaterThan(0)
    expect(textOf(example)).toMatch(/^example prices as of /mu)
    await room.reply('stock add 5ft x 5ft sheet=1/2in', ANN)
    const reply = await room.reply('group money')
    expect(reply.figures.cost).toBeNull()
    expect(reply.answer).toContain('Not all prices are known')
    expect((reply.figures.unpriced as readonly string[]).length).toBe(1)
    expect(await room.refusal('group need glue cost=£5', ANN)).toMatch(/reckons in USD, not £/u)
  })
})

describe('who brings what', () => {
  it('goes to the first of two who claim at once, and the other is told', async () => {
    await open()
    for (const who of [BOB, CY]) await room.reply('group join', who)
    await room.reply('group need drill', ANN)
    const both = await Promise.all([BOB, CY].map((who) => room.ask('group claim drill', who)))
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    const lost = both.find(({ ok }) => !ok)
    expect(lost).toMatchObject({ kind: 'invalid', error: expect.stringMatching(/somebody was faster/u) })
    expect((await room.reply('group needs')).figures).toMatchObject({ unclaimed: [] })
  })

  it('is counted, claimed in part, given back, and shown with what is open first', async () => {
    await open()
    for (const who of [BOB, CY]) await room.reply('group join', who)
    await room.reply('group need clamps count=8', ANN)
    const asked = await room.reply('group need glasses count=2', ANN)
    expect(asked.buttons?.[0]).toEqual({ label: 'I bring clamps', line: 'group claim clamps' })
    await room.reply('group claim clamps count=3', BOB)
    expect(await room.refusal('group claim clamps count=6', CY)).toMatch(/only 5 of "clamps"/u)
    await room.reply('group claim clamps', CY)
    const { tables, figures } = await room.reply('group needs')
    expect(tables?.map(({ title }) => title)).toEqual(['Nobody brings yet', 'Taken care of'])
    expect(tables?.[1]?.rows).toEqual([['clamps', 8, 'Bob 3, Cy 5']])
    expect(figures).toMatchObject({ unclaimed: ['glasses'] })
    await room.reply('group drop clamps', BOB)
    expect((await room.reply('group needs')).figures).toMatchObject({ unclaimed: ['clamps', 'glasses'] })
    await room.reply('group need glasses off=yes', ANN)
    expect(await room.refusal('group claim glases', BOB)).toMatch(/not on the list of what is needed/u)
    expect(await room.refusal('group claim clamps', DI)).toMatch(/you have not joined/u)
  })
})

describe('the posted list', () => {
  it('has a version that grows with every change of the list, and says what changed', async () => {
    await open()
    await room.reply('group join', ANN)
    const { notice, figures } = await room.reply('group post', ANN)
    expect(figures).toMatchObject({ version: 1 })
    expect(notice).toMatchObject({ name: 'group', reply: { audience: 'channel' } })
    const joined = await room.reply('group join object=14in round', BOB)
    expect(textOf(joined.notice?.reply as Reply)).toMatch(/changed since v1: K02 new/u)
    const changed = await room.reply('group change height=16in', BOB)
    expect(textOf(changed.notice?.reply as Reply)).toMatch(
      /changed since v2: K02 changed\n.*so in the list: .*end stile 13 in 4, none before/u,
    )
    expect((await room.reply('group change height=16in', BOB)).notice).toBeUndefined()
    expect((await room.reply('group need clamps', ANN)).notice).toBeUndefined()
    const left = await room.reply('group leave', BOB)
    expect(textOf(left.notice?.reply as Reply)).toMatch(/changed since v3: K02 gone/u)
    expect((await room.reply('group')).figures).toMatchObject({ version: 4 })
  })

  it('is in the units of the channel, whoever changes it in whichever units', async () => {
    await open()
    await room.reply('group join', ANN)
    const posted = await room.reply('group post', ANN)
    await room.reply('units metric tape=1/64', BOB)
    const joined = await room.reply('group join 400mm x 300mm height=30cm', BOB)
    const left = await room.reply('group leave', BOB)
    for (const { notice } of [joined, left]) {
      const { notes = [], tables = [], files = [] } = (notice as Notice).reply
      expect([...notes, ...tables.map(({ title }) => title), files[0]?.content].join('\n')).not.toMatch(
        /mm\b/u,
      )
      for (const { rows } of tables) for (const cell of rows.flat()) expect(typeof cell).not.toBe('object')
    }
    expect(left.notice?.reply.tables).toEqual(posted.notice?.reply.tables)
    await room.reply('group join height=12in', CY)
    await room.reply('units metric for=channel', ANN)
    const metric = await room.reply('group plan height=16in', ANN)
    expect(metric.notice?.reply.tables?.[0]?.title).toMatch(/\(mm\)/u)
  })

  it('says how thick where that is what changed', async () => {
    await open()
    await room.reply('group join', ANN)
    await room.reply('group post', ANN)
    const { notice } = await room.reply('group plan sheet=5/8in', ANN)
    expect(textOf(notice?.reply as Reply)).toMatch(
      /side panel 18 x 15 in of 1\/2 none, was 2;.* side panel 18 x 15 in of 5\/8 2, none before/u,
    )
  })

  it('is called as the organiser says, and says so itself when the group is closed', async () => {
    await open()
    await room.reply('group join', BOB)
    expect((await room.reply('group set title=Sprig planters', ANN)).notice).toBeUndefined()
    const { notice: first } = await room.reply('group post', ANN)
    const { notice } = await room.reply('group set title=Spring boxes', ANN)
    expect(notice?.reply.answer).toMatch(/^Spring boxes\. Cut /u)
    const { notice: last } = await room.reply('group close sure=yes', ANN)
    expect(last?.reply).toMatchObject({ answer: expect.stringMatching(/^Spring boxes is closed\./u) })
    expect(last?.reply.buttons ?? []).toEqual([])
    expect(last?.since).toBe(first?.since)
    expect(last?.revision).toBeGreaterThan(notice?.revision ?? 0)
  })

  it('stays as it is once locked', async () => {
    await open()
    await room.reply('group join', ANN)
    await room.reply('group post', ANN)
    const locked = await room.reply('group lock', ANN)
    expect(textOf(locked.notice?.reply as Reply)).toContain('locked: this is what is cut')
    expect(await room.refusal('group join', BOB)).toMatch(/locked/u)
    expect(await room.refusal('group change height=16in', ANN)).toMatch(/locked/u)
    await room.reply('group lock off=yes', ANN)
    await room.reply('group join', BOB)
  })
})
