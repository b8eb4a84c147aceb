import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import { afterAll, expect, it } from 'vitest'
import { openSqlite } from '../../src/store/sqlite.ts'

const folder = mkdtempSync(join(tmpdir(), 'battenbot-events-'))
afterAll(() => rmSync(folder, { recursive: true }))

it('drops marks of events that are older than a day, once an hour', async () => {
  const file = join(folder, 'events.sqlite')
  const store = await openSqlite(file)
  const at = (hours: number) => new Date(Date.UTC(2026, 2, 6, 12) + hours * 3_600_000)
  const marks = () => {
    const database = new BetterSqlite(file, { readonly: true })
    const ids = database.prepare('select id from events order by id').pluck().all()
    database.close()
    return ids
  }
  for (const hours of [0, 1, 2]) await store.once(`event ${hours}`, at(hours))
  expect(marks()).toEqual(['event 0', 'event 1', 'event 2'])
  await store.once('event 24.5', at(24.5))
  expect(marks()).toEqual(['event 1', 'event 2', 'event 24.5'])
  await store.once('event 25.2', at(25.2))
  expect(marks()).toEqual(['event 1', 'event 2', 'event 24.5', 'event 25.2'])
  await store.once('event 26.5', at(26.5))
  expect(marks()).toEqual(['event 24.5', 'event 25.2', 'event 26.5'])
  await store.close()
})
