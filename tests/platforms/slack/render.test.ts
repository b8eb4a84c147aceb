import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Reply } from '../../../src/bot/reply.ts'
import { inches } from '../../../src/core/measure/length.ts'
import { render } from '../../../src/platforms/slack/render.ts'
import { checkMessage } from './checkMessage.ts'
import { full, respond } from './replies.ts'

describe('a reply as a Slack message', () => {
  it('keeps the order: answer, cautions, tables, notes, buttons; files go beside it', () => {
    const { text, blocks, pictures, files } = render(respond(full))
    expect(blocks).toEqual([
      {
        type: 'section',
        text: { type: 'mrkdwn', text: 'Cut 2 panels 18 x 15 in &amp; &lt;mark&gt; them', verbatim: true },
      },
      { type: 'section', text: { type: 'mrkdwn', text: '! Guard on.', verbatim: true } },
      {
        type: 'section',
        text: { type: 'mrkdwn', text: '```\nPanels (in)\n   Long\n-  ----\nA    18\n```', verbatim: true },
      },
      { type: 'context', elements: [{ type: 'mrkdwn', text: '- kerf 1/8 in', verbatim: true }] },
      {
        type: 'actions',
        elements: [
          {
            type: 'button',
            action_id: 'line:0',
            text: { type: 'plain_text', text: 'Undo', emoji: false },
            value: 'project undo',
          },
        ],
      },
    ])
    expect(text).toBe(
      'Cut 2 panels 18 x 15 in &amp; &lt;mark&gt; them\n\n! Guard on.\n\nPanels (in)\n   Long\n-  ----\nA    18\n\n- kerf 1/8 in',
    )
    expect([pictures, files]).toEqual([full.pictures, full.files])
    expect(checkMessage({ text, blocks })).toEqual([])
  })

  it('says a refusal as it is', () => {
    expect(render({ ok: false, kind: 'invalid', error: 'too wide; <cut> less' })).toEqual({
      text: 'too wide; &lt;cut&gt; less',
      blocks: [
        { type: 'section', text: { type: 'mrkdwn', text: 'too wide; &lt;cut&gt; less', verbatim: true } },
      ],
      pictures: [],
      files: [],
    })
  })

  it('does not let the words of a table end its code block', () => {
    const table = { columns: ['Part', 'Long'], rows: [['```<!here>', { length: inches(3) }]] }
    const { text, blocks } = render(respond({ answer: 'one', tables: [table], figures: {} }))
    expect(checkMessage({ text, blocks })).toEqual([])
    expect(JSON.stringify(blocks)).toContain("'''&lt;!here&gt;")
  })

  it('splits many buttons over blocks and leaves out a line that no button holds', () => {
    const buttons = Array.from({ length: 12 }, (_, index) => ({
      label: `Button ${index}`,
      line: `strips ${index}`,
    }))
    const long = { label: 'Long', line: 'x'.repeat(2001) }
    const { text, blocks } = render(respond({ answer: 'one', buttons: [...buttons, long], figures: {} }))
    expect(checkMessage({ text, blocks })).toEqual([])
    expect(blocks.filter(({ type }) => type === 'actions')).toHaveLength(3)
    expect(JSON.stringify(blocks)).not.toContain('Long')
  })
})

const longReply: Reply = {
  ...full,
  cautions: Array.from({ length: 20 }, (_, index) => ({
    id: `c${index}`,
    task: 'rip',
    text: `Caution ${index}: mind & take <care>. `.repeat(3).trim(),
  })),
  tables: Array.from({ length: 30 }, (_, index) => ({
    title: `Table ${index}`,
    columns: ['Part', 'Long', 'Wide'],
    rows: Array.from({ length: 40 }, (_, row) => [`Part <${row}>`, { length: inches(row) }, row]),
  })),
  notes: Array.from({ length: 100 }, (_, index) => `note ${index} `.repeat(10)),
}

describe('a reply that is too long', () => {
  it('gives way within every limit, and never in its answer or cautions', () => {
    const { text, blocks, files } = render(respond(longReply))
    expect(checkMessage({ text, blocks })).toEqual([])
    const said = JSON.stringify(blocks)
    expect(said).toContain('Cut 2 panels 18 x 15 in &amp; &lt;mark&gt; them')
    for (const index of longReply.cautions!.keys()) expect(said).toContain(`Caution ${index}: mind`)
    expect(said).toMatch(/rows of Table \d+ in the file/u)
    expect(files.map(({ name }) => name)).toContain('table-0-1.csv')
  })

  it('leaves room for the buttons of a private answer', () => {
    expect(JSON.stringify(render(respond(longReply)).blocks).length).toBeLessThanOrEqual(9000)
  })

  it('keeps every part of an answer longer than one section', () => {
    const answer = Array.from({ length: 700 }, (_, index) => `word${index}`).join(' ')
    const { blocks } = render(respond({ answer, figures: {} }))
    const said = blocks
      .map((block) => ('text' in block ? (block.text as { text: string }).text : ''))
      .join(' ')
    expect(said.split(/\s+/u)).toEqual(answer.split(' '))
    expect(blocks.length).toBeGreaterThan(1)
  })
})

describe('whatever a reply says', () => {
  const words = fc.oneof(
    fc.string({ minLength: 1, maxLength: 200, unit: 'grapheme' }),
    fc.constantFrom('<!channel>', '<@U1|ann>', '&amp;', '&', '```', '`a`', '*b* _c_ ~d~', '<http://a.b|c>'),
  )
  const cell = fc.oneof(
    words,
    fc.integer(),
    fc.integer({ min: 0, max: 400 }).map((each) => ({ length: inches(each) })),
  )

  it('is within the limits and pings nobody', () => {
    fc.assert(
      fc.property(
        fc.record({
          answer: words,
          cautions: fc.array(
            words.map((text) => ({ id: 'x', task: 'rip', text })),
            { maxLength: 3 },
          ),
          tables: fc.array(
            fc.record({
              title: words,
              columns: fc.constant(['Part', 'Long', 'Wide']),
              rows: fc.array(fc.tuple(cell, cell, cell), { maxLength: 60 }),
            }),
            { maxLength: 4 },
          ),
          notes: fc.array(words, { maxLength: 30 }),
        }),
        (parts) => {
          const blank = (text: string) => text.trim() || 'blank'
          const reply = { ...parts, answer: blank(parts.answer), figures: {} }
          const { text, blocks } = render(respond(reply))
          expect(checkMessage({ text, blocks })).toEqual([])
        },
      ),
      { numRuns: 150 },
    )
  })
})

describe('the words under the blocks', () => {
  it('say how many cautions there was no room for, and cut no entity in two', () => {
    const cautions = Array.from({ length: 60 }, (_, row) => ({
      id: 'rip',
      task: 'rip',
      text: `Caution ${row}: keep the guard on & use a push stick for narrow strips on the saw, always.`,
    }))
    const { text } = render(respond({ answer: 'Cut 2 panels', figures: {}, cautions }))
    expect(text.length).toBeLessThanOrEqual(4000)
    expect(text).toMatch(/^Cut 2 panels\n! Caution 0: .*\n! \d+ more below$/su)
    const long = render(respond({ answer: '&'.repeat(5000), figures: {} })).text
    expect(long.length).toBeLessThanOrEqual(4000)
    expect(long).toMatch(/^(?:&amp;)+\.\.\.$/u)
  })
})
