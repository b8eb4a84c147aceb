import { afterEach, describe, expect, it } from 'vitest'
import type { Reply } from '../../../src/bot/reply.ts'
import { showIn } from '../../../src/bot/show.ts'
import { type Bot, type BotTerms, openBot, wordsOf } from './bot.ts'
import { payload } from './payload.ts'
import { type Json, snowflake } from './wire.ts'

const CHANNEL = '1300000000000000001'
/** The conversation of who asks with the bot alone. */
const DIRECT = '1400000000000000005'

const inch = { units: 'inch', tape: 16, millimetreStep: 1 } as const
const show = showIn(inch, { ...inch, tape: 32 })

let bot: Bot | undefined
afterEach(() => bot?.close())
const open = async (terms: BotTerms = {}) => {
  bot = await openBot(terms)
  return bot
}

const ANSWER = 'Cut 2 end panels first'

/** Everything that may stand in one message, and more: rows for as long as there is room, and pictures and files. */
const full = (letters: number): Reply => ({
  answer: `${ANSWER} ${'x'.repeat(letters)}`,
  tables: [
    { columns: ['Part', 'Count'], rows: Array.from({ length: 900 }, (_, row) => [`Part ${row}`, row]) },
  ],
  pictures: [{ name: 'plan', alt: 'Two panels', scene: { width: 1, height: 1, shapes: [] } }],
  figures: {},
})

const answering = (reply: Reply): BotTerms => ({
  parts: { answer: async () => ({ ok: true, show, reply }) },
})

const LENGTHS = [0, 7, 14, 21]

describe('an answer that fills its message', () => {
  it.each(LENGTHS)('can be shown to all: %i letters more', async (letters) => {
    const { loopback } = await open(answering(full(letters)))
    await loopback.answerTo(loopback.interact(payload('command')))
    const event = payload('button')
    const { token } = loopback.interact({
      ...event,
      message: { ...(event.message as Json), ...loopback.published },
      data: { ...(event.data as Json), custom_id: '1:share:' },
    })
    const shown = await loopback.call(
      ({ method, path }) => method === 'POST' && path.startsWith('/webhooks/') && path.includes(token),
    )
    expect(loopback.faults).toEqual([])
    expect(wordsOf(shown)).toContain('shown by Maria')
    expect(wordsOf(shown)).toContain(ANSWER)
  })

  it.each(LENGTHS)('comes late all the same: %i letters more', async (letters) => {
    const { loopback } = await open(answering(full(letters)))
    loopback.interact(payload('command'), { id: snowflake(Date.now() - 60_000) })
    const call = await loopback.call(({ path }) => path === `/channels/${DIRECT}/messages`)
    expect(loopback.faults).toEqual([])
    expect(wordsOf(call)).toContain(ANSWER)
  })

  it.each(LENGTHS)('says that its files are missing: %i letters more', async (letters) => {
    const { loopback } = await open({ ...answering(full(letters)), forbidden: { [CHANNEL]: 'files' } })
    loopback.gateway.dispatch('MESSAGE_CREATE', { ...payload('mention'), id: snowflake() }, 0)
    const call = await loopback.call(
      ({ path, files, status }) => path.endsWith('/messages') && files.length === 0 && status < 500,
    )
    expect(loopback.faults).toEqual([])
    expect(wordsOf(call)).toContain('may not attach files here')
  })
})
