import { afterAll, afterEach, describe, expect, it, vi } from 'vitest'
import type { Keeping } from '../../../src/bot/platform.ts'
import type { Response } from '../../../src/bot/request.ts'
import { createSearch } from '../../../src/search/pool.ts'
import { createKeeping } from '../../../src/store/keeping.ts'
import { openRoom } from '../../room.ts'
import { type Bot, type BotTerms, openBot, PIXEL, wordsOf } from './bot.ts'
import { payload } from './payload.ts'
import { slash } from './slash.ts'
import type { Call, Json } from './wire.ts'

const search = createSearch({ threads: 1, queue: 8 })
const opened: Bot[] = []
const open = async (terms: BotTerms = {}) => {
  const bot = await openBot({ search, ...terms })
  opened.push(bot)
  return bot
}
afterEach(async () => {
  for (const bot of opened.splice(0)) await bot.close()
})
afterAll(() => search.close())

interface ShownButton {
  readonly label: string
  readonly custom_id: string
}

const buttonsOf = (call: Call): readonly ShownButton[] =>
  ((call.body as Json).components as Json[])
    .filter(({ type }) => type === 1)
    .flatMap(({ components }) => components as ShownButton[])

const press = (id: string, message: Json = {}): Json => {
  const event = payload('button')
  return {
    ...event,
    message: { ...(event.message as Json), ...message },
    data: { ...(event.data as Json), custom_id: id },
  }
}

const form = (id: string, fields: Readonly<Record<string, string | readonly string[]>>): Json => ({
  ...payload('form'),
  data: {
    custom_id: id,
    components: Object.entries(fields).map(([name, value], index) => ({
      type: 18,
      id: index + 1,
      component:
        typeof value === 'string'
          ? { type: 4, id: 100 + index, custom_id: name, value }
          : { type: 3, id: 100 + index, custom_id: name, values: value },
    })),
  },
})

const ask = (bot: Bot, event: Json) => bot.loopback.answerTo(bot.loopback.interact(event))

