import type { Logger } from '../bot/log.ts'
import type { Platform } from '../bot/request.ts'

/** Milliseconds before a platform that did not start is tried again: twice as long each time, up to a minute. */
const FIRST_WAIT = 1000
const LONGEST_WAIT = 60_000

/** Milliseconds that the others wait for a platform which neither starts nor fails; it goes on by itself. */
export const PATIENCE = 30_000

/** Milliseconds that a platform has to finish what is under way. */
export const LONGEST_STOP = 30_000

/** Waits so many milliseconds, or until `signal` says that it is over, which may be a rejection. */
type Pause = (milliseconds: number, signal: AbortSignal) => Promise<void>

/** Platforms that are being kept up. */
export interface Serving {
  /**
   * Tries every platform once, and then again until it is up. Resolves when each was tried, or takes too long, or all is to
   * stop; rejects with the first reason where none came up.
   */
  readonly start: () => Promise<void>
  /** Lets what is under way finish, then closes all; at any time, also while platforms are being started. */
  readonly stop: () => Promise<void>
}

/** Keeps platforms up, each apart from the others: one that fails is tried again while the rest go on. */
export function serve(platforms: readonly Platform[], log: Logger, pause: Pause): Serving {
  const over = new AbortController()
  const trying = new Map<Platform, Promise<Error | undefined>>()
  const within = async <Result>(milliseconds: number, work: Promise<Result>, signal?: AbortSignal) => {
    const done = new AbortController()
    const signals = signal ? [done.signal, signal] : [done.signal]
    const late = pause(milliseconds, AbortSignal.any(signals)).then(ignore, ignore)
    try {
      return await Promise.race([work, late.then(() => 'late' as const)])
    } finally {
      done.abort()
    }
  }
  const attempt = (platform: Platform): Promise<Error | undefined> => {
    const tried = attemptOnce(platform, log).finally(() => trying.delete(platform))
    trying.set(platform, tried)
    return tried
  }
  /** Tries again from when `failure` is known, until the platform is up. */
  const keepUp = async (platform: Platform, failure: Promise<Error | undefined>) => {
    let failed = (await failure) !== undefined
    for (let wait = FIRST_WAIT; failed && !over.signal.aborted; wait = Math.min(2 * wait, LONGEST_WAIT)) {
      await pause(wait, over.signal).catch(ignore)
      if (over.signal.aborted) return
      failed = (await attempt(platform)) !== undefined
    }
  }
  return {
    start: async () => {
      const first = platforms.map((platform) => ({ platform, tried: attempt(platform) }))
      const outcomes = await Promise.all(first.map(({ tried }) => within(PATIENCE, tried, over.signal)))
      const [failure] = outcomes
      if (failure instanceof Error && outcomes.every((each) => each instanceof Error)) throw failure
      for (const [index, { platform, tried }] of first.entries()) {
        if (outcomes[index] === 'late' && !over.signal.aborted)
          log.warn({ platform: platform.name }, 'takes long to start; the others go on')
        void keepUp(platform, tried)
      }
    },
    stop: async () => {
      over.abort()
      const starting = [...trying]
      const stopAll = (some: readonly Platform[]) =>
        Promise.allSettled(some.map((platform) => within(LONGEST_STOP, platform.stop())))
      await stopAll(platforms)
      // One that was being started may have come up after it was stopped.
      const up = await Promise.all(
        starting.map(async ([platform, tried]) =>
          (await within(LONGEST_STOP, tried)) === undefined ? [platform] : [],
        ),
      )
      await stopAll(up.flat())
    },
  }
}

const ignore = (): undefined => undefined

/** Why it did not start; undefined where it did. */
async function attemptOnce(platform: Platform, log: Logger): Promise<Error | undefined> {
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
