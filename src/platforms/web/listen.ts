import type { FastifyInstance } from 'fastify'

/** Where a server came to listen. */
export interface Listening {
  readonly port: number
  /** The port that was wanted, where it was taken. */
  readonly taken?: number
}

/**
 * Listens at `port`, or where that is taken at the next free one, `tries` ports in all. Port 0 is any free one. Rejects
 * with a sentence when none of them is free.
 */
export async function listen(
  server: FastifyInstance,
  host: string,
  port: number,
  tries: number,
): Promise<Listening> {
  for (let wanted = port; wanted < port + tries && wanted <= 65_535; wanted += 1) {
    if (await listens(server, host, wanted)) {
      const address = server.server.address()
      const found = typeof address === 'object' && address ? address.port : wanted
      return { port: found, ...(wanted !== port && { taken: port }) }
    }
  }
  throw new Error(
    `ports ${port} to ${Math.min(port + tries - 1, 65_535)} are taken; choose another with --port`,
  )
}

async function listens(server: FastifyInstance, host: string, port: number): Promise<boolean> {
  try {
    await server.listen({ host, port })
    return true
  } catch (error) {
    if ((error as { code?: string }).code === 'EADDRINUSE') return false
    throw error
  }
}
