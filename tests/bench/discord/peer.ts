import { openLoopback } from '../../platforms/discord/loopback.ts'
import { slash } from '../../platforms/discord/slash.ts'
import type { Call, Json } from '../../platforms/discord/wire.ts'

/** What the process that plays Discord is told to send, and what it then saw. */
export interface Load {
  readonly seconds: number
  readonly rate: number
}

export interface Seen {
  /** From the event to its acknowledgement, and to its answer, in ms. */
  readonly acknowledged: readonly number[]
  readonly answered: readonly number[]
  /** To the answers of the first seconds at the full rate, which are not among those. */
  readonly starting: readonly number[]
  readonly sent: number
  readonly faults: readonly string[]
}

const LINES = [
  'strips 2x6 rip=1/2in',
  'convert 23 7/8 in',
  'spacing 36in piece=3 1/2in count=6',
  'diagonal 46in x 29in strip=3 1/2in',
  'finish 40 sq ft product=latex paint coats=2',
  'sizing 17in x 13in height=15in',
]

const sentAt = new Map<string, number>()
const acknowledged: number[] = []
const answered: number[] = []

function hear({ method, path, status }: Call): void {
  const token = /interaction-secret-\d+/u.exec(path)?.[0] ?? ''
  const from = sentAt.get(token)
  if (from === undefined || status >= 300) return
  if (method === 'POST' && path.endsWith('/callback')) acknowledged.push(performance.now() - from)
  if (method !== 'PATCH') return
  answered.push(performance.now() - from)
  sentAt.delete(token)
}

const loopback = await openLoopback({ hear })
const events: readonly Json[] = LINES.map(slash)

/** Two slow seconds and three at the full rate, in which the bot compiles what it needs, then what is counted. */
async function load(wanted: Load): Promise<Seen> {
  await send({ seconds: 2, rate: Math.ceil(wanted.rate / 10) })
  answered.splice(0)
  await send({ seconds: 3, rate: wanted.rate })
  const starting = answered.splice(0)
  acknowledged.splice(0)
  process.send?.('warm')
  const sent = await send(wanted)
  return { acknowledged, answered, starting, sent, faults: loopback.faults }
}

/** Sends events at an even rate, then waits for the last answers; says how many it sent. */
async function send({ seconds, rate }: Load): Promise<number> {
  const from = performance.now()
  let sent = 0
  while (sent < seconds * rate) {
    const due = Math.min(seconds * rate, Math.floor(((performance.now() - from) / 1000) * rate))
    for (; sent < due; sent += 1) {
      const at = performance.now()
      const { token } = loopback.interact(events[sent % events.length] ?? {})
      sentAt.set(token, at)
    }
    await new Promise((resolve) => setTimeout(resolve, 2))
  }
  const until = performance.now() + 10_000
  while (sentAt.size > 0 && performance.now() < until) await new Promise((resolve) => setTimeout(resolve, 10))
  return sent
}

process.on('message', (message: Load) => {
  void load(message).then((seen) => process.send?.(seen))
})
// Discord is there for as long as the bot: one that has gone would be looked for, again and again.
process.on('disconnect', () => process.exit(0))
process.send?.({ api: loopback.api })
