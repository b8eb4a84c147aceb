import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Asker, asker } from './asker.ts'
import { inch, textOf } from './asking.ts'

let bench: Asker
beforeAll(async () => {
  bench = await asker()
})
afterAll(() => bench.room.close())

const BOX = 'sizing 17in x 13in height=15in clearance=1in sheet=1/2in'

/** Name, count and length in inches of every part. */
const partsOf = async (line: string): Promise<readonly string[]> => {
  const { parts } = await bench.figures(line)
  return (parts as readonly { name: string; count: number; length: number }[]).map(
    ({ name, count, length }) => `${count} ${name} ${Math.round((length / 25.4) * 1e6) / 1e6}`,
  )
}

describe('sizing with extras', () => {
  // On paper: inside 19 x 15, strips 1/2 x 1 1/2, sheet 1/2, gap 1/16: the lid 18 7/8 x 14 7/8, end strips 15 - 2 x 1/2.
  it('lists an inset lid and a bottom on cleats', async () => {
    const parts = await partsOf(`${BOX} lid=inset bottom=cleats`)
    expect(parts).toEqual(
      expect.arrayContaining([
        '1 lid panel 18.875',
        '1 bottom panel 18.875',
        '2 side ledger 19',
        '2 end ledger 14',
        '2 side cleat 19',
        '2 end cleat 14',
      ]),
    )
  })

  // Outside 21 x 17 and, on each side, 1/16 gap and 1/2 rim.
  it('lists an overlapping lid with its rim and handle', async () => {
    expect(await partsOf(`${BOX} lid=overlapping handle=strip`)).toEqual(
      expect.arrayContaining([
        '1 cover panel 22.125',
        '2 lid rim 22.125',
        '2 lid rim end 17.125',
        '1 handle 6',
      ]),
    )
  })

  it('gives a halved corner its slots, as wide as the sheet and the play', async () => {
    const reply = await bench.reply(`${BOX} corner=halved fit=1/32in`)
    expect(reply.figures.slotWidth).toBeCloseTo(inch(17 / 32), 6)
    expect(textOf(reply)).toContain('17/32 in wide for 1/2 in sheet: ends from the top, sides from below')
    const usual = await bench.number(`${BOX} corner=halved`, 'slotWidth')
    // Paint on two faces, a year and a push fit: a sliding fit of 0.3 to 0.6 mm.
    expect(usual - inch(1 / 2)).toBeGreaterThan(0.3)
    expect(usual - inch(1 / 2)).toBeLessThan(0.6)
  })

  it('counts drain holes and says how far apart they come', async () => {
    const { bottom } = await bench.figures(`${BOX} bottom=cleats drain=1/2in spacing=6in`)
    // Between the cleats 18 x 14 in: three spaces of 6 in along, three of 4 2/3 across.
    expect(bottom).toMatchObject({ drainHoles: 9 })
    expect((bottom as { drainAlong: number }).drainAlong).toBeCloseTo(inch(6), 5)
    expect((bottom as { drainAcross: number }).drainAcross).toBeCloseTo(inch(14 / 3), 5)
  })

  it('cuts the cord notch in one panel above the bottom rail', async () => {
    const reply = await bench.reply(`${BOX} cord=2in x 1in cordin=end`)
    expect(reply.figures.cord).toMatchObject({ face: 'end', parts: 1, along: inch(2), across: inch(1) })
    expect(textOf(reply)).toContain('cord notch in one end panel on the bottom rail')
    expect(reply.cautions?.[0]?.id).toBe('cord')
  })

  it('lists a lower front of its own', async () => {
    expect(await partsOf(`${BOX} front=10in front-brace=yes`)).toEqual(
      expect.arrayContaining([
        '1 side panel 19',
        '1 front panel 19',
        '2 corner stile 11.9375',
        '2 front stile 6.9375',
      ]),
    )
  })

  it('is as before where nothing more is asked', async () => {
    const bare = await bench.figures(BOX)
    const none = await bench.figures(`${BOX} lid=none bottom=none front=15in cordin=none handle=none`)
    expect(none).toEqual(bare)
    for (const name of ['lid', 'bottom', 'cord', 'hardware', 'slotWidth', 'frontHeight'])
      expect(bare).not.toHaveProperty(name)
  })

  it.each([
    ['front=16in', /front= takes 15 in at most/u],
    ['front=10in lid=inset', /a lid lies level: it takes front=15in/u],
    ['lid=overlapping handle=notch', /use handle=strip, or lid=inset/u],
    ['bottom=cleats drain=5in', /at most \(drain=\)/u],
    ['cord=30in x 1in', /wide and .* high at most \(cord=\)/u],
    ['cordin=end', /how large is the plug\? Add cord=2in x 1 1\/2in/u],
    ['open=top lid=inset', /leave the lid out \(lid=none\)/u],
    ['cord=2in', /cord notch has a width and a height/u],
  ])('%s is told in one sentence what would do', async (options, sentence) => {
    expect(await bench.room.refusal(`${BOX} ${options}`)).toMatch(sentence)
  })
})

const WHOLE = [
  'corner=halved lid=overlapping handle=strip bottom=feet drain=1/2in cord=2in x 1in',
  'corner=bracketed lid=inset handle=notch bottom=cleats drain=1/2in grooves=3 braces=ends',
  'corner=cleated front=10in front-grooves=2 bottom=cleats',
  'corner=captured front=9in front-brace=yes bottom=feet cord=2in x 1in cordin=front',
]

describe('a kept plan with extras', () => {
  it.each(WHOLE)('%s is known to every answer that counts from the plan', async (options) => {
    const { room, reply } = await asker(`project start 17in x 13in height=15in clearance=1in ${options}`)
    const lines = [
      'cutlist',
      'layout',
      'fasteners',
      'glue',
      'finish',
      'weight',
      'diagonal',
      'strips',
      'boardfeet',
    ]
    for (const line of [...lines, 'square', 'grooves count=2', 'project parts', 'project'])
      expect((await reply(line)).answer.length, line).toBeGreaterThan(10)
    const parts = (await reply('project')).figures.parts as readonly { label: string; count: number }[]
    const weighed = (await reply('weight')).figures.parts as readonly { label: string; count: number }[]
    expect(weighed.map(({ label, count }) => [label, count])).toEqual(
      parts.map(({ label, count }) => [label, count]),
    )
    expect(room.logged).toEqual([])
    await room.close()
  })

  it('says which panels are cut out otherwise after a change, and goes back', async () => {
    const { room, reply } = await asker('project start 17in x 13in height=15in')
    const before = (await reply('project')).figures
    const changed = await reply('project change cord=2in x 1in')
    expect(textOf(changed)).toContain('B cut out otherwise')
    expect((await reply('project change cordin=none')).figures.parts).toEqual(before.parts)
    await room.close()
  })
})
