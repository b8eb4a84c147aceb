import { afterAll, describe, expect, it } from 'vitest'
import { z } from 'zod'
import type { Catalogue } from '../../src/bot/catalogue.ts'
import { type Command, defineAction, defineCommand, defineVerbs } from '../../src/bot/command.ts'
import { readLine } from '../../src/bot/line.ts'
import { first, length, optionTable, words } from '../../src/bot/option.ts'
import { Refusal } from '../../src/bot/refusal.ts'
import type { Invocation, Response } from '../../src/bot/request.ts'
import { renderJson } from '../../src/platforms/ask/render.ts'
import { createSearch } from '../../src/search/pool.ts'
import { before } from '../beforeExample.ts'
import { catalogue, examples, openRoom } from '../room.ts'

const stopped = { aborted: false }

const only: Record<string, Command> = {
  slow: defineCommand({
    name: 'slow',
    summary: 'Takes for ever',
    examples: ['slow'],
    options: z.strictObject({}),
    run: (_input, { signal }) =>
      new Promise<never>(() => {
        signal.addEventListener('abort', () => {
          stopped.aborted = true
        })
      }),
  }),
  large: defineCommand({
    name: 'large',
    summary: 'Makes something large, for ever',
    examples: ['large'],
    options: z.strictObject({}),
    patience: 3,
    run: () => new Promise<never>(() => undefined),
  }),
  broken: defineCommand({
    name: 'broken',
    summary: 'Throws what nobody expects',
    examples: ['broken'],
    options: z.strictObject({ secret: words('anything', 'x').optional() }),
    run: () => {
      throw new TypeError('cannot read properties of undefined (reading "kerf")')
    },
  }),
  late: defineCommand({
    name: 'late',
    summary: 'Fails after a while',
    examples: ['late'],
    options: z.strictObject({}),
    run: async () => {
      await new Promise((done) => setTimeout(done, 1))
      throw new Refusal('unsafe', 'not round a fire')
    },
  }),
  noted: defineCommand({
    name: 'noted',
    summary: 'Has notes of its own',
    examples: ['noted 15'],
    options: z.strictObject({ cut: first(length('the cut')), again: length('another').optional() }),
    run: () => ({ answer: 'cut', notes: ['own note', 'own note'], figures: {} }),
  }),
  plain: defineCommand({
    name: 'plain',
    summary: 'Has no notes',
    examples: ['plain'],
    options: z.strictObject({}),
    run: () => ({ answer: 'plain', figures: {} }),
  }),
  shelf: defineVerbs({
    name: 'shelf',
    summary: 'Has verbs',
    examples: ['shelf'],
    verbs: {
      show: defineAction({
        summary: 'Shows',
        options: z.strictObject({ what: first(words('it', 'it')).optional() }),
        run: ({ what }) => ({ answer: `shown ${what}`, figures: {} }),
      }),
      fill: defineAction({
        summary: 'Fills',
        options: z.strictObject({ what: first(words('it', 'it')) }),
        run: ({ what }) => ({ answer: `filled ${what}`, figures: {} }),
      }),
    },
    fallback: 'show',
  }),
}
const own: Catalogue = new Map(Object.entries(only))

describe('what becomes of a command', () => {
  it('is stopped when its time is up, and the person is told', async () => {
    const room = await openRoom({ catalogue: own, settings: { commandSeconds: 0.02 } })
    expect(await room.refusal('slow')).toBe(
      'fault: this took longer than 0.02 s and was stopped; try a smaller question',
    )
    expect(stopped.aborted).toBe(true)
    expect(room.logged).toEqual([])
    await room.close()
  })

  it('may take longer where its making asks for patience', async () => {
    const settings = { commandSeconds: 0.02 }
    const room = await openRoom({ catalogue: own, settings })
    expect(await room.refusal('large')).toMatch(/^fault: this took longer than 0\.06 s/u)
    await room.close()
  })

  it('is a reference number and a log line when it breaks, and nothing else', async () => {
    const room = await openRoom({ catalogue: own })
    expect(await room.ask('broken secret=hush')).toEqual({
      ok: false,
      kind: 'fault',
      error: 'something went wrong here, not with your line; nothing was changed. Reference fault-1',
    })
    expect(await room.refusal('broken')).toContain('Reference fault-2')
    expect(room.logged).toHaveLength(2)
    expect(room.logged[0]?.facts).toMatchObject({
      number: 'fault-1',
      invocation: { line: 'broken secret=hush' },
    })
    expect(room.logged[0]?.facts).toHaveProperty('err', expect.any(TypeError))
    expect((await room.reply('plain')).answer).toBe('plain')
    await room.close()
  })

  it('is a sentence when it refuses, even late', async () => {
    const room = await openRoom({ catalogue: own })
    expect(await room.refusal('late')).toBe('unsafe: not round a fire')
    expect(room.logged).toEqual([])
    await room.close()
  })

  it('says what was assumed in reading before its own notes, each once', async () => {
    const room = await openRoom({ catalogue: own, settings: { units: 'inch' } })
    const { notes } = await room.reply('noted 15')
    expect(notes?.at(-1)).toBe('own note')
    expect(notes?.slice(0, -1)).toEqual([expect.stringContaining('15')])
    expect((await room.reply('noted 15 again=15')).notes).toEqual(notes)
    expect((await room.reply('plain')).notes).toBeUndefined()
    await room.close()
  })

  it('is the same when the store is gone: one sentence, with the reason in the log', async () => {
    const room = await openRoom({ catalogue: own })
    await room.store.close()
    expect(await room.refusal('plain')).toMatch(/^fault: .* Reference fault-1$/u)
    expect(room.logged).toHaveLength(1)
  })
})

