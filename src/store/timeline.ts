import type { Expression, ExpressionBuilder, Kysely, SqlBool } from 'kysely'
import type { DocumentKey } from '../bot/state.ts'
import type { RevisionRow, Tables } from './tables.ts'

/**
 * The edits that lead to what a document shows, by depth: 1 is the first, and the one at each depth is the newest made
 * there. Undo and redo move along it, an edit cuts off what lies deeper. Nothing of it is stored but the rows themselves.
 */
export interface Timeline {
  /** The newest revision; undefined when nothing was ever written. */
  readonly head: () => Promise<RevisionRow | undefined>
  /** The edit at `depth`; undefined when it was pruned, or there is none. */
  readonly edit: (depth: number) => Promise<RevisionRow | undefined>
  readonly append: (row: Omit<RevisionRow, keyof DocumentKey>) => Promise<void>
  /** Drops what is older than the newest `kept` revisions and not within `kept` steps of undo or redo. */
  readonly prune: (head: Pick<RevisionRow, 'number' | 'depth' | 'top'>, kept: number) => Promise<void>
}

/** The timeline of the document `key`, within a transaction. */
export function openTimeline(database: Kysely<Tables>, key: DocumentKey): Timeline {
  const rows = () => database.selectFrom('revisions').selectAll().where(ofDocument(key))
  return {
    head: () => newestOf(database, key).executeTakeFirst(),
    edit: (depth) =>
      rows()
        .where('depth', '=', depth)
        .where('way', '=', 'edit')
        .orderBy('number', 'desc')
        .limit(1)
        .executeTakeFirst(),
    append: async (row) => {
      const { platform, workspace, kind, id } = key
      await database
        .insertInto('revisions')
        .values({ platform, workspace, kind, id, ...row })
        .execute()
    },
    prune: async (head, kept) => {
      if (head.number <= kept) return
      await database
        .deleteFrom('revisions')
        .where(ofDocument(key))
        .where('number', '<=', head.number - kept)
        .where((row) => row.not(onTimeline(row, key, head.depth - kept, head.top)))
        .execute()
    },
  }
}

type RevisionExpression = ExpressionBuilder<Tables, 'revisions'>

/** Stands for any document where a question is written once for all of them: each part by its own name. */
const ANY: DocumentKey = { platform: 'platform', workspace: 'workspace', kind: 'kind', id: 'id' }

/** Reads the newest revision of a document, as `head` does, with the question put into words only once. */
export function headReader(database: Kysely<Tables>): (key: DocumentKey) => Promise<RevisionRow | undefined> {
  const asked = newestOf(database, ANY).compile()
  return async (key) => {
    const parameters = asked.parameters.map((each) =>
      typeof each === 'string' ? key[each as keyof DocumentKey] : each,
    )
    const { rows } = await database.executeQuery<RevisionRow>({ ...asked, parameters })
    return rows[0]
  }
}

const newestOf = (database: Kysely<Tables>, key: DocumentKey) =>
  database.selectFrom('revisions').selectAll().where(ofDocument(key)).orderBy('number', 'desc').limit(1)

/** The rows of one document. */
export const ofDocument =
  (key: DocumentKey) =>
  (row: RevisionExpression): Expression<SqlBool> =>
    row.and({ platform: key.platform, workspace: key.workspace, kind: key.kind, id: key.id })

function onTimeline(
  row: RevisionExpression,
  key: DocumentKey,
  from: number,
  to: number,
): Expression<SqlBool> {
  const newer = row
    .selectFrom('revisions as newer')
    .select('newer.number')
    .where('newer.platform', '=', key.platform)
    .where('newer.workspace', '=', key.workspace)
    .where('newer.kind', '=', key.kind)
    .where('newer.id', '=', key.id)
    .whereRef('newer.depth', '=', 'revisions.depth')
    .whereRef('newer.number', '>', 'revisions.number')
    .where('newer.way', '=', 'edit')
  return row.and([
    row('way', '=', 'edit'),
    row('depth', '>=', from),
    row('depth', '<=', to),
    row.not(row.exists(newer)),
  ])
}
