import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { openRoom, type Room, type Who } from '../room.ts'
import { textOf } from './asking.ts'

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
const START = 'project start 17in x 13in height=15in'
const HELD = /^invalid: only the organisers of this channel change its/u

describe('organisers', () => {
  it('hold nothing until somebody says so', async () => {
    const { figures, answer } = await room.reply('organisers', BOB)
    expect(answer).toBe('Everybody changes everything here')
    expect(figures).toEqual({ organisers: [], held: [] })
    await room.reply(START, BOB)
  })

  /** Every line that changes what is held, beside a line that only looks. */
  it.each([
    ['project', 'project change height=16in', 'project'],
    ['project', 'project undo', 'project history'],
    ['project', 'project forget sure=yes', 'sizing 17in x 13in height=15in'],
    ['stock', 'stock add 2x4x8', 'stock'],
    ['cutlist', 'cutlist add 3 @ 4ft', 'cutlist'],
    ['units', 'units metric for=channel', 'units'],
  ])('hold the %s: "%s" is refused, "%s" is not', async (what, changes, looks) => {
    await room.reply(START, BOB)
    const { figures } = await room.reply(`organisers hold ${what}`, ANN)
    expect(figures).toEqual({ organisers: ['u1'], held: [what] })
    const before = await room.reply('project', BOB)
    expect(await room.refusal(changes, BOB)).toMatch(HELD)
    expect(await room.reply('project', BOB)).toEqual(before)
    await room.reply(looks, BOB)
    await room.reply(changes, ANN)
    await room.reply(`organisers open ${what}`, ANN)
    expect((await room.reply('organisers')).figures).toMatchObject({ held: [] })
  })

  it('are those on the list, and whom the platform lets manage the channel', async () => {
    await room.reply('organisers hold all', ANN)
    const addBob = 'organisers add <@u2>'
    expect(await room.refusal(addBob, BOB)).toMatch(/^invalid: only an organiser/u)
    expect((await room.reply(addBob, ANN)).figures).toMatchObject({ organisers: ['u1', 'u2'] })
    await room.reply(START, BOB)
    expect(await room.refusal('project change height=16in', { user: 'u3' })).toMatch(HELD)
    await room.reply('project change height=16in', { user: 'u3', managesChannel: true })
  })

  it('cannot be made by a person whom the platform does not let manage the channel', async () => {
    const lines = ['organisers hold project', 'organisers add @u2', 'organisers open all']
    for (const line of lines)
      expect(await room.refusal(line, { user: 'u2', managesChannel: false })).toMatch(
        /^invalid: only an organiser/u,
      )
    const { figures } = await room.reply('organisers hold project', { user: 'u4', managesChannel: true })
    expect(figures).toEqual({ organisers: [], held: ['project'] })
  })

  it('do not lock everybody out', async () => {
    await room.reply('organisers hold project', ANN)
    expect(await room.refusal('organisers remove u1', ANN)).toMatch(/somebody must be left/u)
    await room.reply('organisers add u2', ANN)
    expect((await room.reply('organisers remove u1', BOB)).figures).toMatchObject({ organisers: ['u2'] })
    expect(await room.refusal('organisers remove u9', BOB)).toMatch(/^invalid: u9 is not on the list/u)
    expect(await room.refusal('organisers add the two of us', BOB)).toMatch(
      /as one person; write @ and a name$/u,
    )
  })

  it('leave a person’s own units alone', async () => {
    await room.reply('organisers hold all', ANN)
    expect((await room.reply('units metric', BOB)).figures).toMatchObject({ units: 'metric', for: 'me' })
  })
})

describe('what a person is called', () => {
  it('is the name they had at their last change, in lists and in the history', async () => {
    await room.reply(START, ANN)
    await room.reply('project change height=16in', BOB)
    expect(textOf(await room.reply('project history', { user: 'u3' }))).toMatch(
      /Bob: project change.*Ann: project start/su,
    )
    await room.reply('project change height=17in', { ...BOB, name: 'Bobby' })
    expect(textOf(await room.reply('project history'))).not.toMatch(/Bob:/u)
    await room.reply('organisers add u1', { user: 'u5' })
    expect(textOf(await room.reply('organisers'))).toContain('organisers: Ann')
  })

  it('goes when the person is forgotten', async () => {
    await room.reply(START, ANN)
    await room.store.forgetPerson({ platform: 'room', user: 'u1' })
    expect(textOf(await room.reply('project history'))).toMatch(/somebody: project start/u)
    expect((await room.store.read(room.key('person', 'u1'))).body).toBeUndefined()
  })

  it('is not kept of somebody who only asks', async () => {
    await room.reply('convert 24in', ANN)
    expect((await room.store.read(room.key('person', 'u1'))).body).toBeUndefined()
  })
})

describe('the language of a person', () => {
  it('says which units they see, until they or the question say otherwise', async () => {
    await room.reply(START, ANN)
    const inPlan = await room.ask('glue', { user: 'u6', locale: 'en-GB' })
    expect(inPlan.ok && inPlan.show.units).toBe('inch')
    const alone = { user: 'u8', channel: 'elsewhere', locale: 'en-GB' }
    const shown = async (who: Who) => {
      const response = await room.ask('help strips', who)
      return response.ok && response.show.units
    }
    expect(await shown(alone)).toBe('metric')
    expect(await shown({ ...alone, locale: 'en-US' })).toBe('inch')
    await room.reply('units inch', alone)
    expect(await shown(alone)).toBe('inch')
  })
})
