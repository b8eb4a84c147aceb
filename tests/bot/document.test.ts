import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { openSqlite } from '../../src/store/sqlite.ts'
import { openRoom, type Room } from '../room.ts'

const START = 'project start 17in x 13in height=15in sheet=15/32in'
const AUTHOR = { user: 'somebody', command: 'by hand' }
const AT = new Date('2026-03-06T12:00:00Z')

let room: Room
beforeEach(async () => {
  room = await openRoom()
  return () => room.close()
})

const heights = async (lines: readonly string[]) => {
  const found = []
  for (const line of lines) {
    const response = await room.ask(line)
    found.push(response.ok ? (response.reply.figures.panelHeight ?? 'none') : response.kind)
  }
  return found
}

describe('a project', () => {
  it('goes back and forth through its changes', async () => {
    expect(await heights([START, 'project change height=16in', 'project change height=20in'])).toEqual([
      381, 406.4, 508,
    ])
    expect(await heights(['project undo', 'project undo', 'project undo', 'project undo'])).toEqual([
      406.4,
      381,
      'none',
      'invalid',
    ])
    expect(await heights(['project redo', 'project redo', 'project redo', 'project redo'])).toEqual([
      381,
      406.4,
      508,
      'invalid',
    ])
  })

  it('has nothing to bring back after a new change', async () => {
    expect(
      await heights([START, 'project change height=16in', 'project undo', 'project change height=20in']),
    ).toEqual([381, 406.4, 381, 508])
    expect(await heights(['project redo', 'project undo', 'project'])).toEqual(['invalid', 381, 381])
  })

  it('is undone by anybody, who is told whose change it was', async () => {
    await room.reply(START, { user: 'maria' })
    await room.reply('project change height=16in', { user: 'jon' })
    expect((await room.reply('project undo', { user: 'maria' })).answer).toMatch(
      /^Undone: "project change height=16in" by jon\. /u,
    )
    expect((await room.reply('project redo', { user: 'lin' })).answer).toMatch(
      /^Back again: "project change height=16in" by jon\. /u,
    )
    const { revisions } = (await room.reply('project history')).figures
    expect(revisions).toMatchObject([
      { revision: 4, user: 'lin', way: 'redo' },
      { revision: 3, user: 'maria', way: 'undo' },
      { revision: 2, user: 'jon', way: 'edit' },
      { revision: 1, user: 'maria', way: 'edit', command: START },
    ])
  })

  it('is not changed by what cannot be built, read or understood', async () => {
    await room.reply(START)
    for (const line of ['height=1in', 'height=15', 'hight=15in', 'strip=9in', ''])
      await room.refusal(`project change ${line}`)
    await room.refusal('project start 17in x 13in')
    expect((await room.store.read(room.key('project'))).revision).toBe(1)
  })

  it('gives way to a new start, and comes back by undo', async () => {
    await room.reply(START)
    const { notes } = await room.reply('project start 20in x 20in height=20in')
    expect(notes?.[0]).toContain('"project undo" brings that back')
    expect(await heights(['project undo'])).toEqual([381])
  })

  it('is forgotten with its history once somebody is sure', async () => {
    await room.reply(START)
    await room.reply('project change height=16in')
    expect((await room.reply('project forget')).figures).toEqual({ deleted: 0 })
    expect((await room.reply('project')).figures.panelHeight).toBe(406.4)
    expect((await room.reply('project forget sure=yes')).figures).toEqual({ deleted: 2 })
    for (const line of ['project', 'project undo', 'project redo', 'project history', 'project parts'])
      expect(await room.refusal(line)).toMatch(/^invalid: /u)
  })

  it('is the channel’s alone', async () => {
    await room.reply(START, { channel: 'shed' })
    expect(await room.refusal('project', { channel: 'yard' })).toMatch(
      /^invalid: this channel has no project yet/u,
    )
    await room.reply('project start 20in x 20in height=20in', { channel: 'yard' })
    expect((await room.reply('project undo', { channel: 'yard' })).answer).toContain('no plan now')
    expect((await room.reply('project', { channel: 'shed' })).figures.panelHeight).toBe(381)
  })

  it('means the same to everybody, whatever their units and region, now and later', async () => {
    const before = await room.reply('project start 17in x 13in height=15in')
    await room.reply('units metric region=uk', { user: 'jon' })
    expect((await room.reply('project', { user: 'jon' })).figures).toEqual(before.figures)
    await room.reply('units metric region=eu for=channel')
    expect((await room.reply('project')).figures).toEqual(before.figures)
    const { figures } = await room.reply('project change height=16in', { user: 'jon' })
    expect(figures).toMatchObject({ insideLength: 457.2, panelHeight: 406.4 })
  })
})

