import { readdir } from 'node:fs/promises'
import type { FastifyInstance } from 'fastify'
import type { PlatformParts } from '../../bot/platform.ts'
import type { Platform } from '../../bot/request.ts'
import { createConversation } from './conversation.ts'
import { limits } from './limits.ts'
import { type Listening, listen } from './listen.ts'
import { createLive } from './live.ts'
import { addRoutes } from './routes.ts'
import { createServer } from './server.ts'
import type { Transcript } from './transcript.ts'

export interface WebRoomOptions {
  /** The address to listen at: 127.0.0.1 for this machine alone, 0.0.0.0 for everybody on its network. */
  readonly host: string
  /** Port 0 is any free one. */
  readonly port: number
  /** Ports that are tried in turn where the first is taken; 1 for that one and no other. */
  readonly tries?: number
  /** Host names that the room is opened by, beside this machine's own. */
  readonly names?: readonly string[]
  /** The folder with the page: src/platforms/web/page. */
  readonly page: string
  readonly transcript: Transcript
}

/** The room in the browser: a page of its own, with no account and no other service. */
export interface WebRoom extends Platform {
  /** What to open; empty until it has started. */
  readonly url: () => string
}

/** A room in the browser, over a server that this machine alone can reach unless `host` says otherwise. */
export function createWebRoom(parts: PlatformParts, options: WebRoomOptions): WebRoom {
  const live = createLive()
  const conversation = createConversation(parts, options.transcript, live)
  let server: FastifyInstance | undefined
  let listening: Listening | undefined
  let over = new AbortController()
  let watching: Promise<void> | undefined
  const url = () => (listening ? `http://${shownHost(options.host)}:${listening.port}` : '')
  return {
    name: 'web',
    limits,
    url,
    start: async () => {
      await findPage(options.page)
      server = await createServer({ names: [], ...options }, parts.log)
      addRoutes(server, { ...parts, transcript: options.transcript, conversation, live })
      try {
        listening = await listen(server, options.host, options.port, options.tries ?? 20)
      } catch (error) {
        await server.close()
        throw error
      }
      over = new AbortController()
      watching = conversation.boards.watch(over.signal)
    },
    stop: async () => {
      listening = undefined
      over.abort()
      await Promise.all([conversation.settled(), watching])
      live.closeAll()
      await server?.close()
    },
    health: () => ({ well: listening !== undefined, says: saysOf(url(), listening) }),
  }
}

function saysOf(url: string, listening: Listening | undefined): string {
  if (!listening) return 'the room in the browser is closed'
  const taken = listening.taken === undefined ? '' : ` (port ${listening.taken} is taken)`
  return `the room is open at ${url}${taken}`
}

/** Fails at the start, not at the first visit, where the page was not found. */
const findPage = (folder: string): Promise<unknown> =>
  readdir(folder).catch(() => {
    throw new Error(`the page of the room is not in ${folder}`)
  })

/** An address that a browser on this machine can open. */
const shownHost = (host: string): string => {
  if (host === '0.0.0.0' || host === '::') return '127.0.0.1'
  return host.includes(':') ? `[${host}]` : host
}
