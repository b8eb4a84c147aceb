import { randomUUID } from 'node:crypto'
import { setTimeout as pause } from 'node:timers/promises'
import type { Keeping } from '../../bot/platform.ts'
import { customId, lineOf, type Press, shortId } from './customId.ts'

/** The lines behind forms: an id for each in time for it to be opened, and the line behind an id. */
export interface FormLines {
  /** The id of a form for what `line` still lacks; never waits for the store for long, and never rejects. */
  readonly idOf: (line: string, user: string) => Promise<string>
  /** The line behind a form or a button; undefined where it is kept no more. */
  readonly lineOf: (press: Press) => Promise<string | undefined>
}

/** How long opening a form waits for the store, in ms: Discord waits for three seconds in all. */
const PATIENCE = 1000

/** Lines that are held in memory; a form is open for minutes. */
const MOST = 200

/**
 * A form has to be the first answer to its event. A line too long for its id is kept in the store where that is quick, so
 * that the form outlives this process; else it is held in memory.
 */
export function createFormLines(keeping: Keeping, patience = PATIENCE): FormLines {
  const held = new Map<string, string>()
  const hold = (line: string): string => {
    const name = randomUUID()
    held.set(name, line)
    const [oldest] = held.keys()
    if (held.size > MOST && oldest !== undefined) held.delete(oldest)
    return `${shortId('ask', '').slice(0, -1)}#${name}`
  }
  return {
    idOf: async (line, user) => (await inTime(customId('ask', line, keeping, user), patience)) ?? hold(line),
    lineOf: async (press) =>
      ('kept' in press ? held.get(press.kept) : undefined) ?? (await lineOf(press, keeping)),
  }
}

/** What was promised, if it comes in time for a form to be opened; undefined where it is late or fails. */
export async function inTime<Value>(
  promised: Promise<Value>,
  patience = PATIENCE,
): Promise<Value | undefined> {
  const late = new AbortController()
  try {
    const waited = pause(patience, undefined, { signal: late.signal }).catch(() => undefined)
    return await Promise.race([promised.catch(() => undefined), waited])
  } finally {
    late.abort()
  }
}
