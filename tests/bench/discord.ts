import { type ChildProcess, fork } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { cpuUsage, stdout } from 'node:process'
import { parseArgs } from 'node:util'
import { describe } from '../../src/bot/catalogue.ts'
import { createComplete } from '../../src/bot/complete.ts'
import { createPainter } from '../../src/painting/painter.ts'
import { createDiscord } from '../../src/platforms/discord/client.ts'
import { createKeeping } from '../../src/store/keeping.ts'
import { openSqlite } from '../../src/store/sqlite.ts'
import { TOKEN } from '../platforms/discord/loopback.ts'
import { catalogue, config, openRoom } from '../room.ts'
import type { Bench } from './bench.ts'
import type { Load, Seen } from './discord/peer.ts'
import { held, heldWords } from './heap.ts'
import { layTable } from './table.ts'

const quantile = (times: readonly number[], part: number): string => {
  const sorted = times.toSorted((a, b) => a - b)
  const time = sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))] ?? 0
  return `${time.toFixed(1)} ms`
}

/** The bot with its store in a file, connected to a Discord in another process. */
async function openBot(api: string, folder: string) {
  const store = await openSqlite(join(folder, 'bench.sqlite'))
  const room = await openRoom({ store })
  const painter = createPainter({ threads: 1 })
  const commands = describe(catalogue)
  const problems: string[] = []
  const note = (_facts: object, message: string) => void problems.push(message)
  const discord = createDiscord(
    {
      answer: room.answer,
      commands,
      complete: createComplete({ store, commands, reference: config, settings: config.bot }),
      paint: painter.paint,
      keeping: createKeeping(store, 'discord', () => new Date()),
      log: { error: note, warn: note, info: () => undefined },
      now: () => new Date(),
    },
    { token: TOKEN, api },
  )
  await discord.start()
  return {
    problems,
    close: async () => {
      await discord.stop()
      await painter.close()
      await room.close()
    },
  }
}

const heard = async <Message>(peer: ChildProcess): Promise<Message> =>
  ((await once(peer, 'message')) as [Message])[0]

/** Slash commands through the real client, as many a second as a large club never sends. */
export const bench: Bench = {
  summary: 'slash commands through the real Discord client, event to acknowledgement and to answer',
  async run(words) {
    const options = {
      seconds: { type: 'string', default: '10' },
      rate: { type: 'string', default: '200' },
    } as const
    const { values } = parseArgs({ args: [...words], options })
    const folder = mkdtempSync(join(tmpdir(), 'battenbot-discord-'))
    const peer = fork(new URL('./discord/peer.ts', import.meta.url), { execArgv: ['--import', 'tsx'] })
    const { api } = await heard<{ api: string }>(peer)
    const bot = await openBot(api, folder)
    const load: Load = { seconds: Number(values.seconds), rate: Number(values.rate) }
    peer.send(load)
    await heard<'warm'>(peer)
    const before = held()
    const busy = cpuUsage()
    const { acknowledged, answered, starting, sent, faults } = await heard<Seen>(peer)
    const { user, system } = cpuUsage(busy)
    const after = held()
    await bot.close()
    const gone = once(peer, 'exit')
    peer.disconnect()
    await gone
    rmSync(folder, { recursive: true })
    const row = (name: string, times: readonly number[]): string[] => [
      name,
      String(times.length),
      ...[0.5, 0.95, 0.99, 1].map((part) => quantile(times, part)),
    ]
    const rows = [
      row('acknowledged', acknowledged),
      row('answered', answered),
      row('answered in the first 3 s', starting),
    ]
    stdout.write(`${layTable([`of ${sent}`, 'count', 'p50', 'p95', 'p99 (aim 50 ms)', 'longest'], rows)}\n`)
    stdout.write(
      `${heldWords(before, after)}; ${((user + system) / 1000 / sent).toFixed(2)} ms of work each\n`,
    )
    for (const problem of new Set([...faults, ...bot.problems])) stdout.write(`noted: ${problem}\n`)
    return sent - answered.length + faults.length
  },
}
