import type { Logger } from '../bot/log.ts'

/**
 * Hears a promise that fails and that nobody waited for, as one deep in a library may: it is logged, and all go on, for one platform
 * is not to take the others with it. Only its kind and where it came from are said; its words may hold an address or a token.
 */
export const strayTo =
  (log: Logger) =>
  (reason: unknown): void => {
    const { name, stack = '' } = reason instanceof Error ? reason : new Error()
    const at = stack.split('\n').filter((line) => /^\s+at /u.test(line))
    log.error({ error: name, at: at.map((line) => line.trim()) }, 'something failed that nobody waited for')
  }
