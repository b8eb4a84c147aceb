import { describe, expect, it } from 'vitest'
import type { Reply } from '../../src/bot/reply.ts'
import type { Response } from '../../src/bot/request.ts'
import { showIn } from '../../src/bot/show.ts'
import { inches } from '../../src/core/measure/length.ts'
import { renderJson, renderText } from '../../src/platforms/ask/render.ts'
import { render as renderRoom } from '../../src/platforms/room/render.ts'
import { replyText, replyWithNotice } from '../../src/platforms/text.ts'

const inch = { units: 'inch', tape: 16, millimetreStep: 1 } as const
const show = showIn(inch, { ...inch, tape: 32 })
const metric = { ...inch, units: 'metric' } as const
const showMetric = showIn(metric, { ...metric, millimetreStep: 0.5 })

const full: Reply = {
  answer: 'Cut 2 panels 18 x 15 in',
  cautions: [
    { id: 'a', task: 'rip', text: 'Guard on.' },
    { id: 'b', task: 'rip', text: 'Glasses on.' },
  ],
  tables: [
    { title: 'Panels (in)', columns: ['', 'Long'], rows: [['A', { length: inches(18) }]] },
    { columns: ['Cut'], rows: [[1]] },
  ],
  notes: ['one', 'two'],
  files: [{ name: 'cuts.csv', type: 'text/csv', content: 'a,b' }],
  buttons: [{ label: 'Undo', line: 'project undo' }],
  figures: { long: 457.2 },
}

describe('a reply as text', () => {
  it('keeps the order: answer, cautions, tables, notes, files, buttons', () => {
    expect(replyText(full, show)).toBe(
      [
        'Cut 2 panels 18 x 15 in',
        '',
        '! Guard on.',
        '! Glasses on.',
        '',
        'Panels (in)',
        '   Long',
        '-  ----',
        'A    18',
        '',
        'Cut',
        '---',
        '  1',
        '',
        '- one',
        '- two',
        '',
        'file: cuts.csv',
        '',
        'Undo: project undo',
      ].join('\n'),
    )
  })

  it('has no empty parts', () => {
    expect(replyText({ answer: 'just this', figures: {} }, show)).toBe('just this')
    expect(replyText({ answer: 'just this', notes: [], tables: [], cautions: [], figures: {} }, show)).toBe(
      'just this',
    )
  })

  it('prints cells in the units of the person who asks', () => {
    expect(replyText(full, showMetric)).toContain('A   457')
  })
})

/** Every platform says what it makes of one response: the record leaves none out. */
const renders = (response: Response) => ({
  room: renderRoom(response),
  ask: renderText(response),
  json: renderJson(response),
})

describe('renderers', () => {
  it('give the same text in the room and to ask, and cells as text in JSON', () => {
    const { room, ask, json } = renders({ ok: true, reply: full, show })
    expect(room).toBe(ask)
    expect(JSON.parse(json)).toEqual({
      ok: true,
      answer: full.answer,
      figures: full.figures,
      reply: {
        answer: full.answer,
        cautions: full.cautions,
        tables: [
          { title: 'Panels (in)', columns: ['', 'Long'], rows: [['A', '18']] },
          { columns: ['Cut'], rows: [['1']] },
        ],
        notes: full.notes,
        files: [{ name: 'cuts.csv', type: 'text/csv' }],
        buttons: full.buttons,
        text: room,
      },
    })
  })

  it('say a refusal as it is', () => {
    expect(renders({ ok: false, kind: 'invalid', error: 'too wide; cut less' })).toEqual({
      room: '? too wide; cut less',
      ask: 'too wide; cut less',
      json: '{"ok":false,"kind":"invalid","error":"too wide; cut less"}',
    })
  })
})

describe('a notice in a terminal', () => {
  const notice = { name: 'group', revision: 1, reply: { ...full, answer: 'The list of all kits' } }
  const reply: Reply = { answer: 'Version 1 is up', figures: {}, notice }

  it('stands under a heading of its own', () => {
    const text = replyWithNotice(reply, show)
    expect(text).toMatch(/^Version 1 is up\n\nFor everybody here:\n\nThe list of all kits\n/u)
    expect(renderRoom({ ok: true, reply, show })).toBe(text)
    expect(renderText({ ok: true, reply, show })).toBe(text)
    expect(replyWithNotice(full, show)).toBe(replyText(full, show))
  })

  it('comes with the numbers for scripts, its tables as they are shown', () => {
    const read = JSON.parse(renderJson({ ok: true, reply, show })) as {
      reply: { notice: { name: string; reply: { answer: string; tables: { rows: unknown[][] }[] } } }
    }
    expect(read.reply.notice).toMatchObject({ name: 'group', reply: { answer: 'The list of all kits' } })
    for (const row of read.reply.notice.reply.tables.flatMap(({ rows }) => rows))
      for (const cell of row) expect(cell).toBeTypeOf('string')
  })
})
