import { afterAll, describe, expect, it } from 'vitest'
import { openRoom } from '../room.ts'
import { textOf } from './asking.ts'

const room = await openRoom()
afterAll(() => room.close())

const ALONE = { channel: 'alone' }
const WITH_PLAN = { channel: 'plan' }
await room.reply('project start 17in x 13in height=15in', WITH_PLAN)

const idle = async (line: string, who: typeof ALONE) =>
  [...textOf(await room.reply(line, who)).matchAll(/^([\w-]+)= is for .*: there is none here/gmu)].map(
    ([, name]) => name,
  )

/** Each line with an option, the room it is asked in, and whether that option goes for nothing there. */
const LINES: readonly (readonly [
  line: string,
  option: string,
  who: typeof ALONE,
  goesForNothing: boolean,
])[] = [
  ['fasteners', 'load=20kg', WITH_PLAN, true],
  ['fasteners', 'joints=3', WITH_PLAN, true],
  ['fasteners', 'glued=yes', WITH_PLAN, true],
  ['fasteners', 'into=end', WITH_PLAN, true],
  ['fasteners', 'length=40in', WITH_PLAN, true],
  ['fasteners', 'width=1/2in', WITH_PLAN, true],
  ['fasteners', 'wood=red oak', WITH_PLAN, false],
  ['fasteners 3/4in receiver=1 1/2in', 'load=200kg', WITH_PLAN, false],
  ['fasteners 3/4in receiver=1 1/2in', 'joints=3', WITH_PLAN, false],
  ['fasteners 3/4in receiver=3in', 'wood=red oak', ALONE, false],
  ['fasteners 3/4in receiver=3in into=edge', 'wood=red oak', ALONE, true],
  ['fasteners 3/4in receiver=3in into=end kind=brad', 'wood=red oak', ALONE, true],
  ['fasteners 3/4in receiver=3in into=end kind=screw', 'wood=red oak', ALONE, false],
  ['glue', 'count=3', WITH_PLAN, true],
  ['glue', 'wood=red oak', WITH_PLAN, false],
  ['glue 2 sq ft', 'count=3', ALONE, false],
  ['glue 2 sq ft', 'wood=red oak', ALONE, true],
  ['glue 2 sq ft joint=24in x 1in', 'count=3', ALONE, true],
  ['glue joint=24in x 1in', 'count=3', ALONE, false],
  ['moisture 65% material=mdf', 'wood=red oak', ALONE, true],
  ['moisture 65% material=plywood', 'cut=quarter', ALONE, true],
  ['moisture 65% material=mdf', 'temperature=90F', ALONE, true],
  ['moisture 65% material=plywood', 'temperature=90F', ALONE, false],
  ['moisture 65% measured=9%', 'before=30%', ALONE, true],
  ['moisture 65%', 'before=30%', ALONE, false],
  ['moisture 65%', 'cut=quarter', ALONE, false],
  ['fit driest=30% wettest=75%', 'where=outdoors', ALONE, true],
  ['fit driest=30%', 'where=outdoors', ALONE, false],
  ['fit', 'temperature=100F', ALONE, true],
  ['fit wettest=75%', 'temperature=100F', ALONE, false],
  ['weight', 'count=3', WITH_PLAN, true],
  ['weight', 'length=9ft', WITH_PLAN, true],
  ['weight', 'depth=6in', WITH_PLAN, true],
  ['weight soil=garden', 'depth=6in', WITH_PLAN, false],
  ['weight', 'moisture=20%', WITH_PLAN, false],
  ['weight 4ft x 8ft sheet=3/4 ply', 'moisture=20%', WITH_PLAN, true],
  ['weight 4ft x 8ft sheet=3/4 ply', 'soil=garden', WITH_PLAN, true],
  ['weight 4ft x 8ft sheet=3/4 ply', 'count=3', WITH_PLAN, false],
  ['weight board=2x4x8', 'size=4ft x 8ft', ALONE, true],
  ['weight board=2x4x8', 'sheet=3/4 ply', ALONE, true],
  ['weight board=2x4x8', 'length=9ft', ALONE, false],
  ['square 24in x 18in', 'panel=end', WITH_PLAN, true],
  ['square', 'panel=front', WITH_PLAN, true],
  ['square', 'panel=end', WITH_PLAN, false],
  ['boardfeet', 'count=3', WITH_PLAN, true],
  ['boardfeet', 'length=9ft', WITH_PLAN, true],
  ['boardfeet 2x4x14', 'count=3', WITH_PLAN, false],
  ['finish 40 sq ft', 'faces=outside', WITH_PLAN, true],
  ['finish', 'faces=outside', WITH_PLAN, false],
]

describe('an option that goes for nothing beside the others', () => {
  it.each(LINES)('%s, %s', async (line, option, who, goesForNothing) => {
    const [name] = option.split('=')
    expect(await idle(`${line} ${option}`, who)).toEqual(goesForNothing ? [name] : [])
    // It is said of what changes no number, and of nothing else.
    const figuresOf = async (asked: string) => JSON.stringify((await room.reply(asked, who)).figures)
    expect((await figuresOf(`${line} ${option}`)) === (await figuresOf(line))).toBe(goesForNothing)
  })

  it('is not said of what turns off what is not there', async () => {
    expect(await idle('fasteners glued=no', WITH_PLAN)).toEqual([])
  })

  it('leaves the panel out of the answer that is not there', async () => {
    expect((await room.reply('square panel=front', WITH_PLAN)).answer).toContain(': side panels of')
  })

  it('leaves the air out of the answer where it does nothing', async () => {
    expect(textOf(await room.reply('moisture 65% material=mdf', ALONE))).not.toContain('air at')
    expect(textOf(await room.reply('moisture 65% material=plywood', ALONE))).toContain('air at')
  })
})
