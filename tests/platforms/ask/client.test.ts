import { PassThrough, Readable } from 'node:stream'
import { describe, expect, it } from 'vitest'
import { type AskOptions, ask } from '../../../src/platforms/ask/client.ts'
import { openRoom } from '../../room.ts'

/** Asks in a fresh room; gives what was written, a line each, and whether all went well. */
async function run(options: Partial<AskOptions>, input = '') {
  const room = await openRoom()
  const output = new PassThrough()
  const who = { line: undefined, json: false, channel: 'bench', user: 'me' }
  const ok = await ask({ ...who, ...options }, room.answer, Readable.from([input]), output)
  await room.close()
  const text = String(output.read() ?? '')
  return { ok, text, lines: text.split('\n').filter((line) => line !== '') }
}

describe('ask', () => {
  it('answers one question in plain text', async () => {
    const { ok, text } = await run({ line: 'strips 2x6 rip=1/2in' })
    expect(ok).toBe(true)
    expect(text).toMatch(/^9 strips of 1\/2 in from each 2x6\b/u)
  })

  it('says a refusal in plain text', async () => {
    expect(await run({ line: 'stripes' })).toMatchObject({
      ok: false,
      text: 'there is no command "stripes"; "help" lists them all. Did you mean strips?\n',
    })
  })

  it('answers every line of the input with one object, a blank one too', async () => {
    const { ok, lines } = await run({ json: true }, 'strips 2x6 rip=1/2in\r\n\nunits\nstrips 2x6 rip=12\n')
    expect(ok).toBe(true)
    const answers = lines.map((line) => JSON.parse(line) as { ok: boolean; kind?: string })
    expect(answers.map(({ ok: fine, kind }) => kind ?? fine)).toEqual([true, 'unknown', true, 'ambiguous'])
  })

  it('keeps what one line sets for the next', async () => {
    const { lines } = await run(
      { json: true },
      'project start 17in x 13in height=15in\nproject\nproject undo\nproject',
    )
    expect(lines.map((line) => (JSON.parse(line) as { ok: boolean }).ok)).toEqual([true, true, true, false])
  })

  it('answers nothing for no input', async () => {
    expect(await run({ json: true })).toEqual({ ok: true, text: '', lines: [] })
  })
})

describe('an answer as JSON', () => {
  it('has the answer, the figures in mm and the reply with its cells shown', async () => {
    const { lines } = await run({ json: true, line: 'strips 2x6 rip=1/2in' })
    const answer = JSON.parse(lines[0] ?? '') as Record<string, unknown>
    expect(Object.keys(answer)).toEqual(['ok', 'answer', 'figures', 'reply'])
    expect(answer).toMatchObject({
      ok: true,
      answer: expect.stringMatching(/^9 strips of 1\/2 in from each 2x6/u),
      figures: { perBoard: 9, safePerBoard: 8, width: 139.7, boards: null },
      reply: { answer: answer.answer, text: expect.stringContaining(String(answer.answer)) },
    })
    const { tables, figures } = answer.reply as { tables: { rows: unknown[][] }[]; figures: unknown }
    expect(tables[0]?.rows[0]).toEqual(['1', '4 7/8'])
    expect(figures).toBeUndefined()
  })

  it('has the kind and the error of a refusal, and nothing else', async () => {
    const { lines } = await run({ json: true, line: 'sizing 17in x 13in height=15in wood=oak' })
    expect(Object.keys(JSON.parse(lines[0] ?? '') as object)).toEqual(['ok', 'kind', 'error'])
  })
})