describe('many at once', () => {
  it('lose no change', async () => {
    await room.reply(START)
    const people = Array.from({ length: 50 }, (_, index) => `person ${index}`)
    const lines = people.map((_, index) =>
      index % 2 ? `project change height=${15 + index}in` : `project change grooves=${index % 20}`,
    )
    const responses = await Promise.all(
      lines.map((line, index) => room.ask(line, { user: people[index] ?? '' })),
    )
    expect(responses.filter(({ ok }) => !ok)).toEqual([])
    const revisions = await room.store.history(room.key('project'), 100)
    expect(revisions).toHaveLength(51)
    expect(new Set(revisions.map(({ user }) => user))).toEqual(new Set([...people, 'me']))
    expect(revisions.map(({ revision }) => revision)).toEqual(
      Array.from({ length: 51 }, (_, index) => 51 - index),
    )
  })

  it('each keep what the other changed', async () => {
    await room.reply(START)
    await Promise.all([
      room.reply('project change height=20in', { user: 'maria' }),
      room.reply('project change grooves=5', { user: 'jon' }),
      room.reply('project change corner=cleated', { user: 'lin' }),
    ])
    expect((await room.store.read(room.key('project'))).body).toMatchObject({
      choices: { height: 508_000_000, grooves: 5, corner: 'cleated' },
    })
  })

  it('set units and build at the same time', async () => {
    await Promise.all([
      ...['units metric', 'units tape=1/64', 'units region=uk', 'units kerf=3mm'].map((line) =>
        room.reply(line),
      ),
      room.reply(START),
    ])
    expect((await room.reply('units')).figures).toMatchObject({
      units: 'metric',
      tape: 64,
      region: 'UK',
      kerf: 3,
    })
  })
})

describe('a restart', () => {
  const folder = mkdtempSync(join(tmpdir(), 'battenbot-restart-'))
  afterAll(() => rmSync(folder, { recursive: true }))

  it('loses nothing: plan, history, what can be brought back, units', async () => {
    const open = async () => openRoom({ store: await openSqlite(join(folder, 'store.sqlite')) })
    const before = await open()
    for (const line of [START, 'project change height=16in', 'project undo', 'units metric tape=1/32'])
      await before.reply(line)
    const [shown, history] = [await before.reply('project'), await before.reply('project history')]
    await before.close()
    const after = await open()
    expect(await after.reply('project')).toEqual(shown)
    expect(await after.reply('project history')).toEqual(history)
    expect((await after.reply('units')).figures).toMatchObject({ units: 'metric', tape: 32 })
    expect((await after.reply('project redo')).figures.panelHeight).toBe(406.4)
    await after.close()
  })
})

describe('what cannot be read any more', () => {
  const spoil = async (kind: string, body: unknown) => {
    const key = room.key(kind)
    const { revision } = await room.store.read(key)
    await room.store.change(key, revision, body, AUTHOR, AT)
  }

  it.each([
    [{ choices: { height: 'tall' } }],
    [{ choices: { height: -1 } }],
    [{ choices: {}, colour: 'red' }],
    [[]],
    ['text'],
    [null],
    [{ ['__proto__']: 1, choices: { corner: 'constructor' } }],
  ])('of a project, as %j, is told and mended by undo', async (body) => {
    await room.reply(START)
    await spoil('project', body)
    const told =
      'fault: what is kept for this project cannot be read any more; "project history" shows who changed it last, and "project undo" goes back'
    for (const line of ['project', 'project change height=16in', 'sizing', START])
      expect(await room.refusal(line)).toBe(told)
    expect((await room.reply('project history')).notes?.[0]).toContain('somebody: by hand')
    expect((await room.reply('Project  undo')).figures.panelHeight).toBe(381)
    expect((await room.reply('project')).figures.panelHeight).toBe(381)
    expect(room.logged).toEqual([])
  })

  it('of a person or a channel is told, and mended by setting it again', async () => {
    await spoil('person', { units: 'cubits' })
    expect(await room.refusal('strips 2x6 rip=1/2in')).toBe(
      'fault: the units kept for this person cannot be read any more; set them again, such as: units inch kerf=1/8in',
    )
    expect(await room.reply('strips 2x6 rip=1/2in', { user: 'jon' })).toMatchObject({
      figures: { perBoard: 9 },
    })
    await room.reply('units inch')
    await spoil('channel', { tape: 17 })
    expect(await room.refusal('strips 2x6 rip=1/2in')).toBe(
      'fault: the units kept for this channel cannot be read any more; set them again, such as: units inch kerf=1/8in for=channel',
    )
    await room.reply('units inch tape=1/32 for=channel')
    expect((await room.reply('units')).figures).toMatchObject({ units: 'inch', tape: 32 })
  })
})
