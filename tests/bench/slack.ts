import { type ChildProcess, fork } from 'node:child_process'
import { cpuUsage, stdout } from 'node:process'
import { inspect, parseArgs } from 'node:util'
import { describe as describeCommands } from '../../src/bot/catalogue.ts'
import { createPainter } from '../../src/painting/painter.ts'
import { createSlack } from '../../src/platforms/slack/client.ts'
import { catalogue, openRoom } from '../room.ts'
import type { Bench } from './bench.ts'
import { held, heldWords } from './heap.ts'
import type { Load, LoadOutcome } from './slackLoad.ts'
import { layTable } from './table.ts'

const SECRET = 'bench-signing-secret'

/** What people ask at the bench. */
const LINES = [
  'strips 2x6 rip=1/2in',
  'convert 23 7/8in',
  'spacing 36in piece=3 1/2in count=6',
  'diagonal 46in x 29in strip=3 1/2in',
  'sizing 17in x 13in height=15in',
  'help strips',
]

const quantile = (sorted: readonly number[], part: number): string =>
  `${(sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))] ?? 0).toFixed(1)} ms`

/** The load in a process of its own: the other side of the bot, which is Slack's to run. */
function startLoad(load: Load): {
  readonly child: ChildProcess
  readonly listening: Promise<number>
  readonly warm: Promise<boolean>
  readonly outcome: Promise<LoadOutcome>
} {
  const child = fork(new URL('slackLoad.ts', import.meta.url), [JSON.stringify(load)], {
    execArgv: ['--import', 'tsx'],
  })
  const message = <Value>(name: string) =>
    new Promise<Value>((resolve, reject) => {
      child.on('message', (said: Record<string, Value>) => {
        if (said[name] !== undefined) resolve(said[name])
      })
      child.once('error', reject)
    })
  return {
    child,
    listening: message<number>('listening'),
    warm: message<boolean>('warm'),
    outcome: message<LoadOutcome>('outcome'),
  }
}

/** The real Bolt app and the real commands, with everything kept in memory. */
async function openBot(slackPort: number) {
  const room = await openRoom({ settings: { units: 'inch' } })
  const seen = new Set<string>()
  const noted: string[] = []
  const bad = (facts: object, message: string) =>
    void noted.push(`${message} ${inspect(facts, { depth: 3 })}`)
  const painter = createPainter({ threads: 1 })
  let port = 0
  const platform = createSlack(
    {
      answer: room.answer,
      commands: describeCommands(catalogue),
      complete: async () => [],
      paint: painter.paint,
      keeping: {
        once: async (event) => seen.size < seen.add(event).size,
        keepLine: async (line) => String(line.length),
        recallLine: async () => undefined,
        recall: async () => ({ revision: 0, text: undefined }),
        remember: async () => true,
      },
      log: { error: bad, warn: bad, info: () => {} },
      now: () => new Date(),
    },
    {
      command: '/batten',
      apiUrl: `http://127.0.0.1:${slackPort}/api/`,
      listening: (heard) => {
        port = heard
      },
      connection: {
        mode: 'http',
        signingSecret: SECRET,
        port: 0,
        host: '127.0.0.1',
        workspaces: { botToken: 'xoxb-bench' },
      },
    },
  )
  await platform.start()
  const close = async () => {
    await platform.stop()
    await painter.close()
    await room.close()
  }
  return { port, close, noted }
}

/** How long a person in Slack waits, with many asking at once. */
export const bench: Bench = {
  summary: 'slash commands over HTTP: from the event to its acknowledgement and to its answer',
  async run(words) {
    const options = {
      rate: { type: 'string', default: '200' },
      seconds: { type: 'string', default: '30' },
    } as const
    const { values } = parseArgs({ args: [...words], options })
    const load = { rate: Number(values.rate), seconds: Number(values.seconds), secret: SECRET, lines: LINES }
    const { child, listening, warm, outcome } = startLoad(load)
    const bot = await openBot(await listening)
    child.send({ port: bot.port })
    await warm
    const before = held()
    const busyBefore = cpuUsage()
    const { sent, acknowledged, answered, starting, refused } = await outcome
    const busy = cpuUsage(busyBefore)
    const after = held()
    await bot.close()
    child.kill()
    const row = (name: string, times: readonly number[]): string[] => {
      const sorted = times.toSorted((a, b) => a - b)
      return [name, String(times.length), ...[0.5, 0.95, 0.99].map((part) => quantile(sorted, part))]
    }
    const rows = [
      row('acknowledged', acknowledged),
      row('answered', answered),
      row('answered in the first 3 s', starting),
    ]
    stdout.write(`${sent} commands, ${load.rate} a second, ${refused} refused\n`)
    stdout.write(`${layTable(['event to', 'times', 'p50', 'p95', 'p99 (aim 50 ms)'], rows)}\n`)
    stdout.write(`${heldWords(before, after)}\n`)
    stdout.write(`${((busy.user + busy.system) / 1000 / sent).toFixed(2)} ms of processor time a command\n`)
    for (const each of new Set(bot.noted)) stdout.write(`noted: ${each}\n`)
    return refused + (sent - answered.length) + bot.noted.length
  },
}
