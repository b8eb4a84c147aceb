import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { openRoom, type Room } from '../room.ts'
import { expectFigures, figuresOf, inch, textOf } from './asking.ts'

const rooms: Room[] = []
let room: Room
beforeEach(async () => {
  room = await openRoom()
  rooms.push(room)
})
afterAll(async () => {
  for (const each of rooms) await each.close()
})

describe('units', () => {
  it('are nobody’s until somebody says', async () => {
    const reply = await room.reply('units')
    expect(reply.answer).toBe('Now for you: units not settled, tape 1/16 in, kerf 1/8 in, region US')
    expect(reply.figures).toEqual({ units: null, tape: 16, kerf: inch(1 / 8), region: 'US', for: 'me' })
    expect(textOf(reply)).toContain('a bare number is asked about')
  })

  it('settle what a bare number means', async () => {
    expect(await room.refusal('convert 24')).toMatch(/^ambiguous/u)
    await room.reply('units inch')
    expectFigures(await figuresOf(room, 'convert 24'), { millimetres: inch(24) })
    await room.reply('units metric')
    expectFigures(await figuresOf(room, 'convert 24'), { millimetres: 24 })
  })

  it('of a person go before the channel’s', async () => {
    await room.reply('units metric for the channel', { user: 'ann' })
    expectFigures(await figuresOf(room, 'convert 24', { user: 'bob' }), { millimetres: 24 })
    await room.reply('units inch', { user: 'bob' })
    expectFigures(await figuresOf(room, 'convert 24', { user: 'bob' }), { millimetres: inch(24) })
    expectFigures(await figuresOf(room, 'convert 24', { user: 'ann' }), { millimetres: 24 })
    expect((await room.ask('convert 24', { user: 'ann', channel: 'other' })).ok).toBe(false)
  })

  it('can be taken back, with an option or in a word', async () => {
    await room.reply('units inch kerf=3/32in region=UK')
    expect(await figuresOf(room, 'units reset')).toMatchObject({
      units: null,
      region: 'US',
      kerf: inch(1 / 8),
    })
    await room.reply('units metric for=channel')
    expect((await figuresOf(room, 'units reset=yes for=channel')).units).toBeNull()
    await room.reply('units metric for=channel')
    expect((await figuresOf(room, 'units reset for the channel')).units).toBeNull()
  })

  it('stay as they are where nothing is asked', async () => {
    await room.reply('units inch tape=1/32')
    expect(await figuresOf(room, 'units')).toMatchObject({ units: 'inch', tape: 32 })
    expect((await figuresOf(room, 'units reset=no')).tape).toBe(32)
  })
})

describe('the tape', () => {
  // 12.3 mm is 0.48425 in: between 15/32 and 1/2, and as good as 31/64.
  it.each([
    ['1/16', '1/2 in (+0.016)'],
    ['1/32', '15/32 in (-0.016)'],
    ['1/64', '31/64 in'],
  ])('of %s shows 12.3 mm to its own marks', async (tape, shown) => {
    await room.reply(`units inch tape=${tape}`)
    expect((await room.reply('convert 12.3mm to=inch')).answer).toBe(shown)
  })

  it('of 1/64 shows parts closer than one of 1/16', async () => {
    // 15.22 in is 15 3/16 and 0.0325: a sixty-fourth further is 15 7/32 less 1/64.
    const cut = async () => (await room.reply('sizing 17in x 13in height=15.22in')).answer
    await room.reply('units inch')
    expect(await cut()).toContain('18 x 15 3/16 in')
    await room.reply('units tape=1/64')
    expect(await cut()).toContain('18 x 15 7/32 in')
  })
})

describe('the kerf', () => {
  it.each(['kerf=3/32in', 'kerf=3/32'])('is counted by strips: %s', async (kerf) => {
    await room.reply(`units ${kerf}`)
    // 9 x 1/2 + 8 x 3/32 = 5 1/4 of 5 1/2
    expectFigures(await figuresOf(room, 'strips 2x6 rip=1/2in'), { perBoard: 9, spare: inch(1 / 4) })
  })

  it.each([
    ['units kerf=5in', /no saw blade takes 5 in; .*kerf=1\/8in/u],
    ['units kerf=0', /cannot read "0"/u],
  ])('of %s is refused', async (line, sentence) => {
    expect(await room.refusal(line)).toMatch(sentence)
  })
})

describe('the region', () => {
  it.each([
    // A 2x4 of the UK is sawn 47 x 100, the kerf 3 mm: 7 x 12 + 6 x 3 = 102 is too much, 6 x 12 + 5 x 3 = 87.
    ['UK', '4x2', 100],
    ['AU', '90x45', 90],
    ['EU', '38x100', 100],
  ])('%s has its own boards, and a kerf in mm', async (region, board, width) => {
    const set = await room.reply(`units region=${region}`)
    expect(set.answer).toContain(`kerf 3 mm, region ${region}`)
    const strips = Math.floor((width + 3) / (12 + 3))
    expectFigures(await figuresOf(room, `strips ${board} rip=12mm`), { width, perBoard: strips })
  })

  it('may be typed in small letters, and there are four', async () => {
    expect((await figuresOf(room, 'units region=uk')).region).toBe('UK')
    expect(await room.refusal('units region=Mars')).toMatch(/us, uk, au or eu/u)
  })
})

describe('what cannot be', () => {
  it.each([
    ['units furlongs', /write inch or metric/u],
    ['units inch metric', /write inch or metric/u],
    ['units tape=1/8', /1\/16, 1\/32 or 1\/64/u],
    ['units for=everybody', /me or channel/u],
  ])('%s is told in one sentence', async (line, sentence) => {
    expect(await room.refusal(line)).toMatch(sentence)
  })
})