describe('verbs', () => {
  it.each<[string, Invocation, string]>([
    ['none', { line: 'shelf' }, 'shown undefined'],
    ['none, as a form', { command: 'shelf', options: {} }, 'shown undefined'],
    ['one', { line: 'shelf fill screws and glue' }, 'filled screws and glue'],
    ['one in capitals', { line: '/Shelf FILL screws' }, 'filled screws'],
    ['one, as a form', { command: 'shelf', verb: 'fill', options: { what: 'screws' } }, 'filled screws'],
  ])('%s', async (_, invocation, answer) => {
    const room = await openRoom({ catalogue: own })
    expect(await room.invoke(invocation)).toMatchObject({ ok: true, reply: { answer } })
    await room.close()
  })

  it.each<[Invocation, string]>([
    [{ line: 'shelf fil screws' }, 'shelf cannot "fil"; it can show, fill. Did you mean fill?'],
    [{ line: 'shelf constructor' }, 'shelf cannot "constructor"; it can show, fill.'],
    [{ command: 'shelf', verb: 'toString', options: {} }, 'shelf cannot "toString"; it can show, fill.'],
    [{ command: 'shelf', verb: '__proto__', options: {} }, 'shelf cannot "__proto__"; it can show, fill.'],
    [{ command: 'plain', verb: 'fill', options: {} }, 'plain has no "fill"; leave it out'],
    [{ line: 'toString' }, 'there is no command "toString"; "help" lists them all.'],
    [{ line: '12.5' }, 'there is no command "12.5"; for a measure write: convert 12.5'],
    [{ line: '24 x 36 in' }, 'there is no command "24"; for a measure write: convert 24 x 36 in'],
    [{ line: '40 sq ft' }, 'there is no command "40"; for a measure write: finish 40 sq ft'],
    [{ command: 'constructor', options: {} }, 'there is no command "constructor"; "help" lists them all.'],
    [
      { command: 'plian', options: {} },
      'there is no command "plian"; "help" lists them all. Did you mean plain?',
    ],
    [
      { command: 'shelf', options: { wat: 'x' } },
      'there is no option "wat" here; there is what. Did you mean what?',
    ],
  ])('%j is unknown', async (invocation, error) => {
    const room = await openRoom({ catalogue: own })
    expect(await room.invoke(invocation)).toEqual({ ok: false, kind: 'unknown', error })
    await room.close()
  })
})

/** A typed line as a platform with forms sends it. */
function asForm(line: string): Invocation {
  const { command, first: words, options } = readLine(line)
  const found = catalogue.get(command)
  const [word = '', ...rest] = words.split(' ')
  const verb = found?.verbs && Object.hasOwn(found.verbs, word) ? word : undefined
  const action = found?.action ?? found?.verbs?.[verb ?? found.fallback ?? '']
  const leading = verb ? rest.join(' ') : words
  const name = action && optionTable(action.options).find((option) => option.first)?.name
  const named = [...(leading && name ? [[name, leading] as const] : []), ...options]
  return { command, ...(verb && { verb }), options: Object.fromEntries(named) }
}

/** Buttons repeat the line as it came, so they differ in words. */
const withoutButtons = (response: Response): unknown => {
  const { reply, ...rest } = JSON.parse(renderJson(response)) as {
    reply?: { buttons?: unknown; text?: unknown }
  }
  return { ...rest, reply: { ...reply, buttons: undefined, text: undefined } }
}

describe('a form', () => {
  // Shared, so that a layout is searched once and remembered with the time it took.
  const search = createSearch({ threads: 1, queue: 8 })
  afterAll(() => search.close())

  it.each(examples)('of %s gives what the line gives: %s', async (_, line) => {
    const [typed, sent] = [await openRoom({ search }), await openRoom({ search })]
    for (const room of [typed, sent])
      for (const earlier of ['project start 17in x 13in height=15in', ...before(line)])
        await room.reply(earlier)
    const answered = await typed.ask(line)
    expect(withoutButtons(await sent.invoke(asForm(line)))).toEqual(withoutButtons(answered))
    expect(answered.ok).toBe(true)
    await typed.close()
    await sent.close()
  })

  it('keeps what the button of a line keeps', async () => {
    const room = await openRoom()
    const line = 'sizing 17in x 13in height=15in sheet=1/2 ply'
    for (const invocation of [{ line }, asForm(line)]) {
      const response = await room.invoke(invocation)
      const button = response.ok ? response.reply.buttons?.[0]?.line : undefined
      const kept = await room.reply(button ?? '')
      expect(kept.figures).toEqual(response.ok && response.reply.figures)
      await room.reply('project forget sure=yes')
    }
    await room.close()
  })

  it('has numbers and switches as they are', async () => {
    const room = await openRoom()
    const spacing = { command: 'spacing', options: { span: '36in', piece: '3 1/2in', count: 6 } }
    expect(await room.invoke(spacing)).toMatchObject({ ok: true, reply: { figures: { count: 6 } } })
    await room.reply('project start 17in x 13in height=15in')
    const forget = { command: 'project', verb: 'forget', options: { sure: true } }
    expect(await room.invoke(forget)).toMatchObject({ ok: true, reply: { figures: { deleted: 1 } } })
    await room.close()
  })

  it('is read no longer than a line is', async () => {
    const room = await openRoom()
    const response = await room.invoke({ command: 'convert', options: { value: '9'.repeat(10_000) } })
    expect(response).toMatchObject({
      ok: false,
      kind: 'invalid',
      error: expect.stringContaining('2000 is the most'),
    })
    await room.close()
  })
})
