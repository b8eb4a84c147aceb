import { afterAll, afterEach, describe, expect, it } from 'vitest'
import type { Reply } from '../../../src/bot/reply.ts'
import type { Response } from '../../../src/bot/request.ts'
import { showIn } from '../../../src/bot/show.ts'
import { createSearch } from '../../../src/search/pool.ts'
import { createGate } from '../../gate.ts'
import { openRoom } from '../../room.ts'
import { type Bot, type BotTerms, openBot, wordsOf } from './bot.ts'
import { type LoopbackTerms, openLoopback, type Standing } from './loopback.ts'
import { payload } from './payload.ts'
import { slash } from './slash.ts'
import { type Call, type Json, snowflake } from './wire.ts'

const CHANNEL = '1300000000000000001'
const inch = { units: 'inch', tape: 16, millimetreStep: 1 } as const
const show = showIn(inch, { ...inch, tape: 32 })
const scene = { width: 1, height: 1, shapes: [] }
const search = createSearch({ threads: 1, queue: 8 })

const closing: (() => Promise<void>)[] = []
afterEach(async () => {
  for (const close of closing.splice(0).toReversed()) await close()
})
afterAll(() => search.close())

let revision = 0

/** Answers with a notice of its own for every line, each of a revision of its own: the line is what it says. */
const noticing =
  (more: Partial<Reply> = {}, held: (said: string) => Promise<unknown> = async () => undefined) =>
  async ({ invocation }: { readonly invocation: object }): Promise<Response> => {
    revision += 1
    const said = 'line' in invocation ? String(invocation.line) : JSON.stringify(invocation)
    const reply: Reply = { answer: `list for ${said}`, figures: {}, ...more }
    const notice = { name: 'group', reply, revision }
    await held(said)
    return { ok: true, show, reply: { answer: 'It is up', figures: {}, notice } }
  }

/** Lets every answer through but that to one line, which waits until it is let go. */
function holding(line: string) {
  const { promise, release } = createGate()
  return { held: async (said: string) => (said.includes(line) ? promise : undefined), release }
}

const acknowledged = ({ loopback }: Bot, token: string): Promise<Call> =>
  loopback.call(({ path, status }) => path.includes(token) && status === 204)

async function open(terms: BotTerms & LoopbackTerms = {}): Promise<Bot> {
  const loopback = terms.loopback ?? (await openLoopback(terms))
  if (!terms.loopback) closing.push(loopback.close)
  const room = terms.room ?? (await openRoom({ search }))
  if (!terms.room) closing.push(room.close)
  const bot = await openBot({ ...terms, loopback, room })
  closing.push(bot.close)
  return bot
}

/** Asks by a command; gives the answer. */
const ask = (bot: Bot, event: Json): Promise<Call> => bot.loopback.answerTo(bot.loopback.interact(event))

/** Waits until so many notices were pinned or edited, whether that was allowed or not. */
const putUp = ({ loopback }: Bot, times: number): Promise<Call> => {
  let count = 0
  return loopback.call(({ method, path }) => {
    if (/\/messages\/(?:pins\/)?\d+$/u.test(path) && path.startsWith('/channels/') && method !== 'DELETE')
      count += 1
    return count === times
  })
}

const told = ({ loopback }: Bot): Promise<Call> =>
  loopback.call(({ method, path }) => method === 'POST' && path.startsWith('/webhooks/'))

const only = (bot: Bot): Standing => {
  expect(bot.loopback.faults).toEqual([])
  expect(bot.loopback.standing).toHaveLength(1)
  return bot.loopback.standing[0] as Standing
}

const words = ({ body }: Standing): string => wordsOf({ body } as Call)

const followUps = ({ loopback }: Bot) =>
  loopback.calls.filter(({ method, path }) => method === 'POST' && path.startsWith('/webhooks/'))

