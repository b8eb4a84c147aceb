import { afterAll, describe, expect, it } from 'vitest'
import { PHONE_COLUMNS, tableLines } from '../../src/bot/format.ts'
import { createSearch } from '../../src/search/pool.ts'
import { openRoom, type Room } from '../room.ts'

const search = createSearch({ threads: 1, queue: 8 })
afterAll(() => search.close())

const PLAN =
  'project start 17in x 13in height=15in clearance=1/2in sheet=1/2in strip=1/2in width=1 1/2in fit=1/32in'

interface StepFigure {
  readonly number: number
  readonly name: string
  readonly done: boolean
  readonly skipped: boolean
  readonly changed: boolean
  readonly by: string | null
  readonly at: string | null
  readonly minutes: number
  readonly settings: readonly { what: string; of: string | null; value: number; unit: string }[]
}
interface Figures {
  readonly steps: readonly StepFigure[]
  readonly done: number
  readonly left: number
  readonly minutes: number
  readonly next: string | null
  readonly changed: readonly string[]
}

async function build(work: (room: Room) => Promise<void>): Promise<void> {
  const room = await openRoom({ search })
  await room.reply(PLAN)
  await work(room)
  await room.close()
}
const figuresOf = async (room: Room, line: string, user = 'me') =>
  (await room.reply(line, { user })).figures as unknown as Figures
const step = ({ steps }: Figures, name: string) => steps.find((each) => each.name === name)

