import { afterAll, describe, expect, it } from 'vitest'
import { openRoom } from '../room.ts'
import { cautionsOf, expectFigures, figuresOf, inch, textOf } from './asking.ts'

const room = await openRoom()
afterAll(() => room.close())

describe('grooves across a panel', () => {
  // n grooves make n + 1 boards; the fence is set to the nearest tooth, half a kerf short of the middle.
  it('are even over the whole panel', async () => {
    expectFigures(await figuresOf(room, 'grooves 24in count=3 thickness=1/2in'), {
      boardWidth: inch(6),
      centres: [inch(6), inch(12), inch(18)],
      fences: [inch(5, 15, 16), inch(11, 15, 16), inch(17, 15, 16)],
      depth: Math.round((12.7 / 3) * 1e6) / 1e6,
    })
  })

  it('are even over what shows between stiles', async () => {
    // 18 - 2 x 1 = 16, in four: middles at 1 + 4, 1 + 8, 1 + 12.
    expectFigures(await figuresOf(room, 'grooves 18in count=3 thickness=1/2in stiles=1in'), {
      boardWidth: inch(4),
      centres: [inch(5), inch(9), inch(13)],
      fences: [inch(4, 15, 16), inch(8, 15, 16), inch(12, 15, 16)],
    })
  })

  it('keep their pitch, with even margins', async () => {
    // (600 - 7 x 65) / 2 = 72.5; a fence at 72.5 - 1.2.
    const { centres, fences, boardWidth } = await figuresOf(
      room,
      'grooves 600mm pitch=65mm thickness=12mm kerf=2.4mm',
    )
    expect(centres).toEqual([72.5, 137.5, 202.5, 267.5, 332.5, 397.5, 462.5, 527.5])
    expect((fences as number[])[0]).toBeCloseTo(71.3, 9)
    expect(boardWidth).toBe(65)
  })

  it('take pitch and count together', async () => {
    // Three at 4 in apart leave (18 - 8) / 2 = 5 in at each side.
    expectFigures(await figuresOf(room, 'grooves 18in count=3 pitch=4in thickness=1/2in'), {
      centres: [inch(5), inch(9), inch(13)],
    })
  })

  // Recomputed values from questions people ask.
  it('recomputed: centred in 3/4 in, one pass of a 1/8 in blade: fence 3/8 - 1/16 = 5/16', async () => {
    expectFigures(await figuresOf(room, 'grooves 3/4in count=1 thickness=3/4in'), { fences: [inch(5 / 16)] })
  })

  it('recomputed: every 2 1/2 in on 23 7/8 in leaves margins of 1 15/16', async () => {
    // Nine grooves: 23 7/8 - 8 x 2 1/2 = 3 7/8, halved.
    const reply = await room.reply('grooves 23 7/8in pitch=2 1/2in thickness=15/32in')
    expectFigures(reply.figures, {
      centres: Array.from({ length: 9 }, (_, at) => inch(1 + at * 2.5, 15, 16)),
    })
    expect(textOf(reply)).toContain('the margins are 1 15/16 in, unlike the boards')
  })
})

describe('settings', () => {
  it('serve two grooves each, the panel turned end for end', async () => {
    const [table] = (await room.reply('grooves 23 7/8in count=5 thickness=15/32in')).tables ?? []
    expect(table?.rows.map(([, grooves]) => grooves)).toEqual(['1 and 5', '2 and 4', '3'])
    expect(table?.title).toContain('end for end')
  })

  it('of one groove ask for no turning', async () => {
    const reply = await room.reply('grooves 24in count=1 thickness=1/2in')
    expect(reply.answer).toMatch(/^1 groove /u)
    expect(reply.tables?.[0]?.title).not.toContain('turn')
  })

  it('come with the caution that a groove defeats the guard', async () => {
    expect(cautionsOf(await room.reply('grooves 24in count=2 thickness=3/4in'))).toEqual([
      'groove-guard',
      'manual',
    ])
  })
})

describe('without a thickness and without a plan', () => {
  // A third of 15/32 in is 5/32; a metric sheet of 12 mm gives 4 mm.
  it('take the usual sheet of the region, and say so', async () => {
    const reply = await room.reply('grooves 23 7/8in count=5')
    expectFigures(reply.figures, { depth: inch(0, 5, 32) })
    expect(textOf(reply)).toContain('1/2 ply taken as 15/32 in thick (measure yours: thickness=)')
    expect(textOf(await room.reply('grooves 24in count=5 thickness=1/2in'))).not.toContain('taken as')
  })
})

describe('with the channel’s plan', () => {
  it('go in both panels, between their stiles', async () => {
    const who = { channel: 'plan' }
    await room.reply('project start 17in x 13in height=15in grooves=3', who)
    const figures = await figuresOf(room, 'grooves', who)
    // Side: 18 in with 17/32 covered at each end, (18 - 34/32) / 4 = 4 15/64. End: 14 15/16 with 1 1/2, 11 15/16 / 4.
    const side = [1, 2, 3].map((at) => inch(17 / 32 + at * (4 + 15 / 64)))
    const end = [1, 2, 3].map((at) => inch(3 / 2 + at * (2 + 63 / 64)))
    expectFigures(figures, { centres: side, boardWidth: inch(4, 15, 64) })
    expect(figures.panels).toMatchObject([{ panel: 'side' }, { panel: 'end' }])
    expectFigures((figures.panels as never[])[1] as never, { centres: end, boardWidth: inch(2, 63, 64) })
    expect((await room.reply('grooves', who)).tables).toHaveLength(2)
  })

  it('take a count, a pitch, a panel or stiles from what is typed', async () => {
    const who = { channel: 'typed' }
    await room.reply('project start 17in x 13in height=15in grooves=3', who)
    expect((await figuresOf(room, 'grooves count=5', who)).centres).toHaveLength(5)
    expectFigures(await figuresOf(room, 'grooves stiles=0', who), { boardWidth: inch(18 / 4) })
    const typed = await room.reply('grooves 24in', who)
    expectFigures(typed.figures, { boardWidth: inch(6), depth: inch(0, 5, 32) })
    expect(textOf(typed)).toContain('15/32 in thick and 3 grooves, from this channel')
    expect(typed.figures).not.toHaveProperty('panels')
  })

  it('ask how many where the plan has none', async () => {
    const who = { channel: 'none' }
    await room.reply('project start 17in x 13in height=15in', who)
    expect(await room.refusal('grooves', who)).toMatch(/how many grooves/u)
  })
})

describe('what cannot be', () => {
  it.each([
    ['grooves', /how wide is the panel/u],
    ['grooves 18in thickness=1/2in', /how many grooves/u],
    ['grooves 18in count=100 thickness=1/2in kerf=1/4in', /70 fit at most/u],
    ['grooves 18in pitch=40in thickness=1/2in', /not one groove fits/u],
    ['grooves 18in count=3 thickness=1/2in stiles=10in', /leave nothing of the panel/u],
    ['grooves 24in count=3 thickness=1/2in kerf=0', /cannot read "0"/u],
    ['grooves 24in count=0 thickness=1/2in', /from 1 to 100/u],
  ])('%s is told in one sentence', async (line, sentence) => {
    expect(await room.refusal(line)).toMatch(sentence)
  })
})
