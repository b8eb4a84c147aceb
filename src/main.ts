import { randomUUID } from 'node:crypto'
import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { pino } from 'pino'
import { loadCatalogue } from './bot/catalogue.ts'
import { createRouter } from './bot/router.ts'
import { readConfig, readEnvironment } from './config.ts'
import { ask } from './platforms/ask/client.ts'
import { createRoom } from './platforms/room/client.ts'
import { createSearch } from './search/pool.ts'
import { openSqlite } from './store/sqlite.ts'

/** Run as it stands, or from the bundle that launch.mjs makes of it. */
const isBundled = !import.meta.url.endsWith('.ts')
const beside = (name: string): string => fileURLToPath(new URL(name, import.meta.url))

const USAGE = `usage: npm start
       npm run -s ask -- "strips 2x6 rip=1/2in"
       npm run -s ask -- --json   (reads lines from standard input)
options: --channel NAME  --user NAME  --data FOLDER`

/** The command line was not understood; the message says what of it. */
class UsageError extends Error {}

/** Puts the parts together: config, store, commands, router, platforms. The only file that knows them all. */
async function main(words: readonly string[]): Promise<number> {
  const { values, positionals } = parseArgs({
    args: [...words],
    allowPositionals: true,
    options: {
      json: { type: 'boolean', default: false },
      channel: { type: 'string', default: 'bench' },
      user: { type: 'string', default: 'me' },
      data: { type: 'string' },
    },
  })
  const [mode = 'room', ...question] = positionals
  if (mode !== 'ask' && (mode !== 'room' || question.length > 0)) {
    throw new UsageError(`there is no "${positionals.join(' ')}" to start; write room, or ask and a question`)
  }
  const environment = readEnvironment(process.env)
  const config = readConfig(environment.configFolder ?? beside(isBundled ? '../../config' : '../config'))
  const dataFolder = values.data ?? environment.dataFolder ?? config.bot.dataFolder
  const log = pino(
    { level: environment.logLevel ?? config.bot.logLevel },
    pino.destination({ dest: 2, sync: true }),
  )
  const store = await openSqlite(`${dataFolder}/battenbot.sqlite`, {
    revisionsKept: config.bot.revisionsKept,
  })
  const catalogue = await loadCatalogue(beside('../commands'))
  const search = createSearch({
    ...(isBundled && { start: new URL('./search/worker.js', import.meta.url) }),
    threads: Math.max(1, availableParallelism() - 1),
    queue: config.bot.search.queue,
    failed: (error) => log.error({ error }, 'a search thread died'),
  })
  const answer = createRouter({
    store,
    search,
    catalogue,
    log,
    settings: config.bot,
    reference: config,
    faultNumber: () => randomUUID().slice(0, 8),
  })
  const person = { channel: values.channel, user: values.user }
  try {
    if (mode === 'ask') {
      const line = question.length > 0 ? question.join(' ') : undefined
      return (await ask({ ...person, line, json: values.json }, answer, process.stdin, process.stdout))
        ? 0
        : 1
    }
    await new Promise<void>((closed) => {
      const room = createRoom(answer, catalogue, {
        ...person,
        input: process.stdin,
        output: process.stdout,
        closed,
      })
      process.once('SIGTERM', () => void room.stop())
      void room.start()
    })
    return 0
  } finally {
    await search.close()
    await store.close()
  }
}

const isUsage = (error: Error): boolean =>
  error instanceof UsageError || !!(error as { code?: string }).code?.startsWith('ERR_PARSE_ARGS')

try {
  process.exitCode = await main(process.argv.slice(2))
} catch (error) {
  const { message } = error as Error
  if (isUsage(error as Error)) process.stderr.write(`${message}\n${USAGE}\n`)
  else process.stderr.write(`battenbot cannot start:\n${message}\n`)
  process.exitCode = 2
}
