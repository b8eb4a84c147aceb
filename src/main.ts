import { setTimeout as wait } from 'node:timers/promises'
import { parseArgs } from 'node:util'
import type { Answer, Platform } from './bot/request.ts'
import { type Environment, readEnvironment } from './config.ts'
import { type Bot, openBot } from './main/openBot.ts'
import { type Places, placesOf } from './main/places.ts'
import { platformsOf } from './main/platforms.ts'
import { serve } from './main/serve.ts'
import { strayTo } from './main/stray.ts'
import { daily } from './main/sweep.ts'
import { ask } from './platforms/ask/client.ts'
import { keepBoard } from './platforms/board.ts'
import { createRoom } from './platforms/room/client.ts'
import { dropOldLines } from './store/keeping.ts'

const USAGE = `usage: npm start           (Discord and Slack where their secrets are set, else a room in the browser)
       npm run room        (a room in this terminal)
       npm run -s ask -- "strips 2x6 rip=1/2in"
       npm run -s ask -- --json   (reads lines from standard input)
       npm run register    (tells Discord of the commands)
       npm run -s manifest (what to paste at Slack)
options: --channel NAME  --user NAME  --data FOLDER
         --port NUMBER  --host ADDRESS  --name HOST  (where the room in the browser is opened)
         --server ID  (register)  --address URL  (manifest)`

/** The command line was not understood; the message says what of it. */
class UsageError extends Error {}

const MODES = ['start', 'room', 'ask', 'register', 'manifest'] as const
type Mode = (typeof MODES)[number]

interface Words {
  readonly mode: Mode
  readonly question: readonly string[]
  readonly json: boolean
  readonly channel: string
  readonly user: string
  readonly data: string | undefined
  readonly server: string | undefined
  readonly address: string | undefined
  /** Host names that the room in the browser is opened by, beside this machine's own. */
  readonly names: readonly string[]
  /** As the environment would say it. */
  readonly listen: Readonly<Record<string, string | undefined>>
}

function readWords(words: readonly string[]): Words {
  const { values, positionals } = parseArgs({
    args: [...words],
    allowPositionals: true,
    options: {
      json: { type: 'boolean', default: false },
      channel: { type: 'string', default: 'bench' },
      user: { type: 'string', default: 'me' },
      data: { type: 'string' },
      server: { type: 'string' },
      port: { type: 'string' },
      host: { type: 'string' },
      name: { type: 'string', multiple: true, default: [] },
      address: { type: 'string' },
    },
  })
  const [said = 'start', ...question] = positionals
  const mode = MODES.find((each) => each === said)
  if (mode === undefined || (mode !== 'ask' && question.length > 0))
    throw new UsageError(
      `there is no "${positionals.join(' ')}" to start; write ${MODES.slice(0, -1).join(', ')} or ${MODES.at(-1)}`,
    )
  const { port, host, name: names, data, server, address, ...others } = values
  const listen = {
    ...(port !== undefined && { BATTENBOT_PORT: port }),
    ...(host !== undefined && { BATTENBOT_HOST: host }),
  }
  return { ...others, mode, question, data, server, address, names, listen }
}

/** Puts the parts together: config, store, commands, router, platforms. */
async function main(line: readonly string[]): Promise<number> {
  const words = readWords(line)
  const environment = readEnvironment({ ...process.env, ...words.listen })
  const places = placesOf(import.meta.url)
  if (words.mode === 'start') return start(words, environment, places)
  const bot = await openBot(environment, places, words.data)
  try {
    switch (words.mode) {
      case 'ask':
        return await answerLines(bot, words)
      case 'room':
        return await openRoom(bot, words)
      case 'register':
        return await register(bot, words)
      case 'manifest':
        return await printManifest(bot, words)
    }
  } finally {
    await bot.close()
  }
}

/** Serves until it is told to stop, which may be before it is up. */
async function start({ data, names }: Words, environment: Environment, places: Places): Promise<number> {
  const told = toldToStop()
  const bot = await openBot(environment, places, data)
  process.on('unhandledRejection', strayTo(bot.log))
  try {
    return await keepServing(bot, environment, { ...places, names }, told)
  } finally {
    await bot.close()
    // All is closed; a connection whose other end is silent would hold up the end for minutes.
    setTimeout(() => process.exit(), LAST_WORDS).unref()
  }
}

