import { randomUUID } from 'node:crypto'
import { type Expression, type ExpressionBuilder, type SqlBool, sql, type Transaction } from 'kysely'
import type { DocumentKey, Forgotten, ForgottenId, Person } from '../bot/state.ts'
import type { RevisionRow, Tables } from './tables.ts'
import { ofDocument } from './timeline.ts'

/** Keys under which a body holds people's ids, alone or in a list. */
const PEOPLE: ReadonlySet<string> = new Set(['user', 'by', 'people'])

type Row = ExpressionBuilder<Tables, 'revisions'>

/**
 * Deletes the person's own documents and the lines kept for them, and takes the person out of all others: as an author, and
 * in what they hold. `lock` keeps other writers off a document.
 */
export async function forgetPerson(
  transaction: Transaction<Tables>,
  person: Person,
  lock: (key: DocumentKey) => Promise<void>,
): Promise<Forgotten> {
  const { platform, user } = person
  for (const key of await touched(transaction, person)) await lock(key)
  const { numDeletedRows } = await transaction
    .deleteFrom('revisions')
    .where((row) => row.or([isOwn(row, person), row.and({ platform, kind: 'line', author: user })]))
    .executeTakeFirst()
  const naming = await transaction
    .selectFrom('revisions')
    .selectAll()
    .where((row) => isNaming(row, person))
    .execute()
  const { numUpdatedRows } = await transaction
    .updateTable('revisions')
    .set({ author: '' })
    .where((row) => isBy(row, person))
    .executeTakeFirst()
  const others = await unnameAll(transaction, naming, user)
  return { deleted: Number(numDeletedRows), unnamed: Number(numUpdatedRows) + others }
}

const inPlace = (row: Row, { platform, workspace }: Person): Expression<SqlBool> =>
  row.and(workspace === undefined ? { platform } : { platform, workspace })

const isOwn = (row: Row, person: Person): Expression<SqlBool> =>
  row.and([inPlace(row, person), row.and({ kind: 'person', id: person.user })])

const isBy = (row: Row, person: Person): Expression<SqlBool> =>
  row.and([inPlace(row, person), row('author', '=', person.user)])

const isNaming = (row: Row, person: Person): Expression<SqlBool> => {
  const quoted = `%${JSON.stringify(person.user).replace(/[!%_]/gu, '!$&')}%`
  return row.and([inPlace(row, person), sql<boolean>`body like ${quoted} escape '!'`])
}

/**
 * The documents that the person is to be taken out of, in an order that is everybody's, so that two who lock them never wait
 * for each other. Lines are only ever deleted, which needs no lock.
 */
const touched = (transaction: Transaction<Tables>, person: Person): Promise<readonly DocumentKey[]> =>
  transaction
    .selectFrom('revisions')
    .select(['platform', 'workspace', 'kind', 'id'])
    .distinct()
    .where('kind', '!=', 'line')
    .where((row) => row.or([isOwn(row, person), isBy(row, person), isNaming(row, person)]))
    .orderBy('platform')
    .orderBy('workspace')
    .orderBy('kind')
    .orderBy('id')
    .execute()

/** Takes the person out of these rows; says how many of them somebody else had written. */
async function unnameAll(
  transaction: Transaction<Tables>,
  rows: readonly RevisionRow[],
  user: string,
): Promise<number> {
  const documents = new Map<string, RevisionRow[]>()
  for (const row of rows) {
    const name = JSON.stringify([row.platform, row.workspace, row.kind, row.id])
    documents.set(name, [...(documents.get(name) ?? []), row])
  }
  let others = 0
  for (const each of documents.values()) {
    const nobody: ForgottenId = `forgotten ${randomUUID()}`
    const changed = each.flatMap((row) => {
      const body = bodyWithout(row.body ?? '', user, nobody)
      return body === undefined ? [] : [{ ...row, body }]
    })
    for (const row of changed) await rewrite(transaction, row)
    const [first] = changed
    if (first) await renumber(transaction, first)
    others += changed.filter(({ author }) => author !== user).length
  }
  return others
}

async function rewrite(
  transaction: Transaction<Tables>,
  { number, body, ...key }: RevisionRow,
): Promise<void> {
  await transaction
    .updateTable('revisions')
    .set({ body })
    .where(ofDocument(key))
    .where('number', '=', number)
    .execute()
}

/** Gives the newest revision the next number: who has read the one before it would bring the person back. */
async function renumber(transaction: Transaction<Tables>, key: DocumentKey): Promise<void> {
  const { newest } = await transaction
    .selectFrom('revisions')
    .select(({ fn }) => fn.max('number').as('newest'))
    .where(ofDocument(key))
    .executeTakeFirstOrThrow()
  await transaction
    .updateTable('revisions')
    .set({ number: newest + 1 })
    .where(ofDocument(key))
    .where('number', '=', newest)
    .execute()
}

/** The body with the person's id taken out; undefined where it does not stand there, or nobody can read the body anyway. */
function bodyWithout(body: string, user: string, nobody: ForgottenId): string | undefined {
  let found = false
  const taken = (value: unknown) => {
    if (value !== user) return value
    found = true
    return nobody
  }
  try {
    const without = JSON.parse(body, (key, value: unknown) => {
      if (!PEOPLE.has(key)) return value
      return Array.isArray(value) ? value.map(taken) : taken(value)
    })
    return found ? JSON.stringify(without) : undefined
  } catch {
    return undefined
  }
}
