import type { Logger } from '../bot/log.ts'
import type { Platform } from '../bot/request.ts'

/** Milliseconds before a platform that did not start is tried again: twice as long each time, up to a minute. */
const FIRST_WAIT = 1000
const LONGEST_WAIT = 60_000

/** Platforms that are being kept up. */
export interface Serving {
  /** Settles once every platform was tried once; rejects with the first reason where none came up. */
  readonly started: Promise<void>
  /** Lets what is under way finish, then closes all. */
  readonly stop: () => Promise<void>
}

/**
 * Starts every platform, each apart from the others: one that fails is tried again while the rest go on. `pause` waits so
 * many milliseconds, or until `signal` says that it is over.
 */
export function serve(
  platforms: readonly Platform[],
  log: Logger,
  pause: (milliseconds: number, signal: AbortSignal) => Promise<void>,
): Serving {
  const over = new AbortController()
  const again = async (platform: Platform) => {
    for (let wait = FIRST_WAIT; !over.signal.aborted; wait = Math.min(2 * wait, LONGEST_WAIT)) {
      await pause(wait, over.signal).catch(() => undefined)
      if (over.signal.aborted) return
      if ((await attempt(platform, log)) === undefined) return
    }
  }
  let retrying: Promise<unknown> = Promise.resolve()
  const started = (async () => {
    const failures = await Promise.all(platforms.map((platform) => attempt(platform, log)))
    const failed = platforms.filter((_, index) => failures[index] !== undefined)
    if (failed.length === platforms.length) throw failures[0]
    retrying = Promise.all(failed.map(again))
  })()
  return {
    started,
    stop: async () => {
      over.abort()
      await started.catch(() => undefined)
      await retrying
      await Promise.allSettled(platforms.map((platform) => platform.stop()))
    },
  }
}

/** Why it did not start; undefined where it did. */
async function attempt(platform: Platform, log: Logger): Promise<Error | undefined> {
  try {
    await platform.start()
    log.info({ platform: platform.name, health: platform.health().says }, 'started')
    return undefined
  } catch (error) {
    const reason = error instanceof Error ? error : new Error(String(error))
    log.error({ platform: platform.name, reason: reason.message }, 'did not start')
    return reason
  }
}
