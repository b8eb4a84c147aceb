import type { Logger } from '../../bot/log.ts'
import type { Health } from '../../bot/request.ts'
import type { Connection } from './connection.ts'
import { isTakenBack, refusalWords } from './refusal.ts'
import { slackError } from './slackError.ts'

/** Between two looks whether the token still counts, in ms. */
const EVERY = 5 * 60_000

/** A connection that tells when its token was taken back. */
export interface WatchedConnection extends Connection {
  /** Has a look at once: something was refused, or Slack said that the token is gone. */
  readonly doubt: () => void
}

/**
 * `connection` with a look at the token every five minutes: Slack goes on sending events, or falls silent, when a workspace
 * has taken the token back, and neither shows. `test` rejects as `auth.test` does; undefined where many workspaces have tokens.
 */
export function watchToken(
  connection: Connection,
  test: (() => Promise<unknown>) | undefined,
  log: Logger,
  every = EVERY,
): WatchedConnection {
  if (!test) return { ...connection, doubt: () => undefined }
  let refusal: string | undefined
  let isLooking = false
  let timer: NodeJS.Timeout | undefined
  let isStopped = false
  const look = async () => {
    try {
      await test()
      if (refusal !== undefined) log.info({}, 'Slack takes the token again')
      refusal = undefined
    } catch (error) {
      const why = slackError(error ?? {})
      if (isStopped || !isTakenBack(why)) return
      if (refusal === undefined) log.error({ why }, refusalWords(why))
      refusal = refusalWords(why)
    }
  }
  const doubt = () => {
    if (isLooking) return
    isLooking = true
    void look().finally(() => {
      isLooking = false
    })
  }
  return {
    start: async () => {
      await connection.start()
      clearInterval(timer)
      if (isStopped) return
      timer = setInterval(doubt, every)
      timer.unref()
    },
    // A look that is under way may take long where Slack is silent, and nobody needs it any more.
    stop: () => {
      isStopped = true
      clearInterval(timer)
      return connection.stop()
    },
    health: (): Health => {
      const health = connection.health()
      return health.well && refusal !== undefined ? { well: false, says: refusal } : health
    },
    doubt,
  }
}
