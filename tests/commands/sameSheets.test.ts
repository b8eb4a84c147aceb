import { afterAll, describe, expect, it } from 'vitest'
import type { Figure } from '../../src/bot/reply.ts'
import { openRoom, type Room } from '../room.ts'
import { verifiedSearch } from './sawdust.ts'

const search = verifiedSearch()
const room: Room = await openRoom({
  search,
  settings: { search: { seconds: 0.5, queue: 8 }, commandSeconds: 60 },
})
afterAll(async () => {
  await room.close()
  await search.close()
})

const PLANS = [
  '17in x 13in height=15in',
  '40in x 30in height=30in braces=all',
  '29in x 46in height=18in grooves=5 lid=inset bottom=cleats',
  '430mm x 330mm height=380mm sheet=12mm strip=12mm width=38mm clearance=10mm',
  '20in round height=18in corner=halved bottom=feet front=12in',
  // No 4x8 sheet gives its sides whole, so they are joined from pieces.
  '110in x 20in height=20in',
]
const STOCKS = [
  [],
  ['stock add 4ft x 4ft sheet=1/2 ply price=24', 'stock add 4ft x 8ft sheet=1/2 ply price=42'],
  ['stock add 22in x 40in sheet=1/2 ply count=2', 'stock add 4ft x 8ft sheet=1/2 ply price=42'],
]

type Row = Readonly<Record<string, Figure>>
const rowsOf = (value: Figure | undefined) => (value ?? []) as unknown as readonly Row[]
type Who = { readonly channel: string }

const ofOrder = async (who: Who) =>
  rowsOf((await room.reply('cutorder', who)).figures.steps)
    .filter(({ of }) => of === 'sheet')
    .map(({ kind, setting }) => [kind, setting])

const AT_SHEETS = /^(?:break down sheets|cut .* panel|cut lid|cut bottom|cut .*front)/u
const stepsOf = async (who: Who) => rowsOf((await room.reply('steps all', who)).figures.steps)
const ofSteps = async (who: Who) =>
  (await stepsOf(who))
    .filter(({ name }) => AT_SHEETS.test(String(name)))
    .flatMap(({ settings }) => rowsOf(settings).map(({ what, value }) => [what, value]))

describe('the sheets of a plan', () => {
  it.each(
    PLANS.flatMap((plan, at) => STOCKS.map((stock, index) => ({ plan, stock, which: `${at}-${index}` }))),
  )(
    '$plan from $stock are cut by the same settings in steps and in the cut order',
    async ({ plan, stock, which }) => {
      const who = { channel: which }
      await room.reply(`project start ${plan}`, who)
      for (const line of stock) await room.reply(line, who)
      const order = await ofOrder(who)
      expect(order.length).toBeGreaterThan(1)
      expect(await ofSteps(who)).toEqual(order)
    },
  )

  it('show the marks of the cut order, each with the parts that it finishes', async () => {
    const who = { channel: 'marks' }
    await room.reply('project start 431.7mm x 330.3mm height=380.4mm sheet=12.3mm strip=12mm', who)
    const { tables = [] } = await room.reply('cutorder', who)
    const marks = tables[0]?.rows.map(([, mark]) => mark)
    const { tables: steps = [] } = await room.reply('steps all', who)
    const firsts = steps[0]?.rows.filter(([, , name]) => /^(?:break down|cut )/u.test(String(name)))
    expect(firsts?.length).toBeGreaterThan(1)
    for (const [, mark] of firsts ?? []) expect(marks).toContain(mark)
  })

  it('are cut with what else the cut list of the channel holds, by the same settings', async () => {
    const who = { channel: 'more' }
    await room.reply('project start 17in x 13in height=15in', who)
    await room.reply('cutlist add A 4x 24in x 12in ply', who)
    const order = await ofOrder(who)
    expect(order.length).toBeGreaterThan(3)
    expect(await ofSteps(who)).toEqual(order)
    const cut = (await stepsOf(who)).filter(({ name }) => /^cut /u.test(String(name)))
    expect(cut.length).toBeGreaterThan(1)
    expect((await room.reply('steps', who)).notes?.join()).not.toContain('cutorder')
  })

  it('are left to the cut order where the cut list of the channel has other panels alone', async () => {
    const who = { channel: 'own list' }
    await room.reply('cutlist add 4x 24in x 12in ply', who)
    await room.reply('project start 17in x 13in height=15in', who)
    expect((await room.reply('steps', who)).notes).toContain(
      'the cut list of this channel has other panels: cut its sheets as "cutorder" says',
    )
  })

  it('are those of the plan where its parts were taken into the cut list', async () => {
    const who = { channel: 'taken' }
    await room.reply('project start 17in x 13in height=15in', who)
    const before = await ofSteps(who)
    await room.reply('cutlist plan', who)
    expect(await ofSteps(who)).toEqual(before)
    expect(await ofOrder(who)).toEqual(before)
  })

  it('say why where nothing can be laid out', async () => {
    const who = { channel: 'no board' }
    await room.reply('project start 17in x 13in height=15in board=2x4', who)
    await room.reply('stock add 2x6 12in count=3', who)
    await room.refusal('layout', who)
    expect((await room.reply('steps', who)).notes?.join('\n')).toMatch(
      /"layout" lays out no sheets for this plan yet \(.+\)/u,
    )
  })
})
