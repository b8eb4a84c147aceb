import { afterAll, afterEach, describe, expect, it } from 'vitest'
import type { Request, Response } from '../../../src/bot/request.ts'
import { createSearch } from '../../../src/search/pool.ts'
import { openRoom } from '../../room.ts'
import { type Bot, type BotTerms, openBot, wordsOf } from './bot.ts'
import { payload } from './payload.ts'
import { type Call, type Json, snowflake } from './wire.ts'

const CHANNEL = '1300000000000000001'
const BOT_ID = '1100000000000000001'
const USER = '1400000000000000001'

const search = createSearch({ threads: 1, queue: 8 })
const opened: { bot: Bot; close: () => Promise<void> }[] = []
afterEach(async () => {
  for (const { close } of opened.splice(0)) await close()
})
afterAll(() => search.close())

async function open(terms: BotTerms = {}) {
  const room = await openRoom({ search })
  const asked: Request[] = []
  const answer = (request: Request) => {
    asked.push(request)
    return (terms.parts?.answer ?? room.answer)(request)
  }
  const bot = await openBot({ ...terms, room, parts: { ...terms.parts, answer } })
  opened.push({
    bot,
    close: async () => {
      await bot.close()
      await room.close()
    },
  })
  const say = (change: Json, name = 'mention') => {
    const event = { ...payload(name), id: snowflake(), ...change }
    bot.loopback.gateway.dispatch('MESSAGE_CREATE', event, 0)
    return event
  }
  const posted = (where = CHANNEL, matches: (call: Call) => boolean = () => true) =>
    bot.loopback.call(
      (call) => call.method === 'POST' && call.path === `/channels/${where}/messages` && matches(call),
    )
  return { bot, asked, say, posted }
}

describe('a message that names the bot', () => {
  it('is a typed line, answered under it, and calls nobody', async () => {
    const { asked, say, posted } = await open()
    const event = say({})
    const call = await posted()
    expect(asked[0]).toMatchObject({
      place: { platform: 'discord', workspace: '1200000000000000001', channel: CHANNEL },
      user: USER,
      name: 'Maria',
      invocation: { line: 'strips 2x6 rip=1/2in' },
      managesChannel: false,
    })
    expect(wordsOf(call)).toContain('**9 strips of 1/2 in from each 2x6')
    expect(wordsOf(call)).not.toContain('Show to all')
    expect(call.body).toMatchObject({
      message_reference: { message_id: event.id, fail_if_not_exists: false },
      allowed_mentions: { parse: [], replied_user: false },
      nonce: event.id,
      enforce_nonce: true,
    })
  })

  it('in a thread belongs to the channel of the thread', async () => {
    const { bot, asked, say, posted } = await open()
    const thread = { ...(payload('commandInThread').channel as Json) }
    bot.loopback.gateway.dispatch('THREAD_CREATE', thread, 0)
    say({ channel_id: thread.id })
    await posted(String(thread.id))
    expect(asked[0]?.place.channel).toBe(CHANNEL)
  })

  it('without a question is shown what can be asked', async () => {
    const { asked, say, posted } = await open()
    say({ content: `<@!${BOT_ID}>` })
    expect(wordsOf(await posted())).toContain('commands. Start with')
    expect(asked[0]?.invocation).toEqual({ line: 'help' })
  })

  it('delivered twice is answered once', async () => {
    const { bot, asked, say, posted } = await open()
    const event = say({})
    bot.loopback.gateway.dispatch('MESSAGE_CREATE', event, 0)
    await posted()
    say({ content: `<@${BOT_ID}> convert 1in` })
    await posted(CHANNEL, (call) => wordsOf(call).includes('25.4 mm'))
    expect(asked).toHaveLength(2)
  })

  it('never lets what was typed call anybody or look like something else', async () => {
    const { bot, say, posted } = await open()
    say({ content: `<@${BOT_ID}> *@everyone* <@${USER}> [free](https://example.com)` })
    const words = wordsOf(await posted())
    expect(words).not.toMatch(/@everyone|(?<!\\)<@|(?<!\\)\[/u)
    expect(bot.loopback.faults).toEqual([])
  })
})

describe('a message that is not for the bot', () => {
  it.each([
    ['names nobody', { content: 'strips 2x6 rip=1/2in', mentions: [] }],
    ['is by a bot', { author: { id: '1', username: 'other', discriminator: '0', avatar: null, bot: true } }],
    ['is a notice of Discord', { type: 7 }],
  ])('and %s is left alone', async (_, change) => {
    const { bot, asked, say, posted } = await open()
    say(change)
    say({ content: `<@${BOT_ID}> convert 1in` })
    await posted()
    expect(asked.map(({ invocation }) => invocation)).toEqual([{ line: 'convert 1in' }])
    expect(bot.loopback.faults).toEqual([])
  })
})

describe('a direct message', () => {
  it('needs no name in it', async () => {
    const { asked, say, posted } = await open()
    say({}, 'messageDirect')
    expect(wordsOf(await posted('1300000000000000003'))).toContain('606.425 mm')
    expect(asked[0]?.place).toEqual({
      platform: 'discord',
      workspace: 'direct',
      channel: '1300000000000000003',
    })
  })
})

describe('a missing permission', () => {
  it('to write is explained to the person', async () => {
    const { say, posted } = await open({ forbidden: { [CHANNEL]: 'all' } })
    say({})
    const told = await posted(`${USER.slice(0, -1)}5`)
    expect(wordsOf(told)).toContain('may not write there')
    expect(wordsOf(told)).toContain('"Send Messages"')
  })

  it('to attach files leaves them out and says so', async () => {
    const answer = async (): Promise<Response> => {
      const room = await openRoom({ search })
      const response = await room.ask('convert 1in')
      await room.close()
      if (!response.ok) throw new Error(response.error)
      const pictures = [{ name: 'plan', alt: 'Two panels', scene: { width: 1, height: 1, shapes: [] } }]
      return { ...response, reply: { ...response.reply, pictures } }
    }
    const { say, posted } = await open({ forbidden: { [CHANNEL]: 'files' }, parts: { answer } })
    say({})
    const call = await posted(CHANNEL, ({ status }) => status === 200)
    expect(call.files).toEqual([])
    expect(wordsOf(call)).toContain('25.4 mm')
    expect(wordsOf(call)).toContain('"Attach Files"')
  })

  it('that leaves nobody to tell is in the log', async () => {
    const { bot, say } = await open({ forbidden: { [CHANNEL]: 'all', [USER]: 'all' } })
    say({})
    await bot.loopback.call(({ path, status }) => path === '/users/@me/channels' && status === 403)
    await bot.discord.stop()
    expect(bot.logged.map(({ message }) => message)).toContain('nobody could be told what is missing')
  })
})