describe('a button', () => {
  it('is its line, typed', async () => {
    const bot = await open()
    const started = await ask(bot, slash('project start 17in x 13in height=15in'))
    const undo = buttonsOf(started).find(({ label }) => label === 'Undo')
    expect(undo?.custom_id).toBe('1:say:project undo')
    expect(wordsOf(await ask(bot, press(undo?.custom_id ?? '')))).toContain('Undone')
    expect(bot.loopback.faults).toEqual([])
  })

  it('still works after the bot was started again, with a line however long', async () => {
    const room = await openRoom({ search })
    const line = `cutlist add ${Array.from({ length: 20 }, (_, row) => `${row + 2}x ${row + 10}in x 5in ply`).join('; ')}`
    const answer = async (): Promise<Response> => {
      const response = await room.ask('convert 1in')
      if (!response.ok) throw new Error(response.error)
      return { ...response, reply: { ...response.reply, buttons: [{ label: 'Add them', line }] } }
    }
    const first = await open({ room, parts: { answer } })
    const [button] = buttonsOf(await ask(first, payload('command')))
    expect(button?.custom_id).toMatch(/^1:say#\S{1,90}$/u)
    await first.discord.stop()

    const second = await open({ room })
    expect(wordsOf(await ask(second, press(button?.custom_id ?? '')))).toContain('Added: ')
    await room.close()
  })

  it('whose line is kept no more says so', async () => {
    const bot = await open()
    expect(wordsOf(await ask(bot, press('1:say#no-such-name')))).toContain('kept no more')
    expect(wordsOf(await ask(bot, press('1:edit#no-such-name')))).toContain('kept no more')
  })

  it('of another version says so, to the presser alone', async () => {
    const bot = await open()
    const call = await ask(bot, press('0:something-old'))
    expect(call.body).toMatchObject({ type: 4, data: { flags: 64 | 32768 } })
    expect(JSON.stringify(call.body)).toContain('another version')
  })

  it('of a line that lacks something opens a form', async () => {
    const bot = await open()
    const call = await ask(bot, press('1:ask:spacing piece=2in'))
    expect(call.body).toMatchObject({ type: 9, data: { custom_id: '1:ask:spacing piece=2in' } })
    const labels = ((call.body as Json).data as { components: { label: string }[] }).components.map(
      ({ label }) => label,
    )
    expect(labels).toEqual(['span', 'count', 'gap', 'ends'])
    expect(bot.loopback.faults).toEqual([])
  })
})

describe('a form', () => {
  it('opens for a command that says nothing, as its first response, and is answered when filled in', async () => {
    const bot = await open()
    const opened = await ask(bot, slash('sizing'))
    const { custom_id: id, components } = (opened.body as { data: { custom_id: string; components: Json[] } })
      .data
    expect((opened.body as Json).type).toBe(9)
    expect(components.map(({ label }) => label)).toEqual(['object', 'height', 'clearance', 'sheet', 'strip'])
    const answered = await ask(
      bot,
      form(id, { object: '17in x 13in', height: '15in', sheet: '', clearance: '' }),
    )
    expect(wordsOf(answered)).toContain('Cut 2 end panels')
    expect(bot.loopback.faults).toEqual([])
  })

  it('takes what the documentation shows', async () => {
    const bot = await open()
    expect(wordsOf(await ask(bot, payload('form')))).toContain('Cut 2 end panels')
  })

  it('opens in time where the store does not answer, and is answered when filled in', async () => {
    const room = await openRoom({ search })
    const keeping = createKeeping(room.store, 'discord', () => new Date())
    let isStuck = true
    const keepLine: Keeping['keepLine'] = (line, user) =>
      isStuck ? new Promise(() => undefined) : keeping.keepLine(line, user)
    const slow = { ...keeping, keepLine }
    const bot = await open({ room, keeping: slow })
    const piece = 'what the shop had '.repeat(6)
    const options = [{ name: 'piece', type: 3, value: piece }]
    const command = slash('spacing piece=2in')
    const opened = await ask(bot, { ...command, data: { ...(command.data as Json), options } })
    const { custom_id: id } = (opened.body as { data: { custom_id: string } }).data
    expect(opened.body).toMatchObject({ type: 9 })
    isStuck = false
    const answered = await ask(bot, form(id, { span: '36in', count: '3' }))
    expect(wordsOf(answered)).toContain('what the shop had')
    await room.close()
  })

  it('offers choices, and keeps what was given already', async () => {
    const bot = await open()
    const given = {
      ...slash('convert 1in'),
      data: { ...(slash('convert 1in').data as Json), options: [{ name: 'to', type: 3, value: 'mm' }] },
    }
    const opened = await ask(bot, given)
    const { custom_id: id, components } = (opened.body as { data: { custom_id: string; components: Json[] } })
      .data
    expect(id).toBe('1:ask:convert to=mm')
    expect(components).toContainEqual(
      expect.objectContaining({
        label: 'tape',
        component: expect.objectContaining({ type: 3, required: false }),
      }),
    )
    expect(wordsOf(await ask(bot, form(id, { value: '2in', tape: [] })))).toContain('50.8 mm')
    expect(wordsOf(await ask(bot, form(id, { value: '2.03in', tape: ['1/64'] })))).toContain('51.56')
  })

  it('lets a line that was refused be mended', async () => {
    const bot = await open()
    const refused = await ask(bot, slash('strips 2x6 rip=half'))
    expect(wordsOf(refused)).toContain('"half"')
    const [change] = buttonsOf(refused)
    expect(change).toMatchObject({ label: 'Change the line', custom_id: '1:edit:strips board=2x6 rip=half' })
    const opened = await ask(bot, press(change?.custom_id ?? ''))
    const { custom_id: id, components } = (opened.body as { data: { custom_id: string; components: Json[] } })
      .data
    const field = components[0]?.component as Json
    expect(field.value).toBe('strips board=2x6 rip=half')
    const mended = await ask(bot, form(id, { [String(field.custom_id)]: 'strips board=2x6 rip=1/2in' }))
    expect(wordsOf(mended)).toContain('9 strips')
    expect(bot.loopback.faults).toEqual([])
  })
})

describe('showing to all', () => {
  const shared = async (bot: Bot, event: Json) => {
    const sent = bot.loopback.interact(event)
    return bot.loopback.call(
      ({ method, path }) => method === 'POST' && path.startsWith(`/webhooks/`) && path.includes(sent.token),
    )
  }
  it('says the same once more where all see it, without asking again, and only once', async () => {
    let asked = 0
    const room = await openRoom({ search })
    const answer: typeof room.answer = async (request) => {
      asked += 1
      return room.answer(request)
    }
    const bot = await open({ room, parts: { answer } })
    await ask(bot, slash('project start 17in x 13in height=15in'))
    const message = bot.loopback.published
    const shown = await shared(bot, press('1:share:', message))
    expect(wordsOf(shown)).toContain('Kept for this channel')
    expect(wordsOf(shown)).toContain('shown by Maria')
    expect(wordsOf(shown)).not.toContain('Show to all')
    expect(wordsOf(shown)).toContain('Undo')
    expect((shown.body as Json).flags).toBe(32768)
    const again = await shared(bot, press('1:share:', message))
    expect(wordsOf(again)).toContain('shown to all already')
    expect((again.body as Json).flags).toBe(32768 | 64)
    expect(asked).toBe(1)
    expect(bot.loopback.faults).toEqual([])
    await room.close()
  })

  it('has one effect for two taps in a row', async () => {
    const bot = await open()
    await ask(bot, slash('project start 17in x 13in height=15in'))
    const message = bot.loopback.published
    for (const _ of [1, 2]) bot.loopback.interact(press('1:share:', message))
    const heard = ({ path, status }: Call) => path.endsWith('/callback') && status === 204
    await vi.waitFor(() => expect(bot.loopback.calls.filter(heard)).toHaveLength(3))
    await bot.discord.stop()
    const shown = bot.loopback.calls.filter(
      ({ method, path, body }) =>
        method === 'POST' && path.startsWith('/webhooks/') && (body as Json).flags === 32768,
    )
    expect(shown).toHaveLength(1)
  })

  it('that Discord did not take is told to the presser, and works when pressed again', async () => {
    const bot = await open()
    await ask(bot, slash('project start 17in x 13in height=15in'))
    const message = bot.loopback.published
    const answer = { status: 400, body: { message: 'Invalid Form Body', code: 50035 } }
    bot.loopback.otherwise({ method: 'POST', path: /^\/webhooks\//u, answer })
    const sent = bot.loopback.interact(press('1:share:', message))
    const told = await bot.loopback.call(
      ({ path, status }) => path.startsWith('/webhooks/') && path.includes(sent.token) && status === 200,
    )
    expect(wordsOf(told)).toContain('press the button again')
    expect((told.body as Json).flags).toBe(32768 | 64)
    const shown = await shared(bot, press('1:share:', message))
    expect(wordsOf(shown)).toContain('Kept for this channel')
  })

  const withPicture = async (): Promise<Response> => {
    const room = await openRoom({ search })
    const response = await room.ask('convert 1in')
    await room.close()
    if (!response.ok) throw new Error(response.error)
    const pictures = [{ name: 'plan', alt: 'Two panels', scene: { width: 1, height: 1, shapes: [] } }]
    const files = [{ name: 'cuts.csv', type: 'text/csv', content: 'a,b\r\n' }]
    return { ...response, reply: { ...response.reply, pictures, files } }
  }

  it('takes pictures and files along', async () => {
    const bot = await open({ parts: { answer: withPicture } })
    await ask(bot, payload('command'))
    const message = bot.loopback.published
    const shown = await shared(bot, press('1:share:', message))
    expect(shown.files.map(({ name }) => name)).toEqual(['plan.png', 'cuts.csv'])
    expect(shown.files[0]?.bytes).toEqual(PIXEL)
    expect((shown.body as Json).attachments).toEqual([{ id: '0', description: 'Two panels' }, { id: '1' }])
    expect(bot.loopback.faults).toEqual([])
  })

  it('says so where they are gone', async () => {
    const bot = await open({ parts: { answer: withPicture } })
    await ask(bot, payload('command'))
    const message = bot.loopback.published
    bot.loopback.otherwise({ path: /^\/files\//u, answer: { status: 404 }, times: 2 })
    const shown = await shared(bot, press('1:share:', message))
    expect(shown.files).toEqual([])
    expect(wordsOf(shown)).toContain('could not be taken along')
    expect(bot.loopback.faults).toEqual([])
  })

  it('says what is missing where a server keeps the answer to the asker', async () => {
    const bot = await open()
    const { guild_id, authorizing_integration_owners, app_permissions } = payload('commandOfUser')
    const sent = bot.loopback.interact({
      ...press('1:share:'),
      guild_id,
      authorizing_integration_owners,
      app_permissions,
    })
    const told = await bot.loopback.call(
      (call) => call.path.includes(sent.token) && wordsOf(call).includes('Use External Apps'),
    )
    expect((told.body as Json).flags).toBe(32768 | 64)
  })
})
