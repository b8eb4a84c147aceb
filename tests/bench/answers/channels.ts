import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { argv, memoryUsage, stdout } from 'node:process'
import { openSqlite } from '../../../src/store/sqlite.ts'
import { openRoom } from '../../room.ts'

/** A process of its own: starts a project in as many channels as it is told, reads each back, and prints what it holds. */
const channels = Number(argv[2] ?? 10_000)
const folder = mkdtempSync(join(tmpdir(), 'battenbot-bench-'))
const room = await openRoom({ store: await openSqlite(join(folder, 'store.sqlite')) })
await room.ask('help')
const before = memoryUsage().rss
let wrong = 0
for (let index = 0; index < channels; index += 1) {
  const who = { user: `person ${index % 500}`, channel: `channel ${index}` }
  const started = await room.ask(`project start ${12 + (index % 30)}in x 13in height=15in sheet=1/2 ply`, who)
  wrong += started.ok ? 0 : 1
}
for (let index = 0; index < channels; index += 1)
  wrong += (await room.ask('project', { user: 'me', channel: `channel ${index}` })).ok ? 0 : 1
stdout.write(JSON.stringify({ before, after: memoryUsage().rss, wrong }))
await room.close()
rmSync(folder, { recursive: true })
