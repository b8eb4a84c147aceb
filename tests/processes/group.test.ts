import { fork } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { type Group, groupSchema } from '../../src/bot/group/group.ts'
import type { Store } from '../../src/bot/state.ts'
import { openPostgres } from '../../src/store/postgres.ts'
import { openSqlite } from '../../src/store/sqlite.ts'
import { openRoom, ROOT } from '../room.ts'
import { startPostgres } from '../store/postgresServer.ts'
import type { Said } from './groupWriter.ts'

const server = await startPostgres()
const folder = await mkdtemp(join(tmpdir(), 'battenbot-group-'))
afterAll(async () => {
  await server.stop()
  await rm(folder, { recursive: true, force: true })
})

type Lines = Readonly<Record<string, readonly string[]>>

/** A process with these people, once it listens; `speak` lets them begin and gives what became of every line. */
async function startPeople(engine: string, where: string, people: Lines) {
  const child = fork(`${ROOT}tests/processes/groupWriter.ts`, [engine, where, JSON.stringify(people)], {
    cwd: ROOT,
    execArgv: ['--import', 'tsx'],
  })
  const next = () =>
    new Promise<unknown>((heard, failed) => {
      child.once('message', heard)
      child.once('exit', (code) => failed(new Error(`a process ended with ${code}`)))
    })
  await next()
  return {
    speak: () => {
      const said = next()
      child.send('go')
      return said as Promise<readonly Said[]>
    },
  }
}

const THINGS = Array.from({ length: 10 }, (_, index) => `thing ${index}`)

/** A member, whose height is their own, and who wants what another member of the other process wants too. */
const member = (index: number): readonly string[] => [
  `group join height=${10 + (index % 9)}in`,
  `group claim ${THINGS[index % 10]}`,
  'group claim clamps count=1',
  `group change clearance=${index % 5}/16in`.replace('=0/16in', '=1/2in'),
  'group tick break down',
]

const organiser = (name: string, changes: readonly string[]): readonly string[] => [
  ...changes,
  ...[1, 2, 3, 4].map((number) => `group need ${name} ${number}`),
]

/** Members 0 to 9 in one process and 10 to 19 in the other, with an organiser each. */
const peopleOf = (from: number, organises: string, changes: readonly string[]): Lines => ({
  [organises]: organiser(organises, changes),
  ...Object.fromEntries(
    Array.from({ length: 10 }, (_, index) => [`member${from + index}`, member(from + index)]),
  ),
})

async function prepare(store: Store): Promise<void> {
  const room = await openRoom({ store })
  const ann = { user: 'ann' }
  for (const line of [
    'project start 17in x 13in height=15in sheet=1/2in',
    'group open Spring planters places=20',
    'organisers add bob',
    'group need clamps count=12',
    ...THINGS.map((thing) => `group need ${thing}`),
    'group post',
  ])
    await room.reply(line, ann)
}

async function groupIn(store: Store): Promise<Group> {
  const room = await openRoom({ store })
  return groupSchema.parse((await store.read(room.key('group'))).body)
}

describe.each([
  ['sqlite', async () => join(folder, 'bench.sqlite'), openSqlite],
  ['postgres', () => server.newDatabase(), openPostgres],
] as const)('a group on %s, written by two processes at once', (engine, place, open) => {
  it('loses no change and gives every claim once', { timeout: 240_000 }, async () => {
    const where = await place()
    const store = await open(where)
    await prepare(store)
    const processes = await Promise.all([
      startPeople(engine, where, peopleOf(0, 'ann', ['group plan sheet=5/8in', 'group set date=Saturday'])),
      startPeople(engine, where, peopleOf(10, 'bob', ['group plan braces=all', 'group set spare=10'])),
    ])
    const said = (await Promise.all(processes.map(({ speak }) => speak()))).flat()
    const group = await groupIn(store)
    await store.close()
    const wasDone = (line: RegExp) => said.filter((each) => line.test(each.line) && each.error === undefined)

    // Nothing but a claim may be refused, and that only because somebody else has it.
    const refused = said.filter(({ error }) => error !== undefined)
    for (const { line, error } of refused)
      expect(`${line}: ${error}`).toMatch(/^group claim .*(?:is taken: somebody was faster|is taken)/u)

    expect(group.members.map(({ kit }) => kit)).toEqual(Array.from({ length: 20 }, (_, index) => index + 1))
    for (const { user, changes, waiting } of group.members) {
      const index = Number(user.slice('member'.length))
      expect({ user, waiting, height: changes.height }).toEqual({
        user,
        waiting: false,
        height: (10 + (index % 9)) * 25_400_000,
      })
      expect(changes.clearance).toBe(index % 5 === 0 ? 12_700_000 : ((index % 5) * 25_400_000) / 16)
    }
    expect(new Set(group.done.map(({ kit, user }) => `${kit} ${user}`))).toEqual(
      new Set(group.members.map(({ kit, user }) => `${kit} ${user}`)),
    )

    const needs = new Map(group.needs.map((need) => [need.name, need.claims]))
    for (const thing of THINGS) {
      expect(needs.get(thing), thing).toHaveLength(1)
      const winners = wasDone(new RegExp(`^group claim ${thing}$`, 'u'))
      expect(winners.map(({ user }) => user)).toEqual(needs.get(thing)?.map(({ user }) => user))
    }
    const clamps = needs.get('clamps') ?? []
    expect(clamps.reduce((sum, { count }) => sum + count, 0)).toBe(12)
    expect(new Set(wasDone(/^group claim clamps/u).map(({ user }) => user))).toEqual(
      new Set(clamps.map(({ user }) => user)),
    )

    for (const name of ['ann', 'bob'])
      for (const number of [1, 2, 3, 4]) expect([...needs.keys()]).toContain(`${name} ${number}`)
    expect(group.plans.main).toMatchObject({ braces: 'all', sheet: { thickness: 15_875_000 } })
    expect(group).toMatchObject({ date: 'Saturday', spare: 10 })
    expect(group.posted?.version).toBeGreaterThan(20)
  })
})
