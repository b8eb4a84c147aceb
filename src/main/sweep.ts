import type { Logger } from '../bot/log.ts'

const DAY = 24 * 60 * 60 * 1000

/**
 * Does `work` now and once a day until `signal` says that it is over; one that fails is logged, and done again the day after.
 * `pause` waits so many milliseconds, or rejects when it is over.
 */
export async function daily(
  work: () => Promise<unknown>,
  log: Logger,
  pause: (milliseconds: number, signal: AbortSignal) => Promise<void>,
  signal: AbortSignal,
): Promise<void> {
  const over = new Promise<void>((resolve) => signal.addEventListener('abort', () => resolve()))
  const once = async () => {
    await work().catch((error: Error) => log.error({ err: error }, 'what is too old could not be deleted'))
    await pause(DAY, signal).catch(() => undefined)
  }
  while (!signal.aborted) await Promise.race([once(), over])
}
