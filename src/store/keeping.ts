import { createHash } from 'node:crypto'
import type { Keeping, TapName } from '../bot/platform.ts'
import type { DocumentKey, Store } from '../bot/state.ts'

/** Days that a line is kept after it was last put on a button. */
const LINE_DAYS = 90
const DAY = 24 * 60 * 60 * 1000

/** What `platform` keeps for itself in the store: events it has seen, lines too long for a button, what it put up where. */
export function createKeeping(store: Store, platform: string, now: () => Date): Keeping {
  const keyOf = (id: string, kind = 'line'): DocumentKey => ({ kind, platform, workspace: '', id })
  return {
    once: (event) => store.once(`${platform}:${event}`, now()),
    keepLine: async (line, user) => {
      // Everybody's lines are their own, so that they go with whoever asks to be forgotten.
      const text = JSON.stringify([user, line])
      const name = createHash('sha256').update(text).digest('base64url').slice(0, 22)
      await store.replace(keyOf(name), line, { user, command: '' }, now())
      return name
    },
    recallLine: async (name) => {
      const { body } = await store.read(keyOf(name))
      return typeof body === 'string' ? body : undefined
    },
    recall: async (name) => {
      const { revision, body } = await store.read(keyOf(name, kindOf(name)))
      return { revision, text: typeof body === 'string' ? body : undefined }
    },
    remember: async (name, text, revision) => {
      const author = { user: '', command: '' }
      const key = keyOf(name, kindOf(name))
      const { status } = await store.change(key, revision, text, author, now())
      if (status !== 'changed') return false
      // Nobody goes back to what was remembered before, and it may be what somebody wanted forgotten.
      await store.trim(key)
      return true
    },
  }
}

const TAP = 'tap ' satisfies TapName

const kindOf = (name: string) => (name.startsWith(TAP) ? 'tap' : 'remembered')

/**
 * Deletes the lines of `platform` that have been on no new button for 90 days, and what is remembered of taps as old; says how
 * many there were.
 */
export async function dropOldLines(store: Store, platform: string, now: Date): Promise<number> {
  const before = new Date(now.getTime() - LINE_DAYS * DAY)
  const drop = (kind: string) => store.forgetBefore({ kind, platform, workspace: '' }, before)
  return (await drop('line')) + (await drop('tap'))
}
