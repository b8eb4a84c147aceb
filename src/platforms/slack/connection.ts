import type { App, SocketModeReceiver } from '@slack/bolt'
import type { Logger } from '../../bot/log.ts'
import type { Health } from '../../bot/request.ts'
import type { HttpOptions } from './options.ts'
import { type Pause, pause } from './patientFetch.ts'
import { isRefusal, refusalWords } from './refusal.ts'
import { slackError } from './slackError.ts'

/** How Slack is heard. */
export interface Connection {
  /**
   * Resolves after the first attempt; goes on trying where that may help. Rejects with one sentence where the port is taken
   * or Slack refuses the token.
   */
  readonly start: () => Promise<void>
  /** Stops hearing; work that is under way goes on. */
  readonly stop: () => Promise<void>
  readonly health: () => Health
}

interface Parts {
  readonly app: App
  readonly log: Logger
  readonly pause?: Pause | undefined
}

/** Seconds between attempts: 1, 2, 4, ... 32. */
const waitAfter = (failures: number): number => 1000 * 2 ** Math.min(failures - 1, 5)

/** Goes on until `attempt` succeeds, is refused for good, or is stopped; says what stands in the way. */
function createPersistence(attempt: () => Promise<unknown>, { log, pause: wait = pause }: Parts) {
  let trouble: string | undefined = 'not connected to Slack yet'
  const over = new AbortController()
  const once = async (): Promise<'settled' | 'refused' | 'open'> => {
    try {
      await attempt()
      trouble = undefined
      return 'settled'
    } catch (error) {
      if (isTaken(error)) throw error
      const why = slackError(error ?? {})
      trouble = `Slack cannot be reached (${why})`
      if (!isRefusal(why)) return over.signal.aborted ? 'settled' : 'open'
      trouble = refusalWords(why)
      log.error({ why }, trouble)
      return 'refused'
    }
  }
  const goOn = async (failures: number): Promise<void> => {
    await wait(waitAfter(failures), over.signal)
    if (over.signal.aborted || (await once()) !== 'open') return
    log.warn({ failures: failures + 1 }, 'Slack cannot be reached')
    await goOn(failures + 1)
  }
  const goOnLogged = () =>
    void goOn(1).catch((error) => log.error({ error: String(error) }, 'Slack is not heard any more'))
  return {
    begin: async () => {
      const state = await once()
      if (state === 'refused') throw new Error(trouble)
      if (state === 'open') goOnLogged()
    },
    lost: (why: string) => {
      trouble = why
    },
    stop: () => over.abort(),
    trouble: () => trouble,
    isStopped: () => over.signal.aborted,
  }
}

const isTaken = (error: unknown): boolean =>
  ['EADDRINUSE', 'EACCES', 'EADDRNOTAVAIL'].includes((error as { code?: string } | undefined)?.code ?? '')

/**
 * Socket Mode. The library waits 5 s before it opens the next socket, and a failure on the way ends the process; so each
 * socket is opened from here, the next at once.
 */
export function createSocketConnection(parts: Parts, receiver: SocketModeReceiver): Connection {
  const { app, log } = parts
  let isReady = false
  const persistence = createPersistence(async () => {
    if (!isReady) await app.init()
    isReady = true
    if (persistence.isStopped()) return
    await app.start()
    // The library goes on with a socket that it was opening when it was stopped.
    if (persistence.isStopped()) await app.stop()
  }, parts)
  receiver.client.on('disconnected', () => {
    if (persistence.isStopped() || persistence.trouble() !== undefined) return
    persistence.lost('the socket to Slack is closed; opening the next')
    log.info({}, 'the socket to Slack is closed; opening the next')
    // A refusal is in the log and in the health by then.
    void persistence.begin().catch(() => undefined)
  })
  return {
    start: persistence.begin,
    stop: async () => {
      persistence.stop()
      // A peer that is gone never says good-bye; the library waits half a minute for it.
      const patience = new AbortController()
      await Promise.race([app.stop(), pause(2000, patience.signal)])
      patience.abort()
    },
    health: () => healthOf(persistence, 'connected to Slack by a socket'),
  }
}

/** HTTP: Slack posts to `/slack/events`, and people install at `/slack/install`. */
export function createHttpConnection(
  parts: Parts,
  { port, host }: HttpOptions,
  listening?: (port: number) => void,
): Connection {
  const { app } = parts
  let isListening = false
  const persistence = createPersistence(async () => {
    await app.init()
    if (persistence.isStopped()) return
    const server = await app.start({ port, ...(host !== undefined && { host }) })
    isListening = true
    const address = server.address()
    if (address !== null && typeof address === 'object') listening?.(address.port)
  }, parts)
  return {
    start: persistence.begin,
    stop: async () => {
      persistence.stop()
      if (isListening) await app.stop()
      isListening = false
    },
    health: () => healthOf(persistence, 'listening for Slack'),
  }
}

const healthOf = (
  persistence: { readonly trouble: () => string | undefined; readonly isStopped: () => boolean },
  well: string,
): Health => {
  if (persistence.isStopped()) return { well: false, says: 'stopped' }
  const trouble = persistence.trouble()
  return { well: trouble === undefined, says: trouble ?? well }
}
