import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import type { Logger } from '../../src/bot/log.ts'
import type { Keeping } from '../../src/bot/platform.ts'
import type { Reply } from '../../src/bot/reply.ts'
import type { Answer } from '../../src/bot/request.ts'
import { showIn } from '../../src/bot/show.ts'
import { keepBoard, recallBoard } from '../../src/platforms/board.ts'
import { createKeeping } from '../../src/store/keeping.ts'
import { openSqlite } from '../../src/store/sqlite.ts'
import type { Logged } from '../room.ts'

const folder = await mkdtemp(join(tmpdir(), 'board-'))
const file = join(folder, 'battenbot.sqlite')
// Two openings of one file, as two processes have them.
const stores = [await openSqlite(file), await openSqlite(file)] as const
afterAll(async () => {
  await Promise.all(stores.map((store) => store.close()))
  await rm(folder, { recursive: true, force: true })
})
const NOON = Date.UTC(2026, 2, 6, 12)
const [one, other] = stores.map((store) => createKeeping(store, 'room', () => new Date(NOON))) as [
  Keeping,
  Keeping,
]

const settings = { units: 'inch', tape: 16, millimetreStep: 1 } as const
const show = showIn(settings, settings)

/** Says a reply in a channel at a minute past noon, in one of the processes. */
async function say(
  keeping: Keeping,
  channel: string,
  slots: Partial<Reply>,
  minute = 0,
  logged: Logged[] = [],
) {
  const note = (facts: object, message: string) => void logged.push({ facts, message })
  const log: Logger = { error: note, warn: note, info: note }
  const answer: Answer = async () => ({ ok: true, reply: { answer: 'Done', figures: {}, ...slots }, show })
  const response = await keepBoard(answer, { keeping, log })({
    place: { platform: 'room', workspace: 'local', channel },
    user: 'ann',
    invocation: { line: 'group post' },
    at: new Date(NOON + minute * 60_000),
  })
  if (!response.ok) throw new Error(response.error)
  return response.reply
}

const listed = (revision: number, since?: string, name = 'group') => ({
  notice: { name, revision, since, reply: { answer: `List ${revision}`, figures: {} } },
})

const standing = async (channel: string) =>
  (await recallBoard(other, channel)).board.standing.map(({ reply }) => reply.answer)

describe('the board of a channel', () => {
  it('holds what any process put up, and never an older list in the place of a newer', async () => {
    await say(one, 'club', listed(2))
    expect(await standing('club')).toEqual(['List 2'])
    await say(other, 'club', listed(5))
    await say(one, 'club', listed(4))
    expect(await standing('club')).toEqual(['List 5'])
    expect(await standing('elsewhere')).toEqual([])
  })

  it('holds the newest when many put up theirs at once', async () => {
    const revisions = Array.from({ length: 12 }, (_, index) => ((index * 5) % 12) + 1)
    await Promise.all(
      revisions.map((revision) => say(revision % 2 === 0 ? one : other, 'busy', listed(revision))),
    )
    expect(await standing('busy')).toEqual(['List 12'])
  })

  it('takes a list that began anew for newer, though its revisions count from one again', async () => {
    await say(one, 'anew', listed(40, '2026-03-06T18:00:00.000Z'))
    await say(one, 'anew', listed(2, '2026-09-01T18:00:00.000Z'))
    await say(other, 'anew', listed(41, '2026-03-06T18:00:00.000Z'))
    expect(await standing('anew')).toEqual(['List 2'])
  })

  it('has nothing left of a list that was replaced', async () => {
    await say(one, 'gone', listed(1))
    await say(one, 'gone', {
      notice: { name: 'group', revision: 2, reply: { answer: 'Closed', figures: {} } },
    })
    const key = { kind: 'remembered', platform: 'room', workspace: '', id: 'board:gone' }
    expect(JSON.stringify((await stores[1].read(key)).body)).toContain('Closed')
    expect(await stores[1].history(key, 10)).toHaveLength(1)
  })

  it('keeps files and lengths as they were put up, to be printed in the same units', async () => {
    const bytes = Uint8Array.from([0, 255, 128, 10])
    const files = [
      { name: 'parts.csv', type: 'text/csv', content: 'long\n"18½"\n' },
      { name: 'parts.bin', type: 'application/octet-stream', content: bytes },
    ]
    const rows = [[{ length: 457_200_000 as never }, 'end']]
    const reply = { answer: 'List', figures: {}, files, tables: [{ columns: ['long', 'part'], rows }] }
    await say(one, 'files', { notice: { name: 'group', revision: 1, reply } })
    const [put] = (await recallBoard(other, 'files')).board.standing
    expect(put?.reply.files?.map(({ content }) => Buffer.from(content))).toEqual([
      Buffer.from('long\n"18½"\n'),
      Buffer.from(bytes),
    ])
    expect(put?.reply.tables?.[0]?.rows).toEqual(rows)
    expect(put?.show).toEqual(show.settings)
  })

  it('has one notice of each name, the newest last, and twenty at most', async () => {
    for (let index = 0; index < 25; index += 1) await say(one, 'many', listed(index, undefined, `n${index}`))
    await say(one, 'many', listed(99, undefined, 'n10'))
    const kept = await standing('many')
    expect([kept.length, kept[0], kept.at(-1)]).toEqual([20, 'List 5', 'List 99'])
  })

  it('says up to when all that was asked in the channel is deleted', async () => {
    await say(one, 'plan', listed(1))
    await say(one, 'plan', { forgets: 'channel' }, 5)
    await say(other, 'plan', { forgets: 'channel' }, 3)
    const { board } = await recallBoard(other, 'plan')
    expect(board.forgotten).toBe('2026-03-06T12:05:00.000Z')
    expect(board.standing).toHaveLength(1)
    await say(one, 'plan', { forgets: 'person' }, 9)
    expect((await recallBoard(other, 'plan')).board).toEqual(board)
  })

  it('says so in the answer where the store fails, which is answered all the same', async () => {
    const logged: Logged[] = []
    const broken: Keeping = { ...one, recall: () => Promise.reject(new Error('the disk is full')) }
    const { answer, notes } = await say(broken, 'full', listed(1), 0, logged)
    expect([answer, notes]).toEqual(['Done', [expect.stringContaining('the next change puts it up')]])
    expect((await say(broken, 'full', { forgets: 'channel' }, 0, logged)).notes).toEqual([
      expect.stringContaining('send the line again'),
    ])
    expect(logged).toHaveLength(2)
  })
})