describe('a standing notice in Discord', () => {
  it('is posted and pinned once, and edited from then on, with its files attached again', async () => {
    const pictures = [{ name: 'list', alt: 'All parts', scene }]
    const files = [{ name: 'parts.csv', type: 'text/csv', content: 'a,b' }]
    const bot = await open({ parts: { answer: noticing({ pictures, files }) } })
    await ask(bot, slash('convert 1in'))
    await putUp(bot, 1)
    const first = only(bot)
    expect(first).toMatchObject({ channel: CHANNEL, isPinned: true })
    await ask(bot, slash('convert 2in'))
    await putUp(bot, 2)
    const second = only(bot)
    expect(second.id).toBe(first.id)
    expect(words(second)).toContain('2in')
    expect(second.files.map(({ name }) => name)).toEqual(['list.png', 'parts.csv'])
    expect(second.body.attachments).toEqual([
      { id: '0', description: 'All parts' },
      expect.objectContaining({ id: '1' }),
    ])
    expect(bot.loopback.calls.filter(({ path }) => path.includes('/pins/'))).toHaveLength(1)
    expect(followUps(bot)).toEqual([])
  })

  it('is put up though the answer beside it did not get through', async () => {
    const bot = await open({ parts: { answer: noticing() } })
    const door = { method: 'POST', path: /\/messages$/u, answer: { status: 500 }, times: 4 }
    bot.loopback.otherwise(door)
    bot.loopback.gateway.dispatch('MESSAGE_CREATE', { ...payload('mention'), id: snowflake() }, 0)
    await putUp(bot, 1)
    expect(words(only(bot))).toContain('list for strips 2x6')
  })

  it('is put up though the answer to a command was refused twice', async () => {
    const bot = await open({ parts: { answer: noticing() } })
    const refused = { status: 403, body: { message: 'Missing Permissions', code: 50013 } }
    bot.loopback.otherwise({ method: 'PATCH', path: /@original$/u, answer: refused, times: 2 })
    bot.loopback.interact(slash('convert 1in'))
    await putUp(bot, 1)
    expect(only(bot)).toMatchObject({ isPinned: true })
  })

  it('whose posting got no answer, and is made again, stands once', async () => {
    const bot = await open({ parts: { answer: noticing() } })
    const lost = { method: 'POST', path: /\/messages$/u, answer: { status: 502 }, hasEffect: true }
    bot.loopback.otherwise(lost)
    await ask(bot, slash('convert 1in'))
    await putUp(bot, 1)
    expect(only(bot)).toMatchObject({ channel: CHANNEL, isPinned: true })
  })

  it('that somebody deleted is posted and pinned anew', async () => {
    const bot = await open({ parts: { answer: noticing() } })
    await ask(bot, slash('convert 1in'))
    await putUp(bot, 1)
    const { id } = only(bot)
    bot.loopback.remove(id)
    await ask(bot, slash('convert 2in'))
    await putUp(bot, 3)
    expect(only(bot)).toMatchObject({ isPinned: true })
    expect(only(bot).id).not.toBe(id)
  })

  it('is one for all processes, however many put it up at once', async () => {
    const room = await openRoom({ search })
    closing.push(room.close)
    const loopback = await openLoopback()
    closing.push(loopback.close)
    for (let process = 0; process < 2; process += 1)
      await open({ room, loopback, parts: { answer: noticing() } })
    for (let count = 0; count < 4; count += 1) loopback.interact(slash(`convert ${count + 1}in`))
    await loopback.call(
      ({ method, path, status }) =>
        method === 'PATCH' && path.startsWith(`/channels/${CHANNEL}/messages/`) && status === 200,
    )
    expect(loopback.standing).toHaveLength(1)
    expect(loopback.calls.filter(({ path }) => path.includes('/pins/'))).toHaveLength(1)
  })

  it('of an older list that comes after a newer one leaves the newer standing', async () => {
    const { held, release } = holding('1in')
    const bot = await open({ parts: { answer: noticing({}, held) } })
    await acknowledged(bot, bot.loopback.interact(slash('convert 1in')).token)
    await ask(bot, slash('convert 2in'))
    await putUp(bot, 1)
    release()
    await bot.discord.stop()
    expect(words(only(bot))).toContain('2in')
  })

  it('of an older list by one process leaves the newer list of another standing', async () => {
    const [room, loopback] = [await openRoom({ search }), await openLoopback()]
    closing.push(room.close, loopback.close)
    const { held, release } = holding('1in')
    const slow = await open({ room, loopback, parts: { answer: noticing({}, held) } })
    await acknowledged(slow, loopback.interact(slash('convert 1in')).token)
    const stopped = slow.discord.stop()
    const quick = await open({ room, loopback, parts: { answer: noticing() } })
    await ask(quick, slash('convert 2in'))
    await putUp(quick, 1)
    release()
    await stopped
    expect(words(only(quick))).toContain('2in')
  })

  it('no longer names somebody in the message or its files once it was rendered without', async () => {
    const named = (said: string) => (said.includes('1in') ? 'Maria' : 'forgotten')
    const answer = async (request: { readonly invocation: object }) => {
      const name = named(JSON.stringify(request.invocation))
      const files = [{ name: 'whose.csv', type: 'text/csv', content: name }]
      return noticing({ notes: [`K01 is of ${name}`], files })(request)
    }
    const bot = await open({ parts: { answer } })
    await ask(bot, slash('convert 1in'))
    await putUp(bot, 1)
    expect(words(only(bot))).toContain('Maria')
    await ask(bot, slash('convert 2in'))
    await putUp(bot, 2)
    expect(words(only(bot))).not.toContain('Maria')
    expect(only(bot).files.map(({ bytes }) => Buffer.from(bytes).toString())).toEqual(['forgotten'])
  })

  it('belongs to the channel, from a thread and by a message that names the bot too', async () => {
    const bot = await open({ parts: { answer: noticing() } })
    await ask(bot, payload('commandInThread'))
    await putUp(bot, 1)
    bot.loopback.gateway.dispatch('MESSAGE_CREATE', { ...payload('mention'), id: snowflake() }, 0)
    await bot.loopback.call(
      ({ method, path }) => method === 'PATCH' && path.startsWith(`/channels/${CHANNEL}/`),
    )
    const [notice, answer] = bot.loopback.standing
    expect(notice).toMatchObject({ channel: CHANNEL, isPinned: true })
    expect(words(notice as Standing)).toContain('list for strips 2x6')
    expect(words(answer as Standing)).toContain('It is up')
  })

  it('of sixty people with sixty cautions is one message', async () => {
    const caution = (row: number) => ({
      id: 'use',
      task: 'use',
      text: `Kit ${row}: the lid is heavier than one person lifts alone, so lift it with two.`,
    })
    const cautions = Array.from({ length: 60 }, (_, row) => caution(row))
    const rows = Array.from({ length: 180 }, (_, row) => [row, `part of kit ${row}`, '12 x 18'])
    const tables = [{ title: 'Cut now', columns: ['n', 'what', 'in'], rows }]
    const notes = Array.from({ length: 30 }, (_, row) => `a note about kit ${row}`)
    const bot = await open({ parts: { answer: noticing({ cautions, tables, notes }) } })
    await ask(bot, slash('convert 1in'))
    await putUp(bot, 1)
    expect(words(only(bot))).toMatch(/\d+ more cautions in the file cautions\.txt/u)
    expect(only(bot).files.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['cautions.txt', 'cut-now-1.csv', 'notes.txt']),
    )
  })
})

