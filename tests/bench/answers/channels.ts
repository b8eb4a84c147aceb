import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { Agent, request } from 'node:http'
import { type AddressInfo, createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { execPath, platform } from 'node:process'
import { ROOT } from '../../room.ts'

/** Bytes that the bot holds, as it says of itself, before and after; lines that were not answered. */
export interface Held {
  readonly before: number
  readonly after: number
  readonly wrong: number
}

/** What the room takes from one address in a minute, less some. */
const LINES_OF_ONE = 100
const AT_ONCE = 8

/** Starts the bot as it is started for a club, has a project begun in each of so many channels, and asks what it holds. */
export async function holdChannels(channels: number): Promise<Held> {
  const folder = mkdtempSync(join(tmpdir(), 'battenbot-bench-'))
  const [port, health] = [await freePort(), await freePort()]
  const child = spawn(execPath, ['src/launch.mjs', '--data', folder, '--port', String(port)], {
    cwd: ROOT,
    env: { PATH: process.env.PATH, BATTENBOT_HEALTH_PORT: String(health) },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  try {
    await listening(child)
    const agents = new Map<string, Agent>()
    const wrongOf = async (index: number) => ((await begin(port, index, agents)) ? 0 : 1)
    const warm = await wrongOf(channels)
    const before = await residentAt(health)
    let [next, wrong] = [0, warm]
    const sendOn = async () => {
      while (next < channels) {
        next += 1
        wrong += await wrongOf(next - 1)
      }
    }
    await Promise.all(Array.from({ length: AT_ONCE }, sendOn))
    for (const agent of agents.values()) agent.destroy()
    return { before, after: await residentAt(health), wrong }
  } finally {
    const gone = new Promise((resolve) => child.once('exit', resolve))
    child.kill()
    await gone
    rmSync(folder, { recursive: true })
  }
}

/** Resolves once the room is open; rejects where it ends before that. */
const listening = (child: ChildProcess): Promise<void> =>
  new Promise((resolve, reject) => {
    child.stdout?.once('data', () => resolve())
    child.once('exit', () => reject(new Error('the bot ended before its room was open')))
  })

/** A project in a channel, from an address that has not sent too much yet; only Linux has more than one of its own. */
function begin(port: number, index: number, agents: Map<string, Agent>): Promise<boolean> {
  const block = Math.floor(index / LINES_OF_ONE)
  const localAddress =
    platform === 'linux' ? `127.0.${Math.floor(block / 200)}.${1 + (block % 200)}` : '127.0.0.1'
  const agent = agents.get(localAddress) ?? new Agent({ keepAlive: true, maxSockets: 2 })
  agents.set(localAddress, agent)
  const line = `project start ${12 + (index % 30)}in x 13in height=15in sheet=1/2 ply`
  const body = JSON.stringify({ name: `person-${index % 500}`, channel: `channel-${index}`, line })
  const headers = {
    'content-type': 'application/json',
    'content-length': Buffer.byteLength(body),
    origin: `http://127.0.0.1:${port}`,
  }
  const options = {
    host: '127.0.0.1',
    port,
    localAddress,
    agent,
    path: '/room/lines',
    method: 'POST',
    headers,
  }
  return new Promise((resolve, reject) => {
    request(options, (response) => {
      response.resume().once('end', () => resolve(response.statusCode === 200))
    })
      .once('error', reject)
      .end(body)
  })
}

async function residentAt(port: number): Promise<number> {
  const text = await (await fetch(`http://127.0.0.1:${port}/metrics`)).text()
  return Number(/^process_resident_memory_bytes (\S+)/mu.exec(text)?.[1])
}

const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const server = createServer().once('error', reject)
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address() as AddressInfo
      server.close(() => resolve(port))
    })
  })
