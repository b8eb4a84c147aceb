import { inspect } from 'node:util'
import type { Logger as BoltLogger } from '@slack/bolt'
import { LogLevel } from '@slack/bolt'
import type { Logger } from '../../bot/log.ts'

/** Slack's libraries write to our log what is a warning or worse, with every secret taken out. */
export const createBoltLog = (log: Logger, redact: (text: string) => string): BoltLogger => {
  const words = (said: readonly unknown[]) => redact(said.map(wordsOf).join(' '))
  return {
    debug: () => {},
    info: () => {},
    warn: (...said) => log.warn({ from: 'slack' }, words(said)),
    error: (...said) => log.error({ from: 'slack' }, words(said)),
    // Bolt asks for debug in its developer mode, which logs whole payloads.
    setLevel: () => {},
    getLevel: () => LogLevel.WARN,
    setName: () => {},
  }
}

const wordsOf = (said: unknown): string => {
  if (typeof said === 'string') return said
  return said instanceof Error
    ? said.message
    : inspect(said, { depth: 2, breakLength: Number.POSITIVE_INFINITY })
}
