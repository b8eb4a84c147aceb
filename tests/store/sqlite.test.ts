import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { DocumentKey } from '../../src/bot/state.ts'
import { openSqlite } from '../../src/store/sqlite.ts'
import { patiently } from '../../src/store/sqliteDialect.ts'
import { StoreError } from '../../src/store/storeError.ts'
import { storeContract } from '../contracts/store.ts'

const newFolder = () => mkdtemp(join(tmpdir(), 'battenbot-store-'))

storeContract(
  'a SQLite file',
  async () => {
    const folder = await newFolder()
    const where = join(folder, 'made', 'on the way', 'store.sqlite')
    return {
      where,
      open: (settings) => openSqlite(where, settings),
      remove: () => rm(folder, { recursive: true }),
    }
  },
  'sqlite',
)

storeContract('SQLite in memory', async () => ({
  where: ':memory:',
  open: (settings) => openSqlite(':memory:', settings),
  remove: async () => {},
}))

const KEY: DocumentKey = { kind: 'project', platform: 'room', workspace: 'club', id: 'bench' }
const ANN = { user: 'ann-of-the-club', command: 'project size 24in' }
const NOON = new Date('2026-03-01T12:00:00.000Z')

describe('a SQLite file', () => {
  let folder: string
  let file: string
  beforeEach(async () => {
    folder = await newFolder()
    file = join(folder, 'store.sqlite')
  })
  afterEach(() => rm(folder, { recursive: true }))

  const failure = (attempt: Promise<unknown>): Promise<unknown> =>
    attempt.then(
      (value) => expect.fail(`gave ${JSON.stringify(value)}`),
      (error: unknown) => error,
    )
  const tamper = (statement: string, from = file) => {
    const raw = new BetterSqlite(from)
    raw.exec(statement)
    raw.close()
  }
  const holding = async (...bodies: unknown[]) => {
    const store = await openSqlite(file)
    for (const [revision, body] of bodies.entries()) await store.change(KEY, revision, body, ANN, NOON)
    await store.close()
  }

  it('is one file once closed, with nothing beside it', async () => {
    await holding('a')
    expect(await readdir(folder)).toEqual(['store.sqlite'])
  })

  it('holds no trace of what was forgotten', async () => {
    await holding({ secret: 'a treasure chest for a surprise' }, { plain: 'still here' })
    expect((await readFile(file)).includes('treasure chest')).toBe(true)
    const store = await openSqlite(file)
    await store.change({ ...KEY, id: 'other' }, 0, { other: 'of somebody else' }, ANN, NOON)
    await store.forgetPerson({ platform: 'room', user: ANN.user })
    await store.forget(KEY)
    await store.close()
    const left = await readFile(file)
    expect(left.includes('treasure chest')).toBe(false)
    expect(left.includes(ANN.user)).toBe(false)
    expect(left.includes('of somebody else')).toBe(true)
  })

  it('says which revision cannot be read, and lets it be undone or forgotten', async () => {
    await holding('a', 'b', 'c')
    tamper(`update revisions set body = '{"cut off' where number = 3`)
    const store = await openSqlite(file)
    const error = await failure(store.read(KEY))
    expect(error).toBeInstanceOf(StoreError)
    expect(error).toHaveProperty(
      'message',
      'revision 3 of "project room/club/bench" cannot be read: it is not JSON; undo it, or forget the document',
    )
    expect(await store.history(KEY, 1)).toMatchObject([{ revision: 3 }])
    expect(await store.undo(KEY, ANN, NOON)).toMatchObject({ body: 'b' })
    expect(await failure(store.redo(KEY, ANN, NOON))).toBeInstanceOf(StoreError)
    expect(await store.read(KEY)).toEqual({ revision: 4, body: 'b' })
    expect(await store.forget(KEY)).toBe(4)
    await store.close()
  })

  it('leaves a file of a newer version alone, and says so', async () => {
    await holding('a')
    tamper(`insert into kysely_migration values ('900-photographs', '2027-01-01T00:00:00.000Z')`)
    const before = await readFile(file)
    const error = await failure(openSqlite(file))
    expect(error).toBeInstanceOf(StoreError)
    expect(error).toHaveProperty(
      'message',
      `the store "${file}" was written by a newer battenbot (it has step "900-photographs"); run that one, or a copy made before`,
    )
    expect((await readFile(file)).equals(before)).toBe(true)
  })

  it('says that a file is something else, and leaves it alone', async () => {
    const text = 'A shopping list: four sheets of plywood, nine boards, glue.\n'.repeat(40)
    await writeFile(file, text)
    const error = await failure(openSqlite(file))
    expect(error).toBeInstanceOf(StoreError)
    expect(error).toHaveProperty(
      'message',
      `the store "${file}" cannot be used: file is not a database; put a copy in its place, or move it away to start anew`,
    )
    expect(await readFile(file, 'utf8')).toBe(text)
  })

  it('says when the folder cannot be made', async () => {
    await writeFile(file, 'a file, not a folder')
    const error = await failure(openSqlite(join(file, 'store.sqlite')))
    expect(error).toBeInstanceOf(StoreError)
    expect(error).toHaveProperty(
      'message',
      expect.stringMatching(/^the store ".*" cannot be opened: .*writable$/u),
    )
  })

  it('says when a table is gone', async () => {
    await holding('a')
    tamper('drop table events')
    const store = await openSqlite(file)
    const error = await failure(store.once('room:1', NOON))
    expect(error).toBeInstanceOf(StoreError)
    expect(error).toHaveProperty('message', `the store "${file}" cannot be used: no such table: events`)
    expect(await store.read(KEY)).toEqual({ revision: 1, body: 'a' })
    await store.close()
  })

  it('waits for another writer without holding up its own process', async () => {
    const store = await openSqlite(file)
    const other = new BetterSqlite(file)
    other.exec('begin immediate')
    const events: string[] = []
    const change = store.change(KEY, 0, 'a', ANN, NOON).then(() => events.push('changed'))
    await new Promise((done) => setTimeout(done, 20))
    events.push('other work went on')
    other.exec('commit')
    other.close()
    await change
    expect(events).toEqual(['other work went on', 'changed'])
    await store.close()
  })

  it('gives up on a writer that never ends, and says what to do', async () => {
    const [holder, waiter] = [new BetterSqlite(file), new BetterSqlite(file)]
    holder.exec('begin immediate')
    const error = await failure(patiently(waiter, () => waiter.exec('begin immediate'), 20))
    expect(error).toBeInstanceOf(StoreError)
    expect(error).toHaveProperty(
      'message',
      `the store "${file}" cannot be used: database is locked; another process has kept hold of it, end that one`,
    )
    holder.close()
    waiter.close()
  })
})
