import type { Store } from '../../src/bot/state.ts'
import { openPostgres } from '../../src/store/postgres.ts'
import { openSqlite } from '../../src/store/sqlite.ts'
import { openRoom } from '../room.ts'

/**
 * A process in which people write in one channel beside those of other processes: `groupWriter.ts ENGINE WHERE PEOPLE`,
 * where PEOPLE is the JSON of each person's lines by name. It says `ready`, waits for a word, lets everybody speak at once,
 * each line after the one before, and sends what became of each line.
 */
const ENGINES: Readonly<Record<string, (where: string) => Promise<Store>>> = {
  sqlite: openSqlite,
  postgres: openPostgres,
}

/** What became of one line. */
export interface Said {
  readonly user: string
  readonly line: string
  /** Undefined where it was answered. */
  readonly error: string | undefined
}

const [engine = '', where = '', people = '{}'] = process.argv.slice(2)
const open = ENGINES[engine]
if (!open) throw new Error(`no engine "${engine}"; there is ${Object.keys(ENGINES).join(', ')}`)
const store = await open(where)
const room = await openRoom({ store })

async function speak(user: string, lines: readonly string[]): Promise<readonly Said[]> {
  const said: Said[] = []
  for (const line of lines) {
    const response = await room.ask(line, { user, name: `${user} by name` })
    said.push({ user, line, error: response.ok ? undefined : response.error })
  }
  return said
}

process.once('message', async () => {
  const all = Object.entries(JSON.parse(people) as Record<string, readonly string[]>)
  const said = await Promise.all(all.map(([user, lines]) => speak(user, lines)))
  await room.close()
  process.send?.(said.flat(), () => process.disconnect())
})
process.send?.('ready')
