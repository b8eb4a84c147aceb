import { type Entry, sees, viewFor } from './entry.ts'
import type { Posted } from './posted.ts'
import type { Visitor } from './visitor.ts'

/** An open page. */
export interface Page {
  readonly visitor: Visitor
  /** Sends one event; what it holds is JSON. */
  readonly send: (event: string, body: unknown) => void
  readonly close: () => void
}

/** The pages that are open, by channel. */
export interface Live {
  readonly count: () => number
  /** Where somebody has a page open. */
  readonly channels: () => ReadonlySet<string>
  /** Gives what takes the page out again. */
  readonly join: (page: Page) => () => void
  /** Tells everybody in the channel who may see the entry. */
  readonly publish: (channel: string, entry: Entry) => void
  /** Tells everybody in the channel what stands there for all now. */
  readonly publishPosted: (channel: string, posted: Posted) => void
  /** Tells everybody in the channel that what it keeps has changed. */
  readonly publishChange: (channel: string) => void
  /** Tells everybody in the channel which entries are gone. */
  readonly publishForgotten: (channel: string, ids: readonly string[]) => void
  readonly closeAll: () => void
}

/** Nobody there yet. */
export function createLive(): Live {
  const pages = new Set<Page>()
  const inChannel = (channel: string) => [...pages].filter(({ visitor }) => visitor.channel === channel)
  return {
    count: () => pages.size,
    channels: () => new Set([...pages].map(({ visitor }) => visitor.channel)),
    join: (page) => {
      pages.add(page)
      return () => void pages.delete(page)
    },
    publish: (channel, entry) => {
      for (const { visitor, send } of inChannel(channel))
        if (sees(visitor, entry)) send('entry', viewFor(visitor, entry))
    },
    publishPosted: (channel, posted) => {
      for (const { send } of inChannel(channel)) send('posted', posted)
    },
    publishChange: (channel) => {
      for (const { send } of inChannel(channel)) send('changed', {})
    },
    publishForgotten: (channel, ids) => {
      if (ids.length === 0) return
      for (const { send } of inChannel(channel)) send('forgotten', { ids })
    },
    closeAll: () => {
      for (const page of pages) page.close()
      pages.clear()
    },
  }
}
