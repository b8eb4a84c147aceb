import { describe, expect, it } from 'vitest'
import type { Reply } from '../../../src/bot/reply.ts'
import { showIn } from '../../../src/bot/show.ts'
import { inches } from '../../../src/core/measure/length.ts'
import { shortId } from '../../../src/platforms/discord/customId.ts'
import { limits } from '../../../src/platforms/discord/limits.ts'
import { render } from '../../../src/platforms/discord/render.ts'
import { onTheWire } from '../renderers.ts'
import { checkMessage, flattened, type WireMessage } from './checkMessage.ts'

const inch = { units: 'inch', tape: 16, millimetreStep: 1 } as const
const show = showIn(inch, { ...inch, tape: 32 })

const full: Reply = {
  answer: 'Cut 2 panels 18 x 15 in',
  cautions: [{ id: 'guard', task: 'rip', text: 'Guard on.' }],
  tables: [{ title: 'Panels (in)', columns: ['', 'Long'], rows: [['A', { length: inches(18) }]] }],
  pictures: [{ name: 'panels', alt: 'Two panels', scene: { width: 1, height: 1, shapes: [] } }],
  notes: ['kerf 1/8 in'],
  files: [{ name: 'cuts.csv', type: 'text/csv', content: 'a,b\r\n' }],
  buttons: [{ label: 'Undo', line: 'project undo' }],
  figures: {},
}

const messages = (reply: Reply, terms?: Parameters<typeof render>[1]) =>
  render({ ok: true, reply, show }, terms)

describe('an answer', () => {
  it('reads from the top: answer, cautions, tables, pictures, notes, files, buttons', () => {
    expect(messages(full)).toEqual([
      {
        components: [
          { type: 10, content: '**Cut 2 panels 18 x 15 in**\n> Guard on.' },
          { type: 10, content: '**Panels (in)**\n```\n   Long\n-  ----\nA    18\n```' },
          {
            type: 12,
            items: [{ media: { url: 'attachment://panels.png' }, description: 'Two panels' }],
          },
          { type: 10, content: '- kerf 1/8 in' },
          { type: 13, file: { url: 'attachment://cuts.csv' } },
          {
            type: 1,
            components: [
              { type: 2, style: 2, label: 'Undo', custom_id: '1:say:project undo' },
              { type: 2, style: 2, label: 'Show to all', custom_id: '1:share:' },
            ],
          },
        ],
        uploads: [
          { name: 'panels.png', alt: 'Two panels', scene: { width: 1, height: 1, shapes: [] } },
          { name: 'cuts.csv', content: 'a,b\r\n' },
        ],
      },
    ])
  })

  it('whose cautions are too long for one message goes on in another, nothing of them lost', () => {
    const cautions = Array.from({ length: 60 }, (_, index) => ({
      id: `c${index}`,
      task: 'rip',
      text: `Mind ${index}: ${'word '.repeat(25)}end.`,
    }))
    const parts = messages({ ...full, cautions })
    expect(parts.length).toBeGreaterThan(1)
    expect(parts.flatMap((part) => checkMessage(onTheWire(part)))).toEqual([])
    const read = parts.flatMap(({ components }) => flattened(components)).map(({ content }) => content)
    for (const { text } of cautions) expect(read.join('\n')).toContain(`> ${text}`)
    expect(parts.at(-1)?.components.some(({ type }) => type === 1)).toBe(true)
  })

  it('that everybody sees cannot be shown to all once more', () => {
    const [message] = messages(full, {
      idOf: shortId,
      lacks: () => false,
      isPrivate: false,
      fileBytes: limits.fileBytes,
    })
    expect(JSON.stringify(message)).not.toContain('Show to all')
  })

  it('has a button that opens a form where its line lacks something', () => {
    const [message] = messages(full, {
      idOf: shortId,
      lacks: (line) => line === 'project undo',
      isPrivate: true,
      fileBytes: limits.fileBytes,
    })
    expect(JSON.stringify(message)).toContain('1:ask:project undo')
  })
})

describe('the checker', () => {
  const text = { type: 10, content: 'a' }
  const button = { type: 2, style: 2, label: 'a', custom_id: 'b' }
  const row = { type: 1, components: [button] }
  const wire = (components: readonly object[], more: object = {}, files: WireMessage['files'] = []) => ({
    payload: { flags: 1 << 15, allowed_mentions: { parse: [] }, components, ...more },
    files,
  })
  it('takes a good message', () => {
    expect(checkMessage(wire([text, row]))).toEqual([])
  })

  it.each<[string, WireMessage]>([
    ['content excludes', wire([text], { content: 'a' })],
    ['embeds excludes', wire([text], { embeds: [{ title: 'a' }] })],
    ['without parts', wire([])],
    ['41 parts', wire(Array.from({ length: 41 }, () => text))],
    [
      '4001 characters',
      wire([
        { type: 10, content: 'x'.repeat(2000) },
        { type: 10, content: 'x'.repeat(2001) },
      ]),
    ],
    ['a text: 0 characters', wire([{ type: 10, content: '' }])],
    ['two parts of one id', wire([row, row])],
    ['an id: 101 characters', wire([{ type: 1, components: [{ ...button, custom_id: 'x'.repeat(101) }] }])],
    ['a button: 81 characters', wire([{ type: 1, components: [{ ...button, label: 'x'.repeat(81) }] }])],
    [
      '6 in a row',
      wire([
        { type: 1, components: Array.from({ length: 6 }, (_, id) => ({ ...button, custom_id: `${id}` })) },
      ]),
    ],
    ['is shown but not there', wire([{ type: 13, file: { url: 'attachment://a.csv' } }])],
    ['is there but not shown', wire([text], { attachments: [{ id: '0' }] }, [{ name: 'a.csv', bytes: 1 }])],
    ['no kind that is shown', wire([{ type: 12, items: [{ media: { url: 'attachment://a.svg' } }] }])],
    [
      '11 pictures',
      wire([{ type: 12, items: Array.from({ length: 11 }, () => ({ media: { url: 'https://a/b.png' } })) }]),
    ],
    [
      'over 10 MiB',
      wire([{ type: 13, file: { url: 'attachment://a.csv' } }], { attachments: [{ id: '0' }] }, [
        { name: 'a.csv', bytes: 11 * 2 ** 20 },
      ]),
    ],
    ['may not be set', wire([text], { flags: (1 << 15) | 1 })],
    ['somebody would be called', wire([text], { allowed_mentions: { parse: ['users'] } })],
    ['left to what is usual', { payload: { flags: 1 << 15, components: [text] }, files: [] }],
    ['needs the flag', { payload: { components: [text], allowed_mentions: { parse: [] } }, files: [] }],
    ['type 2 at the top', wire([button])],
  ])('finds %s', (fault, message) => {
    expect(checkMessage(message).join('\n')).toContain(fault)
  })
})
