import { createHash } from 'node:crypto'
import type { Keeping } from '../bot/platform.ts'
import type { DocumentKey, Store } from '../bot/state.ts'

/** What `platform` keeps for itself in the store: events it has seen, and lines too long for a button. */
export function createKeeping(store: Store, platform: string, now: () => Date): Keeping {
  const keyOf = (id: string): DocumentKey => ({ kind: 'line', platform, workspace: '', id })
  return {
    once: (event) => store.once(`${platform}:${event}`, now()),
    keepLine: async (line) => {
      const name = createHash('sha256').update(line).digest('base64url').slice(0, 22)
      // Kept already, the change meets a newer revision, and there is nothing more to do.
      await store.change(keyOf(name), 0, line, { user: '', command: '' }, now())
      return name
    },
    recallLine: async (name) => {
      const { body } = await store.read(keyOf(name))
      return typeof body === 'string' ? body : undefined
    },
  }
}
