import { Refusal } from './refusal.ts'

/** Names one document. `kind` is what it holds, such as `project` or `person`; `id` is the channel's or the user's. */
export interface DocumentKey {
  readonly kind: string
  readonly platform: string
  readonly workspace: string
  readonly id: string
}

/** Who makes a change, and by which command line. */
export interface Author {
  readonly user: string
  readonly command: string
}

/** A document as it stands. Revision 0 is a document never written; the body is undefined when it is empty. */
export interface Versioned {
  readonly revision: number
  /** As it was written, through JSON and back; whoever reads it checks its shape. */
  readonly body: unknown
}

/** One entry of a document's history. `user` is empty once that person asked to be forgotten. */
export interface Revision extends Author {
  readonly revision: number
  readonly at: Date
  readonly way: 'edit' | 'undo' | 'redo'
}

/** What became of a change. */
export type Changed =
  | { readonly status: 'changed'; readonly revision: number }
  /** Somebody else was faster: nothing was written, and `revision` is the current one. */
  | { readonly status: 'conflict'; readonly revision: number }

/** What became of an undo or a redo; `nothing` when there was none to undo or bring back. */
export type Moved =
  /** What the document holds now, and the edit that was undone or brought back. */
  | {
      readonly status: 'changed'
      readonly revision: number
      readonly body: unknown
      readonly revised: Revision
    }
  | { readonly status: 'nothing' }

/** A person as a platform knows them; without a workspace, in every workspace of that platform. */
export interface Person {
  readonly platform: string
  readonly workspace?: string
  readonly user: string
}

/** How many revisions of a person's own documents and lines went, and how many others no longer name them. */
export interface Forgotten {
  readonly deleted: number
  readonly unnamed: number
}

/** What stands in a document for a person who was forgotten: another in every document, so that none leads to another. */
export type ForgottenId = `forgotten ${string}`

/** True for what stands in the place of a person who was forgotten. */
export const isForgotten = (user: string): user is ForgottenId => /^forgotten [\da-f-]{36}$/u.test(user)

/**
 * Keeps documents with every change that was made to them. Every method rejects with one sentence when what is kept
 * cannot be read or written.
 */
export interface Store {
  readonly read: (key: DocumentKey) => Promise<Versioned>
  /** Writes `body` (anything JSON can hold) if the document still is at `expected`; clears what could be redone. */
  readonly change: (
    key: DocumentKey,
    expected: number,
    body: unknown,
    author: Author,
    at: Date,
  ) => Promise<Changed>
  /** Writes `body` in the place of every revision there is, in one step: nobody ever finds the document gone. */
  readonly replace: (key: DocumentKey, body: unknown, author: Author, at: Date) => Promise<void>
  /** Goes back by one edit, as a revision of its own; before the first edit lies the empty document. */
  readonly undo: (key: DocumentKey, author: Author, at: Date) => Promise<Moved>
  /** Brings back the edit last undone, unless there has been a new one since. */
  readonly redo: (key: DocumentKey, author: Author, at: Date) => Promise<Moved>
  /** The newest `most` revisions that are kept, newest first. */
  readonly history: (key: DocumentKey, most: number) => Promise<readonly Revision[]>
  /** Deletes the document with every revision; says how many there were. */
  readonly forget: (key: DocumentKey) => Promise<number>
  /** Deletes every revision but the newest, so that nothing of what was before is left; says how many there were. */
  readonly trim: (key: DocumentKey) => Promise<number>
  /** Deletes every revision of documents of this kind that was written before `at`; says how many there were. */
  readonly forgetBefore: (kind: Omit<DocumentKey, 'id'>, at: Date) => Promise<number>
  /**
   * Deletes documents of kind `person` with this id and those of kind `line` that the person had kept, and takes the id out
   * of all others: of their histories, and of what they hold under `user`, `by` or in `people`, which is where people's ids
   * stand. A ForgottenId takes its place, the same throughout one document. A change that was made on what a document held
   * before that is a conflict.
   */
  readonly forgetPerson: (person: Person) => Promise<Forgotten>
  /** True the first time an event is seen within a day; platforms deliver some twice. */
  readonly once: (eventId: string, at: Date) => Promise<boolean>
  readonly close: () => Promise<void>
}

/**
 * Reads, edits and writes, again on the newer state as long as another process was faster; gives the new revision. Edits
 * of one document in this process take turns. What `edit` throws comes through, and nothing is written.
 */
export function changeWithRetry(
  store: Store,
  key: DocumentKey,
  edit: (body: unknown) => unknown,
  author: Author,
  at: Date,
  tries = 50,
): Promise<number> {
  return inTurn(store, key, async () => {
    for (let attempt = 0; attempt < tries; attempt += 1) {
      const { revision, body } = await store.read(key)
      const result = await store.change(key, revision, edit(body), author, at)
      if (result.status === 'changed') return result.revision
    }
    throw new Refusal(
      'fault',
      'others are changing this at the same moment, so your change was not made; send the line again',
    )
  })
}

/** The last edit under way of each document, for as long as there is one. */
const underWay = new WeakMap<Store, Map<string, Promise<unknown>>>()

async function inTurn<Result>(store: Store, key: DocumentKey, work: () => Promise<Result>): Promise<Result> {
  const turns = underWay.get(store) ?? new Map<string, Promise<unknown>>()
  underWay.set(store, turns)
  const name = JSON.stringify([key.platform, key.workspace, key.kind, key.id])
  const mine = (turns.get(name) ?? Promise.resolve()).then(work, work)
  turns.set(name, mine)
  try {
    return await mine
  } finally {
    if (turns.get(name) === mine) turns.delete(name)
  }
}
