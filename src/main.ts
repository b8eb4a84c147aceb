import { randomUUID } from 'node:crypto'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { pino } from 'pino'
import { loadCatalogue } from './bot/catalogue.ts'
import { createRouter } from './bot/router.ts'
import { ConfigError, readConfig, readEnvironment } from './config.ts'
import { ask } from './platforms/ask/client.ts'
import { createRoom } from './platforms/room/client.ts'
import { openSqlite } from './store/sqlite.ts'

const ROOT = new URL('..', import.meta.url)
const folder = (name: string): string => fileURLToPath(new URL(name, ROOT))

const USAGE = `usage: npm start
       npm run -s ask -- "strips 2x6 rip=1/2in"
       npm run -s ask -- --json   (reads lines from standard input)
options: --channel NAME  --user NAME  --data FOLDER`

/** Puts the parts together: config, store, commands, router, platforms. The only file that knows them all. */
async function main(words: readonly string[]): Promise<number> {
  const [mode = 'room', ...rest] = words
  const { values, positionals } = parseArgs({
    args: [...rest],
    allowPositionals: true,
    options: {
      json: { type: 'boolean', default: false },
      channel: { type: 'string', default: 'bench' },
      user: { type: 'string', default: 'me' },
      data: { type: 'string' },
    },
  })
  const environment = readEnvironment(process.env)
  const config = readConfig(folder('config'))
  const dataFolder = values.data ?? environment.dataFolder ?? folder(config.bot.dataFolder)
  const log = pino({ level: environment.logLevel ?? config.bot.logLevel }, pino.destination({ dest: 2, sync: true }))
  const store = await openSqlite(`${dataFolder}/battenbot.sqlite`, { revisionsKept: config.bot.revisionsKept })
  const catalogue = await loadCatalogue(folder('commands'))
  const answer = createRouter({
    store,
    catalogue,
    log,
    settings: config.bot,
    reference: config,
    faultNumber: () => randomUUID().slice(0, 8),
  })
  const person = { channel: values.channel, user: values.user }
  try {
    if (mode === 'ask') {
      const line = positionals.length > 0 ? positionals.join(' ') : undefined
      return (await ask({ ...person, line, json: values.json }, answer, process.stdin, process.stdout)) ? 0 : 1
    }
    await new Promise<void>((closed) => {
      const room = createRoom(answer, catalogue, { ...person, input: process.stdin, output: process.stdout, closed })
      process.once('SIGTERM', () => void room.stop())
      void room.start()
    })
    return 0
  } finally {
    await store.close()
  }
}

try {
  process.exitCode = await main(process.argv.slice(2))
} catch (error) {
  const mistaken = error instanceof ConfigError || (error as { code?: string }).code?.startsWith('ERR_PARSE_ARGS')
  process.stderr.write(`${mistaken ? (error as Error).message : `battenbot cannot start: ${(error as Error).message}`}\n`)
  if (!(error instanceof ConfigError)) process.stderr.write(`${USAGE}\n`)
  process.exitCode = 2
}
