import { afterAll, describe, expect, it } from 'vitest'
import type { Figure, Reply } from '../../src/bot/reply.ts'
import { openRoom } from '../room.ts'
import { textOf } from './asking.ts'

const room = await openRoom()
afterAll(() => room.close())

const LONG = 'project start 100in x 13in height=15in'
type Row = Readonly<Record<string, Figure>>
const partsOf = ({ figures }: Reply) => figures.parts as unknown as readonly Row[]
const labels = ({ tables = [] }: Reply) => tables[0]?.rows.map(([label, count]) => `${count} ${label}`)

describe('a panel that no sheet gives whole', () => {
  it('is two pieces wherever parts are listed, which are the panel together', async () => {
    const who = { channel: 'usual' }
    const kept = await room.reply(LONG, who)
    expect(textOf(kept)).toMatch(
      /B is larger than any sheet there is \(4x8\): join each side panel from two pieces, Ba and Bb, .*stock add 4ft x 10ft sheet=/u,
    )
    const listed = await room.reply('cutlist', who)
    for (const reply of [kept, await room.reply('project parts', who), listed])
      expect(labels(reply)).toEqual(['2 A', '2 Ba', '2 Bb'])
    const whole = partsOf(kept).find(({ label }) => label === 'B')
    const pieces = partsOf(listed).filter(({ label }) => label === 'Ba' || label === 'Bb')
    expect(pieces.map(({ name }) => name)).toEqual(['piece of side panel', 'piece of side panel'])
    const along = pieces.reduce((sum, { length }) => sum + Number(length), 0)
    expect(along).toBeCloseTo(Number(whole?.length), 6)
    expect(pieces.every(({ width }) => width === whole?.width)).toBe(true)
    expect((await room.reply('project parts', who)).answer).toContain('22 parts')
  })

  it('is laid out, bought and sawn as its pieces, and the steps say where it is joined', async () => {
    const who = { channel: 'usual' }
    const { figures } = await room.reply('layout', who)
    const sheets = figures.sheetLayouts as unknown as readonly {
      stock: string
      placements: readonly { part: string }[]
    }[]
    expect(new Set(sheets.map(({ stock }) => stock))).toEqual(new Set(['4x8']))
    const laid = sheets.flatMap(({ placements }) => placements.map(({ part }) => part))
    expect(new Set(laid)).toEqual(new Set(['A', 'Ba', 'Bb']))
    const bought = (await room.reply('shopping', who)).figures.items as unknown as readonly Row[]
    expect(bought[0]).toMatchObject({ item: '1/2 in plywood 4x8', need: figures.sheets })
    expect((await room.reply('cutorder', who)).figures.cuts).toBeGreaterThan(4)
    expect((await room.reply('steps', who)).notes?.join()).toContain('from two pieces, Ba and Bb')
  })

  it('is whole once the stock of the channel has a sheet that gives it, and not before', async () => {
    const who = { channel: 'ordered' }
    await room.reply(LONG, who)
    // A larger sheet of another thickness is no help.
    await room.reply('stock add 4ft x 12ft sheet=3/4 ply', who)
    expect(labels(await room.reply('project parts', who))).toContain('2 Ba')
    await room.reply('stock add 4ft x 10ft sheet=1/2 ply', who)
    const reply = await room.reply('project', who)
    expect(labels(reply)).toEqual(['2 A', '2 B'])
    expect(textOf(reply)).not.toContain('larger than any sheet')
    expect((await room.reply('layout', who)).answer).toMatch(/^Take 1 sheet \(S2\)/u)
  })

  it('is told by the sheets of the channel, their trim taken off, though a larger one is sold', async () => {
    const who = { channel: 'small' }
    await room.reply('project start 46in x 13in height=15in', who)
    expect(labels(await room.reply('project parts', who))).toEqual(['2 A', '2 B'])
    await room.reply('stock add 2ft x 4ft sheet=1/2 ply', who)
    expect(labels(await room.reply('project parts', who))).toEqual(['2 A', '2 B'])
    await room.reply('stock set sheettrim=2in', who)
    const reply = await room.reply('project', who)
    expect(labels(reply)).toContain('2 Ba')
    expect(textOf(reply)).toContain('B is larger than any sheet there is (S1)')
    expect((await room.reply('layout', who)).answer).toContain('S1')
  })

  it('is said to take more than two pieces where two will not do', async () => {
    const who = { channel: 'huge' }
    const reply = await room.reply('project start 20ft x 13in height=15in', who)
    expect(textOf(reply)).toContain('and than two of them: join each side panel from more pieces')
    expect(labels(reply)).toEqual(['2 A', '2 B'])
  })
})

describe('a strip longer than any board', () => {
  it('is two pieces at a whole mark, which are the strip together and come out of boards', async () => {
    const who = { channel: 'strips' }
    const kept = await room.reply('project start 26ft x 3ft height=2ft', who)
    expect(textOf(kept)).toMatch(
      /D is longer than any board sold here \(288 in\): .* Da and Db, 209 in from one end/u,
    )
    await room.reply('stock add 4ft x 40ft sheet=15/32in', who)
    const pieces = partsOf(await room.reply('cutlist', who)).filter(({ label }) =>
      /^D[ab]$/u.test(String(label)),
    )
    const whole = partsOf(kept).find(({ label }) => label === 'D')
    expect(pieces.map(({ length }) => Number(length))[0]).toBeCloseTo(209 * 25.4, 6)
    expect(pieces.reduce((sum, { length }) => sum + Number(length), 0)).toBeCloseTo(Number(whole?.length), 6)
    expect((await room.reply('layout', who)).answer).toContain('board')
  })

  it('is left whole, with what to do, where two pieces do not reach', async () => {
    const who = { channel: 'far' }
    const kept = await room.reply('project start 60ft x 3ft height=2ft', who)
    expect(textOf(kept)).toMatch(
      /D is longer than any board sold here .*from shorter ones, every joint on a batten/u,
    )
    expect(partsOf(await room.reply('cutlist', who)).map(({ label }) => label)).toContain('D')
  })
})
