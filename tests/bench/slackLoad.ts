import { createHmac } from 'node:crypto'
import { Agent, createServer, request } from 'node:http'
import type { AddressInfo } from 'node:net'

/** What the load is: given by slack.ts. */
export interface Load {
  readonly rate: number
  readonly seconds: number
  readonly secret: string
  readonly lines: readonly string[]
}

/** What came of it: milliseconds from sending a command to its acknowledgement, and to its answer. */
export interface LoadOutcome {
  readonly sent: number
  readonly acknowledged: readonly number[]
  readonly answered: readonly number[]
  /** To the answers of the first seconds at the full rate, which are not among those. */
  readonly starting: readonly number[]
  readonly refused: number
}

const { rate, seconds, secret, lines } = JSON.parse(process.argv[2] ?? '{}') as Load

const tell = (message: object): void => void process.send?.(message)

/** When each command was sent, by the id in its response_url. */
const sent: number[] = []
const answered: number[] = []
const acknowledged: number[] = []
let refused = 0

/** The other side of the bot: says who it is, and takes answers. */
const server = createServer((incoming, response) => {
  const id = /^\/respond\/(\d+)$/u.exec(incoming.url ?? '')?.[1]
  if (id !== undefined) answered.push(performance.now() - (sent[Number(id)] ?? 0))
  incoming.resume()
  response.setHeader('content-type', 'application/json')
  response.end(
    JSON.stringify({ ok: true, user_id: 'U0', bot_id: 'B0', team_id: 'T1', user: {}, channel: {} }),
  )
})

/** As many as a service that posts to many keeps open. */
const agent = new Agent({ keepAlive: true, maxSockets: 64 })

/** Sends one command as Slack does, signed. */
function send(port: number, id: number): void {
  const body = new URLSearchParams({
    team_id: 'T1',
    channel_id: `C${id % 50}`,
    user_id: `U${id % 200}`,
    command: '/batten',
    text: lines[id % lines.length] ?? '',
    response_url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/respond/${id}`,
    trigger_id: `trigger-${id}`,
  }).toString()
  const at = String(Math.floor(Date.now() / 1000))
  const hash = createHmac('sha256', secret).update(`v0:${at}:${body}`).digest('hex')
  const headers = {
    'content-type': 'application/x-www-form-urlencoded',
    'content-length': Buffer.byteLength(body),
    'x-slack-request-timestamp': at,
    'x-slack-signature': `v0=${hash}`,
  }
  sent[id] = performance.now()
  request({ port, host: '127.0.0.1', path: '/slack/events', method: 'POST', headers, agent }, (response) => {
    response.resume()
    if (response.statusCode === 200) acknowledged.push(performance.now() - (sent[id] ?? 0))
    else refused += 1
  })
    .on('error', () => {
      refused += 1
    })
    .end(body)
}

/** Two slow seconds and three at the full rate, in which the bot compiles what it needs, then what is counted. */
async function run(port: number): Promise<void> {
  await sendAll(port, Math.ceil(rate / 10), 2)
  answered.splice(0)
  await sendAll(port, rate, 3)
  const starting = answered.splice(0)
  acknowledged.splice(0)
  tell({ warm: true })
  const total = await sendAll(port, rate, seconds)
  const outcome: LoadOutcome = { sent: total, acknowledged, answered, starting, refused }
  tell({ outcome })
}

/** Sends as many as are due by the clock, so that a slow bot is not spared; waits for their answers, and says how many it sent. */
async function sendAll(port: number, each: number, long: number): Promise<number> {
  const before = sent.length
  const total = each * long
  const from = performance.now()
  while (sent.length < before + total) {
    const due = Math.min(total, Math.floor(((performance.now() - from) / 1000) * each))
    while (sent.length < before + due) send(port, sent.length)
    await new Promise((resolve) => setTimeout(resolve, 2))
  }
  const until = performance.now() + 10_000
  while (answered.length + refused < total && performance.now() < until)
    await new Promise((resolve) => setTimeout(resolve, 20))
  return total
}

process.on('message', ({ port }: { port: number }) => void run(port))
server.listen(0, '127.0.0.1', () => tell({ listening: (server.address() as AddressInfo).port }))
