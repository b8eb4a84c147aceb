import { afterAll, describe, expect, it } from 'vitest'
import { PHONE_COLUMNS, tableLines } from '../../src/bot/format.ts'
import type { Figure } from '../../src/bot/reply.ts'
import type { Response } from '../../src/bot/request.ts'
import { createSearch } from '../../src/search/pool.ts'
import { before, PLAN } from '../beforeExample.ts'
import { catalogue, config, examples, openRoom } from '../room.ts'

/** The figures of each command; scripts rely on the names. */
const FIGURES: Readonly<Record<string, string>> = {
  sizing:
    'insideLength insideWidth outsideLength outsideWidth panelHeight sidePanelLength endPanelLength sideRailLength endRailLength endStileLength cornerStileLength lip fit flatStack parts',
  strips: 'perBoard safePerBoard spare boards width settings',
  diagonal: 'slope saw secondSaw length crossing halfLength innerSaw notchWidth notchDepth',
  grooves: 'centres fences boardWidth depth',
  spacing: 'count gap',
  finish: 'area perCoat volume containers',
  convert: 'kind millimetres inches degrees',
  layout: 'sheets boards cost lowerBound optimal gap waste offcuts sheetLayouts boardLayouts milliseconds',
  cutorder: 'settings cuts steps',
  steps: 'steps done left minutes next',
  fasteners: 'length count spacing edge pilot clearance withdrawal boxes',
  glue: 'area volume clampMinutes fullHours',
  moisture: 'moisture change loosest tightest allowance',
  fit: 'moisture change loosest tightest allowance',
}

const search = createSearch({ threads: 1, queue: 8 })
afterAll(() => search.close())

/** Says the lines in a fresh place; gives what became of the last. Whoever joins by a button is somebody else. */
async function say(...lines: readonly string[]): Promise<Response> {
  const room = await openRoom({ search })
  const responses = []
  for (const line of lines)
    responses.push(await room.ask(line, { user: line === 'group join' ? 'you' : 'me' }))
  await room.close()
  return responses.at(-1) as Response
}

const run = (line: string) => say(...before(line), line)

const answered = new Map<string, Response>()
for (const [, line] of examples) answered.set(line, await run(line))

/** The answer to an example; throws where there is none. */
function answerTo(line: string) {
  const response = answered.get(line)
  if (!response?.ok) throw new Error(`${line}: ${response?.kind}: ${response?.error}`)
  return response
}

const isFigure = (figure: unknown): figure is Figure =>
  figure === null ||
  ['string', 'boolean'].includes(typeof figure) ||
  Number.isFinite(figure) ||
  (typeof figure === 'object' && Object.values(figure).every(isFigure))

describe('every example', () => {
  it('is there for every command', () => {
    expect(new Set(examples.map(([name]) => name))).toEqual(new Set(catalogue.keys()))
  })

  it.each(examples)('of %s is answered: %s', (_, line) => {
    const { reply } = answerTo(line)
    expect(reply.answer).not.toBe('')
    expect([...reply.answer].length).toBeLessThanOrEqual(200)
    for (const text of [reply.answer, ...(reply.notes ?? [])])
      expect(text).not.toMatch(/\n|undefined|NaN|\[object/u)
  })

  it.each(examples)('of %s fits a phone: %s', (_, line) => {
    const { reply, show } = answerTo(line)
    for (const table of reply.tables ?? [])
      for (const each of tableLines(table, show))
        expect([...each].length, each).toBeLessThanOrEqual(PHONE_COLUMNS)
  })

  it.each(examples)('of %s has the figures that scripts rely on: %s', (name, line) => {
    const { reply } = answerTo(line)
    for (const figure of FIGURES[name]?.split(' ') ?? []) expect(reply.figures).toHaveProperty(figure)
    for (const [figure, value] of Object.entries(reply.figures)) expect(isFigure(value), figure).toBe(true)
  })

  it.each(examples.filter(([name]) => name !== 'cautions'))(
    'of %s says its cautions shortly: %s',
    (_, line) => {
      const { reply } = answerTo(line)
      for (const { text } of reply.cautions ?? []) expect([...text].length, text).toBeLessThanOrEqual(160)
    },
  )

  it.each(examples)('of %s has buttons that are lines: %s', async (_, line) => {
    for (const button of answerTo(line).reply.buttons ?? []) {
      const first = /^(?:group|where)/u.test(line)
        ? [...before(line), line]
        : button.line === 'project redo'
          ? [PLAN, 'project undo']
          : [PLAN]
      expect(await say(...first, button.line), button.line).toMatchObject({ ok: true })
    }
  })
})

describe('a reply that leads to a cut', () => {
  it.each(examples.filter(([name]) => ['sizing', 'strips', 'diagonal', 'grooves'].includes(name)))(
    'of %s says to follow the saw’s manual and local rules: %s',
    (_, line) => {
      const { reply } = answerTo(line)
      // In full, or named among those that a tap brings.
      const said = (reply.cautions ?? []).map(({ id, text }) => (/^And \d+ more: /u.test(text) ? text : id))
      expect(said.join(', ')).toMatch(/\bmanual\b/u)
      if (!said.includes('manual'))
        expect(reply.buttons?.map(({ line }) => line).join()).toMatch(/^.*cautions named=.*manual/u)
    },
  )

  it('has a rule for that in the config', () => {
    expect(config.cautions.find(({ id }) => id === 'manual')?.text).toMatch(/manual and local rules/u)
  })
})

describe('part figures', () => {
  it('are a list of label, count, length, width and thickness', () => {
    const { reply } = answerTo('sizing 17in x 13in height=15in')
    const parts = reply.figures.parts as readonly Record<string, unknown>[]
    expect(parts.length).toBeGreaterThan(4)
    for (const part of parts) {
      expect(part.label).toMatch(/^[A-Z]$/u)
      for (const name of ['count', 'length', 'width', 'thickness']) expect(part[name]).toBeGreaterThan(0)
    }
  })
})
