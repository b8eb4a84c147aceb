import type { Transaction } from 'kysely'
import type { Author, Changed, DocumentKey, Moved, Revision, Store } from '../bot/state.ts'
import type { Engine } from './engine.ts'
import { createSeenFirst } from './events.ts'
import { forgetPerson } from './person.ts'
import { StoreError } from './storeError.ts'
import type { RevisionRow, Tables } from './tables.ts'
import { headReader, ofDocument, openTimeline } from './timeline.ts'

/** What may be chosen of a store. */
export interface StoreSettings {
  /** Revisions kept of each document, and how many steps undo goes back; 200 when left out. */
  readonly revisionsKept?: number
}

/** The store on any engine that holds the schema. */
export function createStore(engine: Engine, { revisionsKept = 200 }: StoreSettings): Store {
  const { database } = engine
  const seenFirst = createSeenFirst()
  const headOf = headReader(database)
  const alone = <Result>(key: DocumentKey, work: (transaction: Transaction<Tables>) => Promise<Result>) =>
    database.transaction().execute(async (transaction) => {
      await engine.lock(transaction, nameOf(key))
      return work(transaction)
    })
  const move = (way: 'undo' | 'redo') => (key: DocumentKey, author: Author, at: Date) =>
    alone(key, (transaction) => moveAlong(transaction, key, { way, ...signed(author, at) }, revisionsKept))
  return {
    read: async (key) => {
      const head = await headOf(key)
      return head ? { revision: head.number, body: parse(head) } : { revision: 0, body: undefined }
    },
    change: async (key, expected, body, author, at) => {
      const text = write(body)
      return alone(key, (transaction) =>
        append(transaction, key, expected, { body: text, ...signed(author, at) }, revisionsKept),
      )
    },
    replace: async (key, body, author, at) => {
      const text = write(body)
      await alone(key, async (transaction) => {
        const timeline = openTimeline(transaction, key)
        const number = ((await timeline.head())?.number ?? 0) + 1
        await transaction.deleteFrom('revisions').where(ofDocument(key)).execute()
        const only = { way: 'edit', number, depth: 1, top: 1, body: text } as const
        await timeline.append({ ...only, ...signed(author, at) })
      })
    },
    undo: move('undo'),
    redo: move('redo'),
    history: async (key, most) => {
      const newest = database
        .selectFrom('revisions')
        .selectAll()
        .where(ofDocument(key))
        .orderBy('number', 'desc')
      return (await newest.limit(Math.min(most, revisionsKept)).execute()).map(revisionOf)
    },
    forget: (key) =>
      alone(key, async (transaction) => {
        const { numDeletedRows } = await transaction
          .deleteFrom('revisions')
          .where(ofDocument(key))
          .executeTakeFirst()
        return Number(numDeletedRows)
      }),
    trim: (key) =>
      alone(key, async (transaction) => {
        const newest = (await openTimeline(transaction, key).head())?.number ?? 0
        const { numDeletedRows } = await transaction
          .deleteFrom('revisions')
          .where(ofDocument(key))
          .where('number', '<', newest)
          .executeTakeFirst()
        return Number(numDeletedRows)
      }),
    forgetBefore: async ({ platform, workspace, kind }, at) => {
      const { numDeletedRows } = await database
        .deleteFrom('revisions')
        .where((row) => row.and({ platform, workspace, kind }))
        .where('at', '<', at.toISOString())
        .executeTakeFirst()
      return Number(numDeletedRows)
    },
    forgetPerson: (person) =>
      database
        .transaction()
        .execute((transaction) =>
          forgetPerson(transaction, person, (key) => engine.lock(transaction, nameOf(key))),
        ),
    once: (eventId, at) =>
      database.transaction().execute((transaction) => seenFirst(transaction, eventId, at)),
    close: () => database.destroy(),
  }
}

type Signed = Pick<RevisionRow, 'author' | 'command' | 'at'>

const signed = ({ user, command }: Author, at: Date): Signed => ({
  author: user,
  command,
  at: at.toISOString(),
})

async function append(
  transaction: Transaction<Tables>,
  key: DocumentKey,
  expected: number,
  written: Signed & Pick<RevisionRow, 'body'>,
  kept: number,
): Promise<Changed> {
  const timeline = openTimeline(transaction, key)
  const { number, depth } = (await timeline.head()) ?? { number: 0, depth: 0 }
  if (number !== expected) return { status: 'conflict', revision: number }
  const row = { ...written, way: 'edit', number: number + 1, depth: depth + 1, top: depth + 1 } as const
  await timeline.append(row)
  await timeline.prune(row, kept)
  return { status: 'changed', revision: row.number }
}

async function moveAlong(
  transaction: Transaction<Tables>,
  key: DocumentKey,
  signature: Signed & { readonly way: 'undo' | 'redo' },
  kept: number,
): Promise<Moved> {
  const timeline = openTimeline(transaction, key)
  const head = await timeline.head()
  if (!head) return { status: 'nothing' }
  const depth = head.depth + (signature.way === 'undo' ? -1 : 1)
  if (depth < 0 || depth > head.top) return { status: 'nothing' }
  const shown = depth === 0 ? EMPTY : await timeline.edit(depth)
  const revised = await timeline.edit(Math.max(depth, head.depth))
  if (!shown || !revised) return { status: 'nothing' }
  const row = { ...signature, number: head.number + 1, depth, top: head.top, body: shown.body }
  await timeline.append(row)
  await timeline.prune(row, kept)
  return {
    status: 'changed',
    revision: row.number,
    body: parse({ ...key, ...row }),
    revised: revisionOf(revised),
  }
}

/** What the first edit was made on. */
const EMPTY: Pick<RevisionRow, 'body'> = { body: null }

const revisionOf = ({ number, at, author, command, way }: RevisionRow): Revision => ({
  revision: number,
  at: new Date(at),
  user: author,
  command,
  way,
})

function write(body: unknown): string {
  const text = JSON.stringify(body) as string | undefined
  if (text === undefined)
    throw new TypeError('a document cannot hold undefined or a function; forget it to empty it')
  return text
}

function parse(row: DocumentKey & Pick<RevisionRow, 'number' | 'body'>): unknown {
  if (row.body === null) return undefined
  try {
    return JSON.parse(row.body)
  } catch (error) {
    const name = `${row.kind} ${[row.platform, row.workspace, row.id].join('/')}`
    throw new StoreError(
      `revision ${row.number} of "${name}" cannot be read: it is not JSON; undo it, or forget the document`,
      error,
    )
  }
}

const nameOf = ({ platform, workspace, kind, id }: DocumentKey): string =>
  JSON.stringify([platform, workspace, kind, id])
