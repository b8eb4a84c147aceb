import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Request, Response } from '../../../src/bot/request.ts'
import { lacksMore } from '../../../src/platforms/discord/form.ts'
import { escapeText } from '../../../src/platforms/discord/markdown.ts'
import { createSearch } from '../../../src/search/pool.ts'
import { examples, openRoom, type Room } from '../../room.ts'
import { type Bot, commands, openBot, PIXEL, wordsOf } from './bot.ts'
import { payload } from './payload.ts'
import { givenBy, slash } from './slash.ts'
import type { Json } from './wire.ts'

const PLAN = 'project start 17in x 13in height=15in sheet=1/2 ply'

const search = createSearch({ threads: 1, queue: 8 })
const asked: { readonly request: Request; readonly response: Response }[] = []
let room: Room
let bot: Bot
beforeAll(async () => {
  room = await openRoom({ search })
  const answer = async (request: Request) => {
    const response = await room.answer(request)
    asked.push({ request, response })
    return response
  }
  bot = await openBot({ room, parts: { answer } })
})
afterAll(async () => {
  await bot.close()
  await room.close()
  await search.close()
})

describe('every example of every command, as a slash command', () => {
  it.each(examples)('%s: %s', async (_, line) => {
    // A place of its own for each, with a plan in it.
    const place = { channel_id: String(1_300_000_000_000_100_000n + BigInt(asked.length)) }
    const change = { ...place, channel: { ...(payload('command').channel as Json), id: place.channel_id } }
    await bot.loopback.answerTo(bot.loopback.interact(slash(PLAN), change))
    const call = await bot.loopback.answerTo(bot.loopback.interact(slash(line), change))
    const given = givenBy(line)
    if (lacksMore(given, commands)) return expect(call.body).toMatchObject({ type: 9 })
    const { request, response } = asked.at(-1) ?? {}
    expect(request?.invocation).toMatchObject({ command: given.command })
    expect(call.method).toBe('PATCH')
    expect(bot.loopback.faults).toEqual([])
    if (!response?.ok) return expect(wordsOf(call)).toContain(escapeText(response?.error ?? 'no answer'))
    expect(wordsOf(call)).toContain(`**${escapeText(response.reply.answer)}**`)
    for (const { text } of response.reply.cautions ?? [])
      expect(wordsOf(call)).toContain(`> ${escapeText(text)}`)
    for (const { label } of response.reply.buttons ?? []) expect(wordsOf(call)).toContain(label)
    expect(wordsOf(call)).toContain('Show to all')
    expect(call.files.map(({ type }) => type)).toEqual(
      (response.reply.pictures ?? [])
        .map(() => 'image/png')
        .concat((response.reply.files ?? []).map(() => expect.any(String))),
    )
  })

  it('is answered, but for those that go on from something else', () => {
    const answered = asked.filter(({ response }) => response.ok)
    expect(answered.length).toBeGreaterThan(asked.length * 0.9)
  })

  it('acknowledges each at once, for the asker alone, before anything else', () => {
    const callbacks = bot.loopback.calls.filter(({ path }) => path.startsWith('/interactions/'))
    expect(callbacks.length).toBeGreaterThanOrEqual(examples.length)
    for (const { body, authorization, status } of callbacks) {
      expect((body as Json).type === 9 || (body as Json).data).toBeTruthy()
      if ((body as Json).type === 5) expect(body).toEqual({ type: 5, data: { flags: 64 } })
      expect(authorization).toBeUndefined()
      expect(status).toBe(204)
    }
  })
})

describe('an answer', () => {
  it('is these very bytes', async () => {
    const call = await bot.loopback.answerTo(bot.loopback.interact(slash('convert 23 7/8 in')))
    expect(call.body).toEqual({
      tts: false,
      enforce_nonce: false,
      components: [
        { type: 10, content: '**23 7/8 in = 606.425 mm**' },
        { type: 1, components: [{ type: 2, style: 2, label: 'Show to all', custom_id: '1:share:' }] },
      ],
      allowed_mentions: { parse: [], replied_user: false },
      flags: 32768,
      attachments: [],
    })
  })

  it('brings its pictures as PNG with their alt text, and its files', async () => {
    const answer = async (): Promise<Response> => {
      const { show } = (await room.ask('convert 1in')) as Extract<Response, { ok: true }>
      const scene = { width: 1, height: 1, shapes: [] }
      return {
        ok: true,
        show,
        reply: {
          answer: 'Cut 2 panels',
          pictures: [
            { name: 'cutting plan', alt: 'Two panels, 18 x 15 in', scene },
            { name: 'cutting plan', alt: 'The second sheet', scene },
          ],
          files: [{ name: 'cuts.csv', type: 'text/csv', content: 'part,long\r\nA,18\r\n' }],
          figures: {},
        },
      }
    }
    const painter = await openBot({ room, parts: { answer } })
    const call = await painter.loopback.answerTo(painter.loopback.interact(payload('command')))
    expect(painter.loopback.faults).toEqual([])
    expect(call.files.map(({ part, name }) => [part, name])).toEqual([
      ['files[0]', 'cutting_plan.png'],
      ['files[1]', 'cutting_plan-2.png'],
      ['files[2]', 'cuts.csv'],
    ])
    expect(call.files[0]?.bytes).toEqual(PIXEL)
    expect([...(call.files[0]?.bytes.slice(0, 4) ?? [])]).toEqual([0x89, 0x50, 0x4e, 0x47])
    expect(Buffer.from(call.files[2]?.bytes ?? []).toString()).toBe('part,long\r\nA,18\r\n')
    const body = call.body as Json
    expect(body.attachments).toEqual([
      { id: '0', description: 'Two panels, 18 x 15 in' },
      { id: '1', description: 'The second sheet' },
      { id: '2' },
    ])
    expect(body.components).toContainEqual({
      type: 12,
      items: [
        { media: { url: 'attachment://cutting_plan.png' }, description: 'Two panels, 18 x 15 in' },
        { media: { url: 'attachment://cutting_plan-2.png' }, description: 'The second sheet' },
      ],
    })
    expect(body.components).toContainEqual({ type: 13, file: { url: 'attachment://cuts.csv' } })
    await painter.close()
  })
})
