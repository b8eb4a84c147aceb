import { afterEach, describe, expect, it } from 'vitest'
import type { Health } from '../../src/bot/request.ts'
import { createMetrics } from '../../src/health/metrics.ts'
import { type HealthServer, startHealth } from '../../src/health/server.ts'
import { openRoom } from '../room.ts'

const WELL: Health = { well: true, says: 'connected' }

let server: HealthServer | undefined
afterEach(() => server?.close())

describe('the health server', () => {
  const platforms = new Map<string, Health>()
  let readStore = async (): Promise<unknown> => 1
  const start = async (patience?: number) => {
    server = await startHealth(
      {
        platforms: ['room', 'chat'].map((name) => ({ name, health: () => platforms.get(name) ?? WELL })),
        readStore: () => readStore(),
        metrics: createMetrics(),
      },
      { host: '127.0.0.1', port: 0, ...(patience !== undefined && { patience }) },
    )
    return server.url
  }
  const ready = async (url: string) => {
    const response = await fetch(`${url}/readyz`)
    return { status: response.status, ...((await response.json()) as { checks: Record<string, Health> }) }
  }

  it('is well while the store and every platform are', async () => {
    const url = await start()
    expect(await ready(url)).toEqual({
      status: 200,
      well: true,
      checks: { store: { well: true, says: 'what is kept can be read' }, room: WELL, chat: WELL },
    })
  })

  it('is not when one platform is not, and says which; the process still answers', async () => {
    const url = await start()
    platforms.set('chat', { well: false, says: 'shard 1 is not connected' })
    expect(await ready(url)).toMatchObject({
      status: 503,
      checks: { room: { well: true }, chat: { well: false, says: 'shard 1 is not connected' } },
    })
    expect((await fetch(`${url}/healthz`)).status).toBe(200)
    platforms.delete('chat')
    expect(await ready(url)).toMatchObject({ status: 200 })
  })

  it('is not when what is kept cannot be read, and keeps the reason to itself', async () => {
    const url = await start()
    readStore = () => Promise.reject(new Error('no such table in /home/somebody'))
    const { status, checks } = await ready(url)
    expect(status).toBe(503)
    expect(checks.store).toEqual({ well: false, says: 'what is kept cannot be read' })
  })

  it('says so when what is kept does not answer, reads no second time meanwhile, and is well again after', async () => {
    const url = await start(20)
    let reads = 0
    let answer: (value: unknown) => void = () => {}
    readStore = () => {
      reads += 1
      return new Promise((resolve) => {
        answer = resolve
      })
    }
    for (const _ of [1, 2]) {
      const { status, checks } = await ready(url)
      expect([status, checks.store]).toEqual([503, { well: false, says: 'what is kept does not answer' }])
    }
    expect(reads).toBe(1)
    answer(1)
    readStore = async () => 1
    expect((await ready(url)).status).toBe(200)
  })

  it('says in a sentence that its port is taken', async () => {
    const port = Number(new URL(await start()).port)
    const second = startHealth(
      { platforms: [], readStore: async () => 1, metrics: createMetrics() },
      { host: '127.0.0.1', port },
    )
    await expect(second).rejects.toThrow(
      `the health endpoint cannot listen at 127.0.0.1: port ${port} is taken; set BATTENBOT_HEALTH_PORT to a port that is free`,
    )
  })
})

describe('metrics', () => {
  it('count what was answered and what was refused, by platform, and nothing of who asked', async () => {
    const room = await openRoom()
    const metrics = createMetrics()
    const answer = metrics.counted(room.answer)
    for (const line of ['convert 24in', 'convert 25in', 'convert', 'no such thing'])
      await answer({
        place: { platform: 'room', workspace: 'local', channel: 'bench' },
        user: 'somebody-known',
        invocation: { line },
        at: new Date(Date.UTC(2026, 2, 6)),
      })
    const text = await metrics.text()
    expect(text).toContain('battenbot_answers_total{platform="room",outcome="answered"} 2')
    expect(text).toMatch(/battenbot_answers_total\{platform="room",outcome="unknown"\} 1/u)
    expect(text).toContain('battenbot_answer_seconds_count{platform="room"} 4')
    expect(text).not.toMatch(/somebody-known|24in|bench/u)
    await room.close()
  })
})
