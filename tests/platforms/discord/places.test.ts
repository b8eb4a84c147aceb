import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import type { Request } from '../../../src/bot/request.ts'
import { createSearch } from '../../../src/search/pool.ts'
import { openRoom, type Room } from '../../room.ts'
import { type Bot, openBot, wordsOf } from './bot.ts'
import { payload } from './payload.ts'
import { slash } from './slash.ts'
import type { Json } from './wire.ts'

const GUILD = '1200000000000000001'
const CHANNEL = '1300000000000000001'
const MANAGE_CHANNELS = 1n << 4n
const ADMINISTRATOR = 1n << 3n

const search = createSearch({ threads: 1, queue: 8 })
const asked: Request[] = []
let room: Room
let bot: Bot
beforeAll(async () => {
  room = await openRoom({ search })
  const answer = (request: Request) => {
    asked.push(request)
    return room.answer(request)
  }
  bot = await openBot({ room, parts: { answer } })
})
beforeEach(() => void asked.splice(0))
afterAll(async () => {
  await bot.close()
  await room.close()
  await search.close()
})

const ask = (event: Json, change?: Json) => bot.loopback.answerTo(bot.loopback.interact(event, change))

describe('a command in a server', () => {
  it('is asked by a person, in a channel, in a language', async () => {
    await ask(payload('command'))
    expect(asked).toEqual([
      {
        place: { platform: 'discord', workspace: GUILD, channel: CHANNEL },
        user: '1400000000000000001',
        name: 'Maria',
        locale: 'en-GB',
        managesChannel: true,
        at: expect.any(Date),
        invocation: { command: 'strips', options: { board: '2x6', rip: '1/2in' } },
      },
    ])
  })

  it('has its verb', async () => {
    await ask(payload('verb'))
    expect(asked[0]?.invocation).toEqual({
      command: 'project',
      verb: 'start',
      options: { object: '17in x 13in', height: '15in' },
    })
  })

  it('is by somebody who manages the channel, or not, as Discord says', async () => {
    const event = payload('command')
    const member = event.member as Json
    const all = BigInt(String(member.permissions))
    await ask({
      ...event,
      member: { ...member, permissions: String(all & ~MANAGE_CHANNELS & ~ADMINISTRATOR) },
    })
    await ask({ ...event, member: { ...member, permissions: String(MANAGE_CHANNELS) } })
    expect(asked.map(({ managesChannel }) => managesChannel)).toEqual([false, true])
  })

  it('names people by their id, as Discord writes a mention', async () => {
    const person = '1400000000000000055'
    const said = await ask(slash(`organisers add <@${person}>`))
    expect(asked[0]?.invocation).toMatchObject({ options: { person: `<@${person}>` } })
    expect(wordsOf(said)).toContain(person)
    expect(wordsOf(said)).not.toMatch(/(?<!\\)<@/u)
    await ask(slash(`organisers remove <@!${person}>`))
  })

  it('is by whom the server calls by another name', async () => {
    const event = payload('command')
    await ask({ ...event, member: { ...(event.member as Json), nick: 'Maria from the shed' } })
    expect(asked[0]?.name).toBe('Maria from the shed')
  })
})

describe('a thread', () => {
  it('shares the project of its channel', async () => {
    await ask(slash('project start 17in x 13in height=15in'))
    const inThread = await ask(payload('commandInThread'))
    expect(asked.map(({ place }) => place.channel)).toEqual([CHANNEL, CHANNEL])
    expect(wordsOf(inThread)).toContain('Cut 2 end panels')
  })

  it('that the client has never heard of does too', async () => {
    const { channel, ...event } = payload('commandInThread')
    const unknown = { ...(channel as Json), id: '1300000000000000055' }
    await ask({ ...event, channel: unknown, channel_id: unknown.id, guild_id: '1200000000000000055' })
    expect(asked[0]?.place).toMatchObject({ workspace: '1200000000000000055', channel: CHANNEL })
  })

  it('is not a channel under a heading', async () => {
    await ask(payload('command'))
    expect(asked[0]?.place.channel).toBe(CHANNEL)
  })
})

describe('a direct message', () => {
  it('is answered where only two see it, so neither hidden nor to be shown to all', async () => {
    const sent = bot.loopback.interact(payload('commandDirect'))
    const call = await bot.loopback.answerTo(sent)
    expect(wordsOf(call)).toContain('606.425 mm')
    expect(wordsOf(call)).not.toContain('Show to all')
    const callback = bot.loopback.calls.find(({ path }) => path.includes(sent.token))
    expect(callback?.body).toEqual({ type: 5, data: { flags: 0 } })
    expect(asked[0]?.place).toEqual({
      platform: 'discord',
      workspace: 'direct',
      channel: '1300000000000000003',
    })
    expect(asked[0]).not.toHaveProperty('managesChannel')
  })
})

describe('a person who takes the bot along', () => {
  it('is answered in a server that does not have it', async () => {
    const call = await ask(payload('commandOfUser'))
    expect(wordsOf(call)).toContain('606.425 mm')
    expect(asked[0]?.place.workspace).toBe('1200000000000000077')
    expect(bot.loopback.faults).toEqual([])
  })
})

describe('what is being typed', () => {
  it('is completed', async () => {
    const call = await ask(payload('typing'))
    expect(call.body).toMatchObject({ type: 8 })
    const { choices } = (call.body as Json).data as { choices: { name: string; value: string }[] }
    expect(choices).toContainEqual({ name: '2x6', value: '2x6' })
    expect(choices.length).toBeLessThanOrEqual(25)
  })

  it('of a verb is completed from what the channel has', async () => {
    await ask(slash('stock add 22in x 40in sheet=1/2 ply label=OFF1'))
    const typed = slash('stock remove label=OF')
    const data = typed.data as { options: { options: Json[] }[] }
    const focused = data.options.map((verb) => ({
      ...verb,
      options: verb.options.map((each) => ({ ...each, focused: true })),
    }))
    const call = await ask({ ...typed, type: 4, data: { ...data, options: focused } })
    expect(call.body).toEqual({ type: 8, data: { choices: [{ name: 'OFF1', value: 'OFF1' }] } })
  })

  it('is not completed where nothing can be looked up', async () => {
    const broken = await openBot({
      room,
      parts: { complete: () => Promise.reject(new Error('the store is away')) },
    })
    const call = await broken.loopback.answerTo(broken.loopback.interact(payload('typing')))
    expect(call.body).toEqual({ type: 8, data: { choices: [] } })
    await broken.close()
  })

  it('is not offered what Discord would not take', async () => {
    const long = ['x'.repeat(101), '', ...Array.from({ length: 40 }, (_, index) => `value ${index}`)]
    const offering = await openBot({ room, parts: { complete: async () => long } })
    const call = await offering.loopback.answerTo(offering.loopback.interact(payload('typing')))
    expect(((call.body as Json).data as { choices: unknown[] }).choices).toHaveLength(25)
    expect(offering.loopback.faults).toEqual([])
    await offering.close()
  })
})
