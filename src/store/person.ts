import { sql, type Transaction } from 'kysely'
import type { Forgotten, Person } from '../bot/state.ts'
import type { RevisionRow, Tables } from './tables.ts'

/** What stands in a body for a person who asked to be forgotten. */
const NOBODY = 'forgotten'

/** Keys under which a body holds people's ids, alone or in a list. */
const PEOPLE: ReadonlySet<string> = new Set(['user', 'by', 'people'])

/** Deletes the person's own documents, and takes the person out of all others: as an author, and in what they hold. */
export async function forgetPerson(transaction: Transaction<Tables>, person: Person): Promise<Forgotten> {
  const { platform, workspace, user } = person
  const place = workspace === undefined ? { platform } : { platform, workspace }
  const { numDeletedRows } = await transaction
    .deleteFrom('revisions')
    .where((row) => row.and({ ...place, kind: 'person', id: user }))
    .executeTakeFirst()
  const { numUpdatedRows } = await transaction
    .updateTable('revisions')
    .set({ author: '' })
    .where((row) => row.and({ ...place, author: user }))
    .executeTakeFirst()
  const naming = await transaction
    .selectFrom('revisions')
    .selectAll()
    .where((row) => row.and(place))
    .where(sql<boolean>`body like ${containing(JSON.stringify(user))} escape '!'`)
    .execute()
  for (const row of naming) await unname(transaction, row, user)
  return { deleted: Number(numDeletedRows), unnamed: Number(numUpdatedRows) }
}

const containing = (text: string): string => `%${text.replace(/[!%_]/gu, '!$&')}%`

async function unname(transaction: Transaction<Tables>, row: RevisionRow, user: string): Promise<void> {
  const { platform, workspace, kind, id, number } = row
  const body = bodyWithout(row.body ?? '', user)
  if (body === undefined) return
  await transaction
    .updateTable('revisions')
    .set({ body })
    .where((each) => each.and({ platform, workspace, kind, id, number }))
    .execute()
}

/** The body with the person's id taken out of it; undefined where it is no JSON, which nobody can read anyway. */
function bodyWithout(body: string, user: string): string | undefined {
  const taken = (value: unknown) => (value === user ? NOBODY : value)
  try {
    return JSON.stringify(
      JSON.parse(body, (key, value: unknown) => {
        if (!PEOPLE.has(key)) return value
        return Array.isArray(value) ? value.map(taken) : taken(value)
      }),
    )
  } catch {
    return undefined
  }
}
