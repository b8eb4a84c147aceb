import { fastify } from 'fastify'
import type { Health, Platform } from '../bot/request.ts'
import type { Metrics } from './metrics.ts'

export interface HealthOptions {
  readonly host: string
  /** 0 takes any free port. */
  readonly port: number
}

/** What the health server looks at. */
export interface HealthParts {
  readonly platforms: readonly Pick<Platform, 'name' | 'health'>[]
  /** Rejects when what is kept cannot be read. */
  readonly readStore: () => Promise<unknown>
  readonly metrics: Metrics
}

/** The server, once it listens. */
export interface HealthServer {
  readonly url: string
  readonly close: () => Promise<void>
}

/**
 * Serves `/healthz` (the process answers), `/readyz` (the store and every platform do; 503 with the reasons otherwise) and
 * `/metrics`. Meant for a supervisor on the same machine: it tells no secret, but names the platforms.
 */
export async function startHealth(parts: HealthParts, { host, port }: HealthOptions): Promise<HealthServer> {
  const server = fastify({ bodyLimit: 1024 })
  server.get('/healthz', () => ({ well: true }))
  server.get('/readyz', async (_request, reply) => {
    const checks = await check(parts)
    const well = Object.values(checks).every((each) => each.well)
    return reply.code(well ? 200 : 503).send({ well, checks })
  })
  server.get('/metrics', async (_request, reply) =>
    reply.header('content-type', parts.metrics.type).send(await parts.metrics.text()),
  )
  const url = await server.listen({ host, port })
  return { url, close: () => server.close() }
}

async function check({ platforms, readStore }: HealthParts): Promise<Readonly<Record<string, Health>>> {
  const store: Health = await readStore().then(
    () => ({ well: true, says: 'what is kept can be read' }),
    () => ({ well: false, says: 'what is kept cannot be read' }),
  )
  return { store, ...Object.fromEntries(platforms.map(({ name, health }) => [name, health()])) }
}