describe('what a notice may not do is said to whoever acted, in one sentence', () => {
  it.each([
    ['pins', '"Pin Messages"', 1],
    ['all', '"Send Messages"', 0],
  ] as const)('%s', async (ban, permission, standing) => {
    const bot = await open({ forbidden: { [CHANNEL]: ban }, parts: { answer: noticing() } })
    const answered = await ask(bot, slash('convert 1in'))
    expect(wordsOf(answered)).toContain('It is up')
    const said = await told(bot)
    expect(bot.loopback.standing).toHaveLength(standing)
    expect(wordsOf(said)).toContain(permission)
    expect(said.body).toMatchObject({ flags: 64 | 32768 })
    expect(bot.loopback.faults).toEqual([])
  })

  it('files', async () => {
    const files = [{ name: 'parts.csv', type: 'text/csv', content: 'a,b' }]
    const bot = await open({ forbidden: { [CHANNEL]: 'files' }, parts: { answer: noticing({ files }) } })
    await ask(bot, slash('convert 1in'))
    await putUp(bot, 1)
    expect(words(only(bot))).toContain('"Attach Files"')
    expect(only(bot)).toMatchObject({ isPinned: true, files: [] })
  })

  it('where the bot does not see the channel', async () => {
    const bot = await open({ parts: { answer: noticing() } })
    const elsewhere = { ...slash('convert 1in'), channel_id: '1300000000000000077', channel: undefined }
    await ask(bot, elsewhere)
    expect(wordsOf(await told(bot))).toContain('I do not see this channel')
    expect(bot.loopback.standing).toEqual([])
  })
})
