import { changeWithRetry, type DocumentKey, type Store } from '../../src/bot/state.ts'
import { openPostgres } from '../../src/store/postgres.ts'
import { openSqlite } from '../../src/store/sqlite.ts'

/**
 * A process that writes beside others: `writer.ts ENGINE WHERE KEY TIMES` counts up the body of KEY, and sends how many of
 * the events 1 to TIMES it was the first to see.
 */
const ENGINES: Readonly<Record<string, (where: string) => Promise<Store>>> = {
  sqlite: openSqlite,
  postgres: openPostgres,
}

const [engine = '', where = '', name = '', times = '0'] = process.argv.slice(2)
const open = ENGINES[engine]
if (!open) throw new Error(`no engine "${engine}"; there is ${Object.keys(ENGINES).join(', ')}`)
const key = JSON.parse(name) as DocumentKey
const store = await open(where)
let firsts = 0
for (let count = 1; count <= Number(times); count += 1) {
  const at = new Date()
  const author = { user: `process ${process.pid}`, command: `count ${count}` }
  await changeWithRetry(store, key, (body) => Number(body ?? 0) + 1, author, at)
  if (await store.once(`event ${count}`, at)) firsts += 1
}
await store.close()
process.send?.(firsts)
