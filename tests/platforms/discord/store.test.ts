import { afterEach, describe, expect, it, vi } from 'vitest'
import type { Keeping } from '../../../src/bot/platform.ts'
import type { Reply } from '../../../src/bot/reply.ts'
import { showIn } from '../../../src/bot/show.ts'
import { type Bot, type BotTerms, openBot, wordsOf } from './bot.ts'
import { payload } from './payload.ts'
import { slash } from './slash.ts'
import type { Json } from './wire.ts'

const inch = { units: 'inch', tape: 16, millimetreStep: 1 } as const
const show = showIn(inch, { ...inch, tape: 32 })

const away = () => Promise.reject(new Error('the store is away'))

/** A store that can neither be read nor written. */
const broken: Keeping = {
  once: away,
  keepLine: away,
  recallLine: away,
  recall: away,
  remember: away,
}

let bot: Bot | undefined
afterEach(() => bot?.close())
const open = async (terms: BotTerms = {}) => {
  bot = await openBot({ keeping: broken, ...terms })
  return bot
}

const press = (id: string): Json => {
  const event = payload('button')
  return { ...event, data: { ...(event.data as Json), custom_id: id } }
}

const ask = ({ loopback }: Bot, event: Json) => loopback.answerTo(loopback.interact(event))

const LONG = `help ${'x'.repeat(200)}`

describe('where what is kept cannot be reached', () => {
  it.each(['say', 'ask', 'edit'])(
    'a button whose line is kept says so, and can be pressed again: %s',
    async (deed) => {
      const opened = await open()
      const told = await ask(opened, press(`1:${deed}#name`))
      expect(wordsOf(told)).toContain('cannot be looked up just now; press it again in a minute')
      expect(opened.loopback.faults).toEqual([])
    },
  )

  it('a form whose line is kept says so', async () => {
    const opened = await open()
    const event = payload('form')
    const told = await ask(opened, { ...event, data: { ...(event.data as Json), custom_id: '1:ask#name' } })
    expect(wordsOf(told)).toContain('cannot be looked up just now')
  })

  it('nothing is looked up for an event that another process took', async () => {
    const opened = await open()
    const answer = {
      status: 400,
      body: { message: 'Interaction has already been acknowledged.', code: 40060 },
    }
    opened.loopback.otherwise({ path: /\/callback$/u, answer })
    opened.loopback.interact(press('1:say#name'))
    await opened.loopback.call(({ code }) => code === 40060)
    expect(wordsOf(await ask(opened, slash('convert 1in')))).toContain('25.4 mm')
  })

  it('an answer comes without the buttons that would have to be kept', async () => {
    const reply: Reply = {
      answer: 'Two panels',
      buttons: [
        { label: 'Undo', line: 'project undo' },
        { label: 'Long', line: LONG },
      ],
      figures: {},
    }
    const opened = await open({ parts: { answer: async () => ({ ok: true, show, reply }) } })
    const words = wordsOf(await ask(opened, payload('command')))
    expect(words).toContain('Two panels')
    expect(words).toContain('Undo')
    expect(words).toContain('Show to all')
    expect(words).not.toContain('Long')
    await vi.waitFor(() =>
      expect(opened.logged.map(({ message }) => message)).toContain(
        'a line could not be kept for its button',
      ),
    )
  })

  it('an answer that is meant for all, and cannot be shown to them, says so to who asked', async () => {
    const reply: Reply = { answer: 'Two panels', audience: 'channel', figures: {} }
    const opened = await open({ parts: { answer: async () => ({ ok: true, show, reply }) } })
    const answer = { status: 403, body: { message: 'Missing Permissions', code: 50013 } }
    opened.loopback.otherwise({ method: 'POST', path: /^\/webhooks\//u, answer })
    const { token } = opened.loopback.interact(payload('command'))
    const told = await opened.loopback.call(
      ({ path, method, status }) =>
        method === 'POST' && path.includes(token) && path.startsWith('/webhooks') && status === 200,
    )
    expect(wordsOf(told)).toContain('could not be shown to all just now')
    expect((told.body as Json).flags).toBe(32768 | 64)
  })

  it('what goes wrong says so, and is no question without an answer', async () => {
    const opened = await open({ parts: { answer: () => Promise.reject(new Error('a bug')) } })
    expect(wordsOf(await ask(opened, payload('command')))).toContain('went wrong on my side')
  })

  it('a refusal comes without its button', async () => {
    const error = 'there is no such board'
    const opened = await open({ parts: { answer: async () => ({ ok: false, kind: 'invalid', error }) } })
    const event = slash('help command=help')
    const options = [{ name: 'command', type: 3, value: 'y'.repeat(200) }]
    const refused = await ask(opened, { ...event, data: { ...(event.data as Json), options } })
    expect(wordsOf(refused)).toBe(error)
  })
})
