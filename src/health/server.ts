import { fastify } from 'fastify'
import type { Health, Platform } from '../bot/request.ts'
import type { Metrics } from './metrics.ts'

export interface HealthOptions {
  readonly host: string
  /** 0 takes any free port. */
  readonly port: number
  /** Milliseconds until what is kept counts as unreadable; whoever looks after the process waits two seconds at most. */
  readonly patience?: number
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
 * `/metrics`. Meant for a supervisor on the same machine: it tells no secret, but names the platforms. Throws an Error of one
 * sentence where it cannot listen there.
 */
export async function startHealth(parts: HealthParts, options: HealthOptions): Promise<HealthServer> {
  const { host, port, patience = 1500 } = options
  const server = fastify({ bodyLimit: 1024, forceCloseConnections: true })
  const checkStore = storeCheck(parts.readStore, patience)
  server.get('/healthz', () => ({ well: true }))
  server.get('/readyz', async (_request, reply) => {
    const store = await checkStore()
    const checks = {
      store,
      ...Object.fromEntries(parts.platforms.map(({ name, health }) => [name, health()])),
    }
    const well = Object.values(checks).every((each) => each.well)
    return reply.code(well ? 200 : 503).send({ well, checks })
  })
  server.get('/metrics', async (_request, reply) =>
    reply.header('content-type', parts.metrics.type).send(await parts.metrics.text()),
  )
  const url = await server.listen({ host, port }).catch(async (error: { code?: string; message: string }) => {
    await server.close()
    const why = error.code === 'EADDRINUSE' ? `port ${port} is taken` : error.message
    throw new Error(
      `the health endpoint cannot listen at ${host}: ${why}; set BATTENBOT_HEALTH_PORT to a port that is free`,
    )
  })
  return { url, close: () => server.close() }
}

/** Looks whether what is kept can be read, with one reading at a time however often it is asked. */
function storeCheck(readStore: HealthParts['readStore'], patience: number): () => Promise<Health> {
  let reading: Promise<Health> | undefined
  const read = () =>
    readStore()
      .then(
        () => ({ well: true, says: 'what is kept can be read' }),
        () => ({ well: false, says: 'what is kept cannot be read' }),
      )
      .finally(() => {
        reading = undefined
      })
  return async () => {
    reading ??= read()
    let timer: NodeJS.Timeout | undefined
    const late = new Promise<Health>((resolve) => {
      timer = setTimeout(resolve, patience, { well: false, says: 'what is kept does not answer' })
    })
    return Promise.race([reading, late]).finally(() => clearTimeout(timer))
  }
}
