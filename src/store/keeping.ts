import { createHash } from 'node:crypto'
import type { Keeping } from '../bot/platform.ts'
import type { DocumentKey, Store } from '../bot/state.ts'

/** What `platform` keeps for itself in the store: events it has seen, lines too long for a button, what it put up where. */
export function createKeeping(store: Store, platform: string, now: () => Date): Keeping {
  const keyOf = (id: string, kind = 'line'): DocumentKey => ({ kind, platform, workspace: '', id })
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
    recall: async (name) => {
      const { revision, body } = await store.read(keyOf(name, 'remembered'))
      return { revision, text: typeof body === 'string' ? body : undefined }
    },
    remember: async (name, text, revision) => {
      const author = { user: '', command: '' }
      const { status } = await store.change(keyOf(name, 'remembered'), revision, text, author, now())
      return status === 'changed'
    },
  }
}