describe('steps', () => {
  it('begin with the step in hand, its first number, and what comes after', () =>
    build(async (room) => {
      const reply = await room.reply('steps')
      expect(reply.answer).toMatch(/^Step 1 of \d+, break down sheets: crosscut 15 in$/u)
      expect(reply.tables?.at(-1)?.title).toBe('Then (in)')
      expect(reply.tables?.at(-1)?.rows[0]).toEqual([2, '18', 'cut side panel'])
      expect(reply.cautions?.map(({ id }) => id)).toContain('full-sheet')
      expect(reply.buttons?.[0]).toEqual({ label: 'Done', line: 'steps done break down sheets' })
    }))

  it('never set a stop over what a part may be, and show it as the list of parts rounds it', async () => {
    const room = await openRoom({ search })
    // Stiles of 373.8 mm: 450 less two strips of 38.1.
    await room.reply(
      'project start 400mm x 300mm height=450mm sheet=12mm strip=1/2in board=2x4 corner=butted',
    )
    const { tables = [] } = await room.reply('steps all')
    const set = new Map(tables[0]?.rows.map(([, mark, name]) => [name, Number(mark)]))
    const { steps } = await figuresOf(room, 'steps')
    for (const { name, settings } of steps.filter(({ name }) => /^(?:cut|crosscut) /u.test(name))) {
      const exact = settings[0]?.value ?? 0
      expect(exact - (set.get(name) ?? Infinity), name).toBeGreaterThan(-0.001)
      expect(exact - (set.get(name) ?? 0), name).toBeLessThan(1)
    }
    expect(set.get('crosscut end stile')).toBe(373)
    const listed = (await room.reply('project parts')).tables?.[1]?.rows.find(
      ([, , , name]) => name === 'end stile',
    )
    expect(listed?.[2]).toEqual({ length: 373_800_000, purpose: 'into' })
    await room.close()
  })

  it('bring the gravest cautions of all that is left to do, the others a tap away', () =>
    build(async (room) => {
      const reply = await room.reply('steps all')
      const said = reply.cautions?.map(({ id }) => id) ?? []
      expect(said.slice(0, 2)).toEqual(['rip-thin', 'fence-stick'])
      const rest = reply.buttons?.find(({ line }) => line.startsWith('cautions '))?.line ?? ''
      expect((await room.reply(rest)).cautions?.map(({ id }) => id)).toContain('oily-rags')
      await room.reply('steps done 1-8')
      const later = (await room.reply('steps all')).cautions?.map(({ id }) => id) ?? []
      expect(later.length).toBeGreaterThan(0)
      expect(later).not.toContain('rip-thin')
    }))

  it('slot by the width that takes the sheet, and warn of what a finish does', () =>
    build(async (room) => {
      await room.reply('project change corner=halved fit=1/64in')
      const { tables = [] } = await room.reply('steps check')
      // 1/2 in of sheet and 1/64 in of play, which no tape of 1/32 in shows.
      expect(tables[0]?.rows).toContainEqual(['0.516', 'slot width'])
      await room.reply('steps done 1-8')
      const at = (await figuresOf(room, 'steps')).steps.find(({ name }) => name === 'finish')?.number ?? 0
      const reply = await room.reply(`steps done 9-${at - 1}`)
      expect(reply.cautions?.map(({ id }) => id)).toEqual(expect.arrayContaining(['oily-rags', 'fumes']))
    }))

  it('have the figures of every step, and the minutes of what is left', () =>
    build(async (room) => {
      const before = await figuresOf(room, 'steps')
      expect(before).toMatchObject({ done: 0, next: 'break down sheets', changed: [] })
      expect(before.left).toBe(before.steps.length)
      expect(before.minutes).toBe(before.steps.reduce((sum, { minutes }) => sum + minutes, 0))
      const after = await figuresOf(room, 'steps done')
      expect(after.minutes).toBe(before.minutes - (before.steps[0]?.minutes ?? 0))
      expect(step(after, 'cut side panel')?.settings).toEqual([
        { what: 'rip', of: '2 B', value: 457.2, unit: 'mm', within: null },
      ])
    }))

  it('are ticked off by two people, each by name, and each tick says who and when', () =>
    build(async (room) => {
      await room.reply('steps done', { user: 'anna' })
      const after = await figuresOf(room, 'steps done', 'ben')
      expect(after.steps.slice(0, 2).map(({ by }) => by)).toEqual(['anna', 'ben'])
      expect(after.steps[0]?.at).toMatch(/^2026-03-06T18:\d\d/u)
      expect((await room.reply('steps done 1', { user: 'ben' })).answer).toMatch(
        /^break down sheets was done already, by /u,
      )
      expect((await figuresOf(room, 'steps')).steps[0]?.by).toBe('anna')
    }))

  it('are skipped, opened again, and undone whoever asks', () =>
    build(async (room) => {
      const skipped = await figuresOf(room, 'steps skip', 'anna')
      expect(skipped.steps[0]).toMatchObject({ skipped: true, done: false, by: 'anna' })
      expect(skipped).toMatchObject({ done: 0, next: 'cut side panel' })
      await room.reply('steps done 2-4', { user: 'ben' })
      const undone = await room.reply('steps undo', { user: 'anna' })
      expect(undone.answer).toMatch(/^Undone: "steps done 2-4"\. Step 2 of /u)
      expect(await figuresOf(room, 'steps redo')).toMatchObject({ done: 3 })
      expect(await figuresOf(room, 'steps open 1')).toMatchObject({ done: 3, next: 'break down sheets' })
    }))

  it('are found by number, by several, and by part of a name', () =>
    build(async (room) => {
      expect(await figuresOf(room, 'steps done 1, 3-4')).toMatchObject({ done: 3, next: 'cut side panel' })
      expect(step(await figuresOf(room, 'steps done dry fit'), 'dry fit')?.done).toBe(true)
      expect(step(await figuresOf(room, 'steps done Side Rails'), 'crosscut side rail')?.done).toBe(true)
    }))

  it('end when all is done, and can begin again', () =>
    build(async (room) => {
      const { steps } = await figuresOf(room, 'steps')
      await room.reply('steps skip mark')
      const end = await room.reply(`steps done 1-${steps.length}`)
      expect(end.answer).toBe(`Done: ${steps.length} steps. All ${steps.length} steps are done`)
      expect(end.figures).toMatchObject({ left: 0, minutes: 0, next: null })
      expect(await room.refusal('steps done')).toMatch(/every step is done or skipped; open one again/u)
      expect(await figuresOf(room, 'steps clear')).toMatchObject({ done: 0 })
      expect(await figuresOf(room, 'steps undo')).toMatchObject({ left: 0 })
    }))
})