/** Milliseconds for what was written last to go out. */
const LAST_WORDS = 500

async function answerLines(bot: Bot, { question, json, channel, user }: Words): Promise<number> {
  const line = question.length > 0 ? question.join(' ') : undefined
  const options = { channel, user, line, json }
  return (await ask(options, answerInRoom(bot), process.stdin, process.stdout)) ? 0 : 1
}

/** Answers for one who shares their channels with the room in the browser, which shows what is put up in them. */
function answerInRoom(bot: Bot): Answer {
  const parts = bot.partsFor('room')
  return keepBoard(parts.answer, parts)
}

async function openRoom(bot: Bot, { channel, user }: Words): Promise<number> {
  await new Promise<void>((closed) => {
    const room = createRoom(answerInRoom(bot), bot.catalogue, {
      channel,
      user,
      input: process.stdin,
      output: process.stdout,
      closed,
    })
    process.once('SIGTERM', () => void room.stop())
    void room.start()
  })
  return 0
}

async function register(bot: Bot, { server }: Words): Promise<number> {
  const [{ readDiscordOptions }, { registerDiscord }] = await Promise.all([
    import('./platforms/discord/options.ts'),
    import('./platforms/discord/register.ts'),
  ])
  const said = server === undefined ? {} : { BATTENBOT_DISCORD_SERVER: server }
  const options = readDiscordOptions({ ...process.env, ...said })
  if (!options) throw new Error('set BATTENBOT_DISCORD_TOKEN to the token of the bot in Discord')
  const { status, commands } = await registerDiscord(bot.partsFor('discord').commands, options)
  const what = status === 'unchanged' ? 'holds them already' : 'has been told of them'
  process.stdout.write(`${commands} commands: Discord ${what}\n`)
  return 0
}

async function printManifest(bot: Bot, { address }: Words): Promise<number> {
  const [{ createManifest }, { commandIn }] = await Promise.all([
    import('./platforms/slack/manifest.ts'),
    import('./platforms/slack/options.ts'),
  ])
  const command = commandIn(process.env)
  const manifest = createManifest(bot.partsFor('slack').commands, { command, address })
  process.stdout.write(`${JSON.stringify(manifest, undefined, 2)}\n`)
  return 0
}

/** Serves until `told` to stop, then closes everything in order: platforms, health endpoint, and the caller its bot. */
async function keepServing(
  bot: Bot,
  environment: Environment,
  places: Places & { readonly names: readonly string[] },
  told: AbortSignal,
): Promise<number> {
  const platforms = await platformsOf(bot, environment, process.env, places)
  const pause = (time: number, signal: AbortSignal) => wait(time, undefined, { signal })
  const serving = serve(platforms, bot.log, pause)
  // First of all, so that a port which is taken stops the start before anybody is served.
  const health = await openHealth(bot, environment, platforms)
  const stopped = new Promise<void>((resolve) => told.addEventListener('abort', () => resolve()))
  try {
    if (told.aborted) return 0
    await Promise.race([serving.start(), stopped])
    if (!told.aborted)
      for (const platform of platforms) process.stdout.write(`${platform.name}: ${platform.health().says}\n`)
    const drop = () => Promise.all(platforms.map(({ name }) => dropOldLines(bot.store, name, new Date())))
    await daily(drop, bot.log, pause, told)
    return 0
  } finally {
    await serving.stop()
    await health?.close()
  }
}

async function openHealth(bot: Bot, environment: Environment, platforms: readonly Platform[]) {
  if (environment.healthPort === undefined) return undefined
  const { startHealth } = await import('./health/server.ts')
  const key = { kind: 'health', platform: 'health', workspace: '', id: '' }
  return startHealth(
    { platforms, metrics: bot.metrics, readStore: () => bot.store.read(key) },
    { host: environment.host ?? bot.config.bot.room.host, port: environment.healthPort },
  )
}

/** Aborted at the first signal to stop; the second ends the process at once. */
function toldToStop(): AbortSignal {
  const told = new AbortController()
  for (const signal of ['SIGINT', 'SIGTERM'] as const)
    process.on(signal, () => {
      if (told.signal.aborted) process.exit(1)
      told.abort()
    })
  return told.signal
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
