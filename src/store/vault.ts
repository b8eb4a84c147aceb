import type { Store } from '../bot/state.ts'

/** Keeps one text by name, for a platform that has something of its own to remember, such as an installation. */
export interface Vault {
  /** Undefined when nothing is kept. */
  readonly read: (id: string) => Promise<string | undefined>
  /** In one step: whoever reads meanwhile finds the text before or this one. */
  readonly write: (id: string, value: string) => Promise<void>
  readonly forget: (id: string) => Promise<void>
}

/** A vault in the store; only the newest text is kept, nothing of what it was before. */
export function createVault(store: Store, platform: string, now: () => Date): Vault {
  const keyOf = (id: string) => ({ kind: 'vault', platform, workspace: '', id })
  return {
    read: async (id) => {
      const { body } = await store.read(keyOf(id))
      return typeof body === 'string' ? body : undefined
    },
    write: (id, value) => store.replace(keyOf(id), value, { user: '', command: '' }, now()),
    forget: async (id) => void (await store.forget(keyOf(id))),
  }
}