describe('where was I', () => {
  it('is what was done last, by whom and when', () =>
    build(async (room) => {
      expect((await room.reply('steps now')).notes?.[0]).toBe('nothing is ticked off yet')
      await room.reply('steps done 2', { user: 'anna' })
      await room.reply('steps done 1', { user: 'ben' })
      const reply = await room.reply('steps now', { user: 'anna' })
      expect(reply.notes?.[0]).toMatch(
        /^last: 1, break down sheets: crosscut 15 in, done by ben, 2026-03-06 18:\d\d UTC$/u,
      )
      expect(reply.answer).toMatch(/^Step 3 of/u)
    }))
})

describe('a later change of the plan', () => {
  it('loses no tick, and flags what was done by other numbers', () =>
    build(async (room) => {
      await room.reply('steps done 1-5', { user: 'anna' })
      await room.reply('project change height=16in')
      const reply = await room.reply('steps')
      const figures = reply.figures as unknown as Figures
      expect(figures.done).toBe(5)
      expect(figures.changed).toContain('break down sheets')
      expect(figures.changed).not.toContain('rip strips')
      expect(reply.notes?.join('\n')).toMatch(/changed since done: 1, break down sheets/u)
      expect(step(await figuresOf(room, 'steps done 1', 'ben'), 'break down sheets')).toMatchObject({
        changed: false,
        by: 'ben',
      })
      await room.reply('project undo')
      expect((await figuresOf(room, 'steps')).changed).toEqual(['break down sheets'])
    }))

  it('keeps the tick of a step that comes back', () =>
    build(async (room) => {
      await room.reply('project change braces=ends')
      await room.reply('steps done brace end')
      await room.reply('project change braces=none')
      expect(step(await figuresOf(room, 'steps'), 'brace end')).toBeUndefined()
      await room.reply('project change braces=ends')
      expect(step(await figuresOf(room, 'steps'), 'brace end')).toMatchObject({ done: true, changed: false })
    }))
})

describe('the checks of the dry fit', () => {
  it('are said with the number to measure and how far off it may be', () =>
    build(async (room) => {
      const reply = await room.reply('steps check')
      expect(reply.answer).toMatch(/^8 sizes to measure at the dry fit; first the inside length 18 in$/u)
      const rows = (reply.tables?.[0]?.rows ?? []).map((row) => row.join(' '))
      expect(rows).toContain('1/2 lip')
      expect(rows.join('\n')).toMatch(/end diagonals, 1\/32 apart at most/u)
    }))
})

describe('what cannot be done', () => {
  it.each([
    ['steps done 99', /there is no step "99"; there are 1 to \d+/u],
    ['steps done 5-3', /there is no step "5-3"/u],
    ['steps done banana', /there is no step "banana"; write its number or its name/u],
    ['steps done rail', /could be crosscut side rail, crosscut end rail; write one of them/u],
    ['steps done break down shets', /Did you mean break down sheets\?/u],
    ['steps undo', /there is nothing to undo in this build/u],
    ['steps open', /step is missing/u],
    ['steps fly', /steps cannot "fly"/u],
  ])('is answered in one sentence: %s', (line, said) =>
    build(async (room) => expect(await room.refusal(line)).toMatch(said)),
  )

  it('is a build without a project', async () => {
    const room = await openRoom({ search })
    for (const line of ['steps', 'steps done', 'steps check', 'steps all'])
      expect(await room.refusal(line)).toMatch(/nothing to build yet; this channel has no project/u)
    await room.close()
  })
})

it('fits a phone, all the way through the largest build', () =>
  build(async (room) => {
    await room.reply(
      'project change braces=all grooves=5 lid=overlapping handle=strip bottom=feet drain=3/8in cord=1in x 1in',
    )
    const { steps } = await figuresOf(room, 'steps')
    expect(steps.length).toBeGreaterThan(25)
    for (const line of ['steps all', 'steps check', ...steps.map(() => 'steps done')]) {
      const response = await room.ask(line)
      if (!response.ok) throw new Error(response.error)
      expect([...response.reply.answer].length, response.reply.answer).toBeLessThanOrEqual(200)
      for (const table of response.reply.tables ?? [])
        for (const each of tableLines(table, response.show))
          expect([...each].length, each).toBeLessThanOrEqual(PHONE_COLUMNS)
    }
  }))
