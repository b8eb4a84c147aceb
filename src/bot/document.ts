import type { z } from 'zod'
import { Refusal } from './refusal.ts'
import { changeWithRetry, type DocumentKey, type Revision, type Store } from './state.ts'

/** Who is changing something, by which line, and when. */
export interface Doing {
  readonly user: string
  readonly command: string
  readonly at: Date
}

/** One thing that is kept for a channel or a person, read and written as values of its schema. */
export interface Document<Body> {
  /** Undefined when nothing is kept. */
  readonly read: () => Promise<Body | undefined>
  /** Applies `edit` to what is kept now; run again on the newer state when somebody else was faster. */
  readonly change: (edit: (body: Body | undefined) => Body) => Promise<Edited<Body>>
  /** What was undone or brought back, and what holds now; undefined when there is nothing to undo or redo. */
  readonly undo: () => Promise<Moved<Body> | undefined>
  readonly redo: () => Promise<Moved<Body> | undefined>
  /** Newest first. */
  readonly history: (most: number) => Promise<readonly Revision[]>
  /** Deletes it with every revision; says how many there were. */
  readonly forget: () => Promise<number>
  /** Deletes all that was before what holds now, and with it what undo could go back to. */
  readonly trim: () => Promise<number>
}

/** What stood before an edit and after it, and the revision that it made. */
export interface Edited<Body> {
  readonly before: Body | undefined
  readonly after: Body
  readonly revision: number
}

export interface Moved<Body> {
  readonly body: Body | undefined
  /** The change that was undone or brought back. */
  readonly revision: Revision
}

/** How a document is mended that cannot be read any more: `undo` goes back, `anew` lets the next change set it again. */
export type Mending = 'undo' | 'anew'

/** Opens the document of `key`, whose bodies are checked against `schema` whenever they are read. */
export function openDocument<Schema extends z.ZodType>(
  store: Store,
  key: DocumentKey,
  schema: Schema,
  doing: Doing,
  mending: Mending = 'undo',
): Document<z.output<Schema>> {
  type Body = z.output<Schema>
  const parse = (body: unknown): Body | undefined => {
    if (body === undefined) return undefined
    const parsed = schema.safeParse(body)
    if (parsed.success) return parsed.data
    throw new Refusal('fault', unreadable(key.kind, mending))
  }
  const parseOrLeave = (body: unknown): Body | undefined =>
    mending === 'anew' ? schema.safeParse(body).data : parse(body)
  const author = { user: doing.user, command: doing.command }
  const moved = async (way: 'undo' | 'redo') => {
    const result = await store[way](key, author, doing.at)
    return result.status === 'nothing' ? undefined : { body: parse(result.body), revision: result.revised }
  }
  return {
    read: async () => parse((await store.read(key)).body),
    change: async (edit) => {
      let before: Body | undefined
      let after: Body | undefined
      const write = (body: unknown): Body => {
        before = parseOrLeave(body)
        after = edit(before)
        return after
      }
      const revision = await changeWithRetry(store, key, write, author, doing.at)
      return { before, after: after as Body, revision }
    },
    undo: () => moved('undo'),
    redo: () => moved('redo'),
    history: (most) => store.history(key, most),
    forget: () => store.forget(key),
    trim: () => store.trim(key),
  }
}

const unreadable = (kind: string, mending: Mending): string =>
  mending === 'anew'
    ? `the units kept for this ${kind} cannot be read any more; set them again, such as: units inch kerf=1/8in${kind === 'channel' ? ' for=channel' : ''}`
    : `what is kept for this ${kind} cannot be read any more; "${kind} history" shows who changed it last, and "${kind} undo" goes back`
