import { afterAll, describe, expect, it } from 'vitest'
import { createSearch } from '../../src/search/pool.ts'
import { openRoom, type Room } from '../room.ts'
import { baseOf, changeOf, PLAN_OPTIONS, shown } from './planOptions.ts'

const search = createSearch({ threads: 1, queue: 32 })
afterAll(() => search.close())

const CUT_OUT = ['drain', 'spacing', 'cord', 'cordin'] as const
const GROOVED = ['grooves', 'front-grooves'] as const
const INSIDE = ['lid', 'handle', 'bottom', ...CUT_OUT, 'gap'] as const

/** Where an option does not matter, by the line that is asked, and why. Everything that is not here must change. */
const NOT: Readonly<
  Record<string, readonly { readonly why: string; readonly options: readonly string[] }[]>
> = {
  project: [],
  'project parts': [],
  diagonal: [
    { why: 'the opening of an end has nothing to do with how thick its strips are', options: ['strip'] },
    { why: 'the brace is asked for here, whatever the plan has', options: ['braces', 'front-brace'] },
    {
      why: 'the rails and stiles of an end stay as they are',
      options: [...GROOVED, 'fit', 'open', 'front', ...INSIDE],
    },
  ],
  'diagonal face=side': [
    { why: 'the brace is asked for here, whatever the plan has', options: ['braces', 'front-brace'] },
    {
      why: 'the rails and stiles of a side stay as they are',
      options: [...GROOVED, 'fit', 'open', 'front', ...INSIDE],
    },
  ],
  grooves: [
    { why: 'grooves are spaced along the panel, not up it', options: ['height'] },
    {
      why: 'they run under braces and everything inside',
      options: ['braces', 'front-brace', 'fit', 'open', ...INSIDE],
    },
  ],
  finish: [{ why: 'what stays open has no surface', options: ['open'] }],
  cutlist: [{ why: 'the part is cut to the same size', options: [...GROOVED, 'open', ...CUT_OUT] }],
  layout: [{ why: 'the part is cut to the same size', options: [...GROOVED, 'open', ...CUT_OUT] }],
  cutorder: [{ why: 'the part is cut to the same size', options: [...GROOVED, 'open', ...CUT_OUT] }],
  fasteners: [{ why: 'no joint is where it is cut', options: [...GROOVED, 'open', ...CUT_OUT] }],
  glue: [{ why: 'no joint is where it is cut', options: [...GROOVED, 'open', ...CUT_OUT] }],
  weight: [{ why: 'a groove takes out next to nothing', options: [...GROOVED, 'open'] }],
  boardfeet: [{ why: 'only strips are counted', options: [...GROOVED, 'open', ...CUT_OUT] }],
  fit: [
    {
      why: 'the fit of a corner is up the stile between two rails',
      options: ['object', 'height', 'clearance'],
    },
    { why: 'there is none at a corner that is glued', options: ['board'] },
    {
      why: 'it is at the corners, and at lid and bottom where they are',
      options: ['braces', 'front-brace', ...GROOVED, 'open', 'handle', 'bottom', ...CUT_OUT, 'gap'],
    },
  ],
  square: [
    {
      why: 'a frame is measured from edge to edge',
      options: ['width', 'board', 'braces', 'front-brace', 'fit', ...GROOVED, 'open', ...INSIDE],
    },
  ],
  'square panel=end': [
    {
      why: 'a frame is measured from edge to edge',
      options: ['width', 'board', 'braces', 'front-brace', 'fit', ...GROOVED, 'open', ...INSIDE],
    },
  ],
  draw: [
    { why: 'the box is drawn as it stands: nobody sees its bottom', options: ['open', 'drain', 'spacing'] },
  ],
  'steps all': [{ why: 'nothing is built for what stays open', options: ['open'] }],
  'steps check': [{ why: 'nothing is measured there', options: ['open'] }],
}

/** Lines whose answers hang on nothing but sums: where an option is not to matter, not a letter may change. */
const EXACT = new Set([
  'diagonal',
  'diagonal face=side',
  'grooves',
  'square',
  'square panel=end',
  'boardfeet',
])

const LINES = Object.keys(NOT)

const open = async (plan: string): Promise<Room> => {
  const room = await openRoom({ search, settings: { search: { seconds: 0.1, queue: 32 } } })
  await room.reply(`project start ${plan}`)
  return room
}

const bases = new Map<string, ReadonlyMap<string, string>>()

/** What every line says of a plan before anything is changed; asked once for each plan. */
async function before(plan: string): Promise<ReadonlyMap<string, string>> {
  const known = bases.get(plan)
  if (known) return known
  const room = await open(plan)
  const said = new Map<string, string>()
  for (const line of LINES) said.set(line, await shown(room, line))
  await room.close()
  bases.set(plan, said)
  return said
}

const isListed = (line: string, option: string): boolean =>
  (NOT[line] ?? []).some(({ options }) => options.includes(option))

describe('a change of any option of a plan', () => {
  it.each(PLAN_OPTIONS.map((option) => [option.name, option] as const))(
    'reaches the answer of every command for which it matters: %s',
    { timeout: 60_000 },
    async (name, option) => {
      const plan = baseOf(name)
      const was = await before(plan)
      const room = await open(plan)
      await room.reply(changeOf(option))
      for (const line of LINES) {
        const is = await shown(room, line)
        if (!isListed(line, name)) expect(is, `${line} does not hear of ${name}`).not.toBe(was.get(line))
        else if (EXACT.has(line)) expect(is, `${line} hears of ${name}`).toBe(was.get(line))
      }
      await room.close()
    },
  )

  it('is spoken of by names that there are', () => {
    const names = new Set(PLAN_OPTIONS.map(({ name }) => name))
    for (const rows of Object.values(NOT))
      for (const name of rows.flatMap(({ options }) => options)) expect(names).toContain(name)
  })

  it('reaches what is bought, which comes in wholes, where it is large enough', {
    timeout: 60_000,
  }, async () => {
    for (const change of ['40in x 30in', 'height=40in', 'clearance=8in', 'sheet=9mm', 'corner=bracketed']) {
      const room = await open(baseOf('object'))
      const was = [await shown(room, 'shopping'), await shown(room, 'strips')]
      await room.reply(`project change ${change}`)
      expect(await shown(room, 'shopping'), change).not.toBe(was[0])
      if (!change.includes('sheet') && !change.includes('corner'))
        expect(await shown(room, 'strips'), change).not.toBe(was[1])
      await room.close()
    }
  })
})

describe('a change of the kerf', () => {
  it('reaches every command that saws', { timeout: 60_000 }, async () => {
    const room = await open(baseOf('kerf'))
    const saws = ['strips', 'grooves', 'layout', 'cutorder', 'steps all']
    const was = new Map<string, string>()
    for (const line of saws) was.set(line, await shown(room, line))
    await room.reply('units kerf=3/32in for=channel')
    for (const line of saws) expect(await shown(room, line), line).not.toBe(was.get(line))
    await room.close()
  })
})
