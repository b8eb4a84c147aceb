import fc from 'fast-check'
import { afterAll, describe, expect, it } from 'vitest'
import type { Reply, Table } from '../../src/bot/reply.ts'
import type { Response } from '../../src/bot/request.ts'
import { showIn } from '../../src/bot/show.ts'
import { inches } from '../../src/core/measure/length.ts'
import { createSearch } from '../../src/search/pool.ts'
import { examples, openRoom } from '../room.ts'
import { renderers } from './renderers.ts'
import { type Rendered, renders, rendersResponse } from './renders.ts'

const search = createSearch({ threads: 1, queue: 8 })
afterAll(() => search.close())

const inch = { units: 'inch', tape: 16, millimetreStep: 1 } as const
const show = showIn(inch, { ...inch, tape: 32 })

const faultsOf = (rendered: readonly Rendered[]) =>
  rendered.flatMap(({ platform, faults }) => faults.map((fault) => `${platform}: ${fault}`))

const PLAN = 'project start 17in x 13in height=15in sheet=1/2 ply'

async function answerTo(line: string): Promise<Response> {
  const room = await openRoom({ search })
  await room.ask(PLAN)
  const response = await room.ask(line)
  await room.close()
  return response
}

describe('every example of every command', () => {
  it.each(examples)('%s: %s fits every platform, with its answer and cautions whole', async (_, line) => {
    const response = await answerTo(line)
    const rendered = rendersResponse(response, renderers)
    expect(rendered).toHaveLength(3)
    expect(faultsOf(rendered)).toEqual([])
    for (const { platform, text } of rendered) {
      const said = response.ok
        ? [response.reply.answer, ...(response.reply.cautions ?? []).map((caution) => caution.text)]
        : [response.error]
      for (const words of said) expect(text, platform).toContain(words)
    }
  })
})

const table = (title: string, rows: number, columns = 2): Table => ({
  title,
  columns: Array.from({ length: columns }, (_, index) => (index === 0 ? 'Part' : `Long ${index}`)),
  rows: Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_each, index) =>
      index === 0 ? `P${row + 1}` : { length: inches(row + index) },
    ),
  ),
})

const scene = { width: 1, height: 1, shapes: [] }
const many = <Each>(count: number, make: (index: number) => Each): readonly Each[] =>
  Array.from({ length: count }, (_, index) => make(index))

const base: Reply = {
  answer: 'Cut 2 end panels 14 15/16 x 15 in and 2 side panels 18 x 15 in',
  cautions: [{ id: 'guard', task: 'rip', text: 'Guard on, glasses on.' }],
  figures: {},
}

const OVERSIZE: Readonly<Record<string, Partial<Reply>>> = {
  'a table of 5000 rows': { tables: [table('Strips', 5000)] },
  'ten tables of 100 rows': { tables: many(10, (index) => table(`Table ${index}`, 100)) },
  'sixty tables of one row': { tables: many(60, (index) => table(`Table ${index}`, 1)) },
  'a table of forty columns': { tables: [table('Wide', 30, 40)] },
  'a cell of 6000 letters': { tables: [{ columns: ['Part', 'Note'], rows: [['A', 'x'.repeat(6000)]] }] },
  'a note of 4000 letters': { notes: ['kerf 1/8 in', 'word '.repeat(800).trim()] },
  'two hundred notes': { notes: many(200, (index) => `note ${index} of a very long answer indeed`) },
  'sixty buttons': { buttons: many(60, (index) => ({ label: `Part ${index}`, line: `help ${index}` })) },
  'the same button twice': { buttons: many(2, () => ({ label: 'Undo', line: 'project undo' })) },
  'a button of 300 letters': { buttons: [{ label: 'x'.repeat(300), line: 'project undo' }] },
  'twenty pictures': {
    pictures: many(20, (index) => ({ name: `plan ${index}`, alt: 'x'.repeat(3000), scene })),
  },
  'thirty files': {
    files: many(30, (index) => ({ name: `cuts ${index}.csv`, type: 'text/csv', content: 'a\r\n' })),
  },
  'a file of 30 MB': {
    files: [{ name: 'plan.pdf', type: 'application/pdf', content: new Uint8Array(30 * 2 ** 20) }],
  },
  'twenty cautions': {
    cautions: many(20, (index) => ({
      id: `c${index}`,
      task: 'rip',
      text: `Mind ${index}: ${'word '.repeat(25)}end.`,
    })),
  },
  'everything at once': {
    tables: many(3, (index) => table(`Table ${index}`, 800, 4)),
    notes: many(50, (index) => `note ${index}: ${'word '.repeat(30)}`.trim()),
    buttons: many(60, (index) => ({ label: `Part ${index}`, line: `help ${index}` })),
    pictures: many(12, (index) => ({ name: 'plan', alt: `Sheet ${index}`, scene })),
    files: many(12, (index) => ({ name: `cuts-${index}.csv`, type: 'text/csv', content: 'a\r\n' })),
  },
}

describe('a reply that is too large', () => {
  it.each(Object.entries(OVERSIZE))('with %s fits every platform, answer and cautions whole', (_, parts) => {
    const reply = { ...base, ...parts }
    const rendered = renders(reply, show, renderers)
    expect(faultsOf(rendered)).toEqual([])
    for (const { platform, text } of rendered) {
      expect(text, platform).toContain(reply.answer)
      for (const caution of reply.cautions ?? []) expect(text, platform).toContain(caution.text)
    }
  })

  it('says how much more there is, and where', () => {
    const [discord, slack] = renders({ ...base, tables: [table('Strips', 900)] }, show, renderers)
    for (const each of [discord, slack])
      expect(each?.text, each?.platform).toMatch(/\d+ more rows of Strips in the file strips-1\.csv/u)
  })
})

describe('text that would be obeyed', () => {
  const HOSTILE = [
    '<!channel> <!here> <@U12> <#C12>',
    '@everyone @here <@140000000000000001>',
    '```\nnot code\n``` *bold* _it_ ~no~ `x`',
    '[free](https://example.com) <https://example.com|free>',
    '# heading',
    '> quote',
    '&lt;!channel&gt; &amp;',
  ]
  it.each(HOSTILE)('%j is shown as it stands wherever it is', (words) => {
    const reply: Reply = {
      answer: words.replaceAll('\n', ' '),
      cautions: [{ id: 'x', task: 'rip', text: words }],
      tables: [{ title: words, columns: ['Part', words], rows: [['A', words]] }],
      notes: [words],
      buttons: [{ label: words.slice(0, 60), line: `help ${words}` }],
      pictures: [{ name: words, alt: words, scene }],
      files: [{ name: `${words}.csv`, type: 'text/csv', content: words }],
      figures: {},
    }
    expect(faultsOf(renders(reply, show, renderers))).toEqual([])
    const refused = { ok: false, kind: 'invalid', error: `cannot read "${words}"` } as const
    expect(faultsOf(rendersResponse(refused, renderers))).toEqual([])
  })

  it('fits whatever it is', () => {
    const text = fc.string({
      unit: fc.constantFrom(...'*_~`|<>[]\\#-+ 1.\na@&"'),
      minLength: 1,
      maxLength: 40,
    })
    fc.assert(
      fc.property(text, text, fc.array(text, { maxLength: 5 }), (answer, caution, notes) => {
        const reply = {
          ...base,
          answer: `a ${answer}`,
          cautions: [{ id: 'x', task: 'rip', text: `a ${caution}` }],
          notes,
        }
        expect(faultsOf(renders(reply, show, renderers))).toEqual([])
      }),
    )
  })
})
