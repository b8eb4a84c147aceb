import { afterAll, afterEach, describe, expect, it, vi } from 'vitest'
import type { Request, Response } from '../../../src/bot/request.ts'
import { createSearch } from '../../../src/search/pool.ts'
import { openRoom } from '../../room.ts'
import { type Bot, type BotTerms, openBot, wordsOf } from './bot.ts'
import { openLoopback, TOKEN } from './loopback.ts'
import { payload } from './payload.ts'
import { slash } from './slash.ts'
import { type Answered, type Call, type Json, snowflake } from './wire.ts'

const CHANNEL = '1300000000000000001'
const USER = '1400000000000000001'
/** The conversation of that person with the bot alone. */
const DIRECT = `${USER.slice(0, -1)}5`
const errors = payload('errors') as unknown as Readonly<Record<string, Answered>>

const search = createSearch({ threads: 1, queue: 8 })
const closing: (() => Promise<void>)[] = []
const seen: Bot[] = []
afterEach(async () => {
  for (const close of closing.splice(0).toReversed()) await close()
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
  seen.push(bot)
  closing.push(bot.close, room.close)
  const edits = () => bot.loopback.calls.filter(({ method, status }) => method === 'PATCH' && status === 200)
  const posted = (matches: (call: Call) => boolean = () => true, where = CHANNEL) =>
    bot.loopback.call(
      (call) => call.method === 'POST' && call.path === `/channels/${where}/messages` && matches(call),
    )
  const noted = () => bot.logged.map(({ message }) => message)
  return { bot, room, asked, edits, posted, noted }
}

/** An answer that waits until it is let go. */
function heldBack() {
  let release: () => void = () => undefined
  const gate = new Promise<void>((resolve) => {
    release = resolve
  })
  return { gate, release }
}

const okay = async (): Promise<Response> => {
  const room = await openRoom({ search })
  const response = await room.ask('convert 1in')
  await room.close()
  return response
}

/** The same, for everybody in the channel. */
const forAll = async (): Promise<Response> => {
  const response = await okay()
  return response.ok ? { ...response, reply: { ...response.reply, audience: 'channel' } } : response
}

describe('the same event twice', () => {
  it('has one effect', async () => {
    const { bot, asked, edits } = await open()
    const sent = bot.loopback.interact(slash('cutlist add 2x 10in x 5in ply'))
    bot.loopback.gateway.dispatch('INTERACTION_CREATE', sent.event, 0)
    await bot.loopback.answerTo(sent)
    await bot.loopback.call(({ code }) => code === 40060)
    const list = await bot.loopback.answerTo(bot.loopback.interact(slash('cutlist list')))
    expect(wordsOf(list)).toContain('2 parts in 1 row')
    expect(asked).toHaveLength(2)
    expect(edits()).toHaveLength(2)
  })

  it('has one effect where another process took it, and no word of it', async () => {
    const { bot, asked, noted } = await open()
    bot.loopback.otherwise({ path: /\/callback$/u, answer: errors.alreadyAcknowledged as Answered })
    bot.loopback.interact(payload('command'))
    await bot.loopback.call(({ code }) => code === 40060)
    await bot.loopback.answerTo(bot.loopback.interact(slash('convert 1in')))
    expect(asked.map(({ invocation }) => invocation)).toMatchObject([{ command: 'convert' }])
    expect(noted()).not.toContain('an event was not answered')
  })

  it('has one effect when it comes late the second time', async () => {
    const { bot, asked } = await open()
    const sent = bot.loopback.interact(payload('command'))
    await bot.loopback.answerTo(sent)
    bot.loopback.otherwise({ path: /\/callback$/u, answer: errors.unknownInteraction as Answered })
    bot.loopback.gateway.dispatch('INTERACTION_CREATE', sent.event, 0)
    await bot.loopback.call(({ code }) => code === 10062)
    await bot.loopback.answerTo(bot.loopback.interact(slash('convert 1in')))
    expect(asked).toHaveLength(2)
  })

  it('is answered even when the store cannot say whether it came before', async () => {
    const keeping = {
      once: () => Promise.reject(new Error('away')),
      keepLine: async () => 'name',
      recallLine: async () => undefined,
      recall: async () => ({ revision: 0, text: undefined }),
      remember: async () => true,
    }
    const { bot, noted } = await open({ keeping })
    expect(wordsOf(await bot.loopback.answerTo(bot.loopback.interact(payload('command'))))).toContain(
      '9 strips',
    )
    expect(noted()).toContain('whether an event came before could not be looked up')
  })
})

describe('a reply after its deadline', () => {
  it('of three seconds goes to the person alone, as the reply would have', async () => {
    const { bot, posted, noted } = await open()
    bot.loopback.interact(payload('command'), { id: snowflake(Date.now() - 60_000) })
    await bot.loopback.call(({ code }) => code === 10062)
    const call = await posted(() => true, DIRECT)
    expect(wordsOf(call)).toContain('Maria asked, and the answer came too late for a reply:')
    expect(wordsOf(call)).toContain('9 strips of 1/2 in')
    expect(wordsOf(call)).not.toContain('Show to all')
    expect(call.body).toMatchObject({ allowed_mentions: { parse: [] }, flags: 32768 })
    expect(bot.loopback.faults).toEqual([])
    await vi.waitFor(() =>
      expect(noted()).toContain('an answer came too late for a reply and went another way'),
    )
  })

  it('that is for all goes into the channel, and says whose it is', async () => {
    const { bot, posted } = await open({ parts: { answer: forAll } })
    bot.loopback.interact(payload('command'), { id: snowflake(Date.now() - 60_000) })
    const call = await posted()
    expect(wordsOf(call)).toContain('Maria asked, and the answer came too late for a reply:')
    expect(wordsOf(call)).toContain('25.4 mm')
    expect(bot.loopback.faults).toEqual([])
  })

  it('of a quarter of an hour goes the same way, with nothing left to show to all', async () => {
    const { gate, release } = heldBack()
    const answer = async () => {
      await gate
      return okay()
    }
    const { bot, posted } = await open({ parts: { answer } })
    const sent = bot.loopback.interact(payload('command'))
    await bot.loopback.call(({ path, status }) => path.includes(sent.token) && status === 204)
    bot.loopback.interactions.end(sent.id)
    release()
    const call = await posted(() => true, DIRECT)
    expect(wordsOf(call)).toContain('25.4 mm')
    expect(wordsOf(call)).not.toContain('Show to all')
  })

  it('of a quarter of an hour that is for all stands in the channel once', async () => {
    const { gate, release } = heldBack()
    const answer = async () => {
      await gate
      return forAll()
    }
    const { bot, posted } = await open({ parts: { answer } })
    const sent = bot.loopback.interact(payload('command'))
    await bot.loopback.call(({ path, status }) => path.includes(sent.token) && status === 204)
    bot.loopback.interactions.end(sent.id)
    release()
    expect(wordsOf(await posted())).toContain('25.4 mm')
    await bot.discord.stop()
    expect(bot.loopback.standing).toHaveLength(1)
    expect(bot.logged.map(({ message }) => message)).not.toContain('an event was not answered')
  })

  it('whose call is made again stands there once', async () => {
    const { bot } = await open()
    bot.loopback.otherwise({ method: 'POST', path: /\/messages$/u, answer: { status: 502 }, hasEffect: true })
    bot.loopback.interact(payload('command'), { id: snowflake(Date.now() - 60_000) })
    await bot.loopback.call(({ path, status }) => path === `/channels/${DIRECT}/messages` && status === 200)
    expect(bot.loopback.standing).toHaveLength(1)
  })

  it('that is for all goes to the person where the channel is closed to the bot', async () => {
    const { bot, posted } = await open({ forbidden: { [CHANNEL]: 'all' }, parts: { answer: forAll } })
    bot.loopback.otherwise({ path: /\/callback$/u, answer: errors.unknownInteraction as Answered })
    bot.loopback.interact(payload('command'))
    expect(wordsOf(await posted(() => true, DIRECT))).toContain('25.4 mm')
  })

  it('that is for one person alone is never put before all', async () => {
    const { bot, posted } = await open({ forbidden: { [USER]: 'all' } })
    bot.loopback.otherwise({ path: /\/callback$/u, answer: errors.unknownInteraction as Answered })
    bot.loopback.interact(payload('command'))
    const call = await posted()
    expect(wordsOf(call)).toContain('allow direct messages')
    expect(wordsOf(call)).not.toMatch(/strips|2x6/u)
    await bot.discord.stop()
    expect(bot.loopback.standing).toHaveLength(1)
  })

  it('whose word got lost on the way is not said a second time elsewhere', async () => {
    const { bot, edits } = await open({ parts: { answer: forAll } })
    const lost = { method: 'PATCH', path: /@original$/u, answer: { status: 502 }, times: 4, hasEffect: true }
    bot.loopback.otherwise(lost)
    const sent = bot.loopback.interact(payload('command'))
    expect(wordsOf(await bot.loopback.answerTo(sent))).toContain('25.4 mm')
    await bot.discord.stop()
    expect(edits()).toHaveLength(1)
    expect(bot.loopback.standing).toEqual([])
  })

  it('that Discord never takes a word of is in the log, and goes nowhere else', async () => {
    const { bot, noted } = await open({ parts: { answer: forAll } })
    bot.loopback.otherwise({ method: 'PATCH', path: /@original$/u, answer: { status: 502 }, times: 20 })
    bot.loopback.interact(payload('command'))
    await vi.waitFor(() => expect(noted()).toContain('an answer may not have come through'))
    await bot.discord.stop()
    expect(bot.loopback.standing).toEqual([])
  })

  it('is in the log where it goes nowhere, without what was asked or any token', async () => {
    const { bot, noted } = await open({ forbidden: { [CHANNEL]: 'all', [USER]: 'all' } })
    bot.loopback.otherwise({ path: /\/callback$/u, answer: errors.unknownInteraction as Answered })
    bot.loopback.interact(payload('command'))
    await vi.waitFor(() => expect(noted()).toContain('an answer could not be delivered at all'))
    expect(JSON.stringify(bot.logged)).not.toContain('2x6')
  })

  it('was acknowledged in time all the same, and a slow one is noted', async () => {
    const { bot, noted } = await open({ parts: { now: () => new Date(Date.now() + 2500) } })
    await bot.loopback.answerTo(bot.loopback.interact(payload('command')))
    expect(noted()).toContain('an acknowledgement was slow')
  })
})

describe('Discord asks to wait', () => {
  it('and the answer comes after that', async () => {
    const { bot, noted } = await open()
    bot.loopback.otherwise({ method: 'PATCH', path: /@original$/u, answer: errors.rateLimited as Answered })
    const sent = bot.loopback.interact(payload('command'))
    const limited = await bot.loopback.call(({ status }) => status === 429)
    const call = await bot.loopback.answerTo(sent)
    expect(wordsOf(call)).toContain('9 strips')
    expect(call.at - limited.at).toBeGreaterThanOrEqual(45)
    expect(noted()).toContain('Discord asks to wait')
  })

  it('with the acknowledgement too', async () => {
    const { bot } = await open()
    bot.loopback.otherwise({ path: /\/callback$/u, answer: errors.rateLimited as Answered })
    expect(wordsOf(await bot.loopback.answerTo(bot.loopback.interact(payload('command'))))).toContain(
      '9 strips',
    )
  })
})

describe('a call that fails', () => {
  it('inside Discord is made again', async () => {
    const { bot } = await open()
    bot.loopback.otherwise({ method: 'PATCH', path: /@original$/u, answer: { status: 502 }, times: 2 })
    expect(wordsOf(await bot.loopback.answerTo(bot.loopback.interact(payload('command'))))).toContain(
      '9 strips',
    )
  })

  it('because of what the message holds is told to the person', async () => {
    const { bot, noted } = await open()
    bot.loopback.otherwise({ method: 'PATCH', path: /@original$/u, answer: errors.invalidForm as Answered })
    const call = await bot.loopback.answerTo(bot.loopback.interact(payload('command')))
    expect(wordsOf(call)).toContain('did not take it as a message')
    expect(noted()).toContain('an answer did not go through')
  })

  it('because files may not be sent is made without them, and says so', async () => {
    const answer = async (): Promise<Response> => {
      const response = await okay()
      if (!response.ok) throw new Error(response.error)
      const pictures = [{ name: 'plan', alt: 'Two panels', scene: { width: 1, height: 1, shapes: [] } }]
      return { ...response, reply: { ...response.reply, pictures } }
    }
    const { bot } = await open({ parts: { answer } })
    bot.loopback.otherwise({
      method: 'PATCH',
      path: /@original$/u,
      answer: errors.missingPermissions as Answered,
    })
    const call = await bot.loopback.answerTo(bot.loopback.interact(payload('command')))
    expect(wordsOf(call)).toContain('25.4 mm')
    expect(wordsOf(call)).toContain('"Attach Files"')
    expect(call.files).toEqual([])
    expect(bot.loopback.faults).toEqual([])
  })

  it('in painting leaves the picture out and says so', async () => {
    const answer = async (): Promise<Response> => {
      const response = await okay()
      if (!response.ok) throw new Error(response.error)
      const scene = { width: 1, height: 1, shapes: [] }
      const pictures = [
        { name: 'plan', alt: 'Two panels', scene },
        { name: 'other', alt: 'More', scene },
      ]
      return { ...response, reply: { ...response.reply, pictures } }
    }
    const paint = () => Promise.reject(new Error('no fonts'))
    const { bot, noted } = await open({ parts: { answer, paint } })
    const call = await bot.loopback.answerTo(bot.loopback.interact(payload('command')))
    expect(wordsOf(call)).toContain('25.4 mm')
    expect(wordsOf(call)).toContain('plan.png could not be drawn')
    expect(noted()).toContain('a picture could not be painted')
    expect(bot.loopback.faults).toEqual([])
  })

  it('in painting too large for this place leaves the picture out and says so', async () => {
    const answer = async (): Promise<Response> => {
      const response = await okay()
      if (!response.ok) throw new Error(response.error)
      const pictures = [{ name: 'plan', alt: 'Two panels', scene: { width: 1, height: 1, shapes: [] } }]
      const files = [{ name: 'cuts.csv', type: 'text/csv', content: 'x'.repeat(60) }]
      return { ...response, reply: { ...response.reply, pictures, files } }
    }
    const { bot } = await open({ parts: { answer } })
    const event = { ...payload('command'), attachment_size_limit: 50 }
    const call = await bot.loopback.answerTo(bot.loopback.interact(event))
    expect(wordsOf(call)).toContain('plan.png is too large')
    expect(wordsOf(call)).toMatch(/cuts\.csv is larger than/u)
    expect(call.files).toEqual([])
  })
})

describe('the connection', () => {
  it('comes back when it is lost, and what was missed is answered', async () => {
    const { bot, noted } = await open()
    expect(bot.discord.health().well).toBe(true)
    bot.loopback.gateway.drop(4000)
    const sent = bot.loopback.interact(payload('command'))
    expect(wordsOf(await bot.loopback.answerTo(sent))).toContain('9 strips')
    expect(bot.loopback.gateway.resumed).toHaveLength(1)
    expect(bot.loopback.gateway.identified).toHaveLength(1)
    expect(bot.discord.health()).toEqual({ well: true, says: '1 of 1 connections to Discord hear' })
    expect(noted()).toContain('a connection is back')
  })

  it.each(['502', 'torn'] as const)('comes back where Discord is away for a while: %s', async (door) => {
    const { bot, noted } = await open()
    const hears = () => noted().filter((message) => message === 'a connection hears')
    expect(hears()).toHaveLength(1)
    bot.loopback.gateway.shut(door, door)
    bot.loopback.gateway.drop(4000)
    await vi.waitFor(() => expect(bot.discord.health().well).toBe(false))
    await vi.waitFor(() => expect(bot.discord.health().well).toBe(true), 15_000)
    expect(noted()).toContain('a connection is opened again')
    expect(wordsOf(await bot.loopback.answerTo(bot.loopback.interact(payload('command'))))).toContain(
      '9 strips',
    )
    expect(noted().at(-1)).toMatch(/^a connection (?:hears|is back)$/u)
  })

  it('of one shard closed for good makes the whole unwell, with the reason', async () => {
    const { bot, noted } = await open({ shards: 2 })
    expect(bot.discord.health()).toEqual({ well: true, says: '2 of 2 connections to Discord hear' })
    bot.loopback.gateway.drop(4014, 1)
    await vi.waitFor(() => expect(bot.discord.health().well).toBe(false))
    expect(bot.discord.health().says).toMatch(/closed the connection for good \(4014\).*intents/u)
    expect(noted().join('\n')).toMatch(/for good \(4014\)/u)
    // The other one still answers.
    expect(wordsOf(await bot.loopback.answerTo(bot.loopback.interact(payload('command'))))).toContain(
      '9 strips',
    )
  })

  it('asks for no more than need be', async () => {
    const { bot } = await open()
    // Guilds, GuildMessages and DirectMessages: none of them has to be granted.
    expect(bot.loopback.gateway.identified[0]?.intents).toBe((1 << 0) | (1 << 9) | (1 << 12))
  })

  it('is of the shards that this process is told to run', async () => {
    const { bot } = await open({ options: { shards: { ids: [1], count: 3 } } })
    expect(bot.loopback.gateway.identified.map(({ shard }) => shard)).toEqual([[1, 3]])
  })

  it.each([
    [4004, /token is not valid/u],
    [4011, /too many servers/u],
    [4014, /does not allow the intents/u],
  ])('refused with %i at the start says why', async (code, why) => {
    const { bot } = await open({ isStarted: false })
    bot.loopback.gateway.refuse(code)
    await expect(bot.discord.start()).rejects.toThrow(why)
    expect(bot.discord.health().well).toBe(false)
  })

  it('with a wrong token is refused in a sentence that does not have it', async () => {
    const loopback = await openLoopback()
    closing.push(loopback.close)
    const { bot } = await open({ loopback, isStarted: false, options: { token: 'not.the.token' } })
    await expect(bot.discord.start()).rejects.toThrow(/^Discord cannot be reached: the token is not valid/u)
    expect(JSON.stringify(bot.logged)).not.toContain('not.the.token')
    expect(bot.discord.health()).toMatchObject({
      well: false,
      says: expect.stringContaining('token is not valid'),
    })
  })
})

describe('stopping', () => {
  it('finishes what is under way, and hears nothing new', async () => {
    const { gate, release } = heldBack()
    const answer = async () => {
      await gate
      return okay()
    }
    const { bot, asked } = await open({ parts: { answer } })
    const sent = bot.loopback.interact(payload('command'))
    await bot.loopback.call(({ path, status }) => path.includes(sent.token) && status === 204)
    const stopped = bot.discord.stop()
    bot.loopback.interact(slash('convert 2in'))
    release()
    await stopped
    expect(wordsOf(await bot.loopback.answerTo(sent))).toContain('25.4 mm')
    expect(asked).toHaveLength(1)
    expect(bot.discord.health()).toEqual({ well: false, says: 'Discord is closed' })
  })

  it('finishes an answer to a message, which needs the token', async () => {
    const { gate, release } = heldBack()
    const answer = async () => {
      await gate
      return okay()
    }
    const { bot, posted } = await open({ parts: { answer } })
    bot.loopback.gateway.dispatch('MESSAGE_CREATE', payload('mention'), 0)
    await bot.loopback.call(({ path }) => path.endsWith('/typing'))
    const stopped = bot.discord.stop()
    release()
    await stopped
    expect(wordsOf(await posted())).toContain('25.4 mm')
  })
})

describe('a fault of the bot', () => {
  it('in an event is noted, and the next one is answered', async () => {
    let faults = 0
    const answer = (): Promise<Response> => {
      faults += 1
      return faults === 1 ? Promise.reject(new Error('a bug')) : okay()
    }
    const { bot, noted } = await open({ parts: { answer } })
    bot.loopback.interact(payload('command'))
    await vi.waitFor(() => expect(noted()).toContain('an event was not answered'))
    expect(wordsOf(await bot.loopback.answerTo(bot.loopback.interact(payload('command'))))).toContain(
      '25.4 mm',
    )
  })
})

describe('the log', () => {
  it('never has a token in it, whatever went wrong', () => {
    const text = JSON.stringify(seen.flatMap(({ logged }) => logged))
    expect(text.length).toBeGreaterThan(1000)
    expect(text).not.toContain(TOKEN)
    expect(text).not.toContain('interaction-secret')
    expect(text).not.toMatch(/https?:\/\//u)
  })
})

describe('an answer for everybody', () => {
  it('is shown to all, and to the asker as the reply', async () => {
    const answer = async (): Promise<Response> => {
      const response = await okay()
      return response.ok ? { ...response, reply: { ...response.reply, audience: 'channel' } } : response
    }
    const { bot } = await open({ parts: { answer } })
    const sent = bot.loopback.interact(payload('command'))
    const shown = await bot.loopback.call(
      ({ method, path }) => method === 'POST' && path.startsWith('/webhooks/') && path.includes(sent.token),
    )
    expect((shown.body as Json).flags).toBe(32768)
    expect(wordsOf(shown)).not.toContain('Show to all')
  })
})
