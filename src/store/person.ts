import type { Transaction } from 'kysely'
import type { Forgotten, Person } from '../bot/state.ts'
import type { Tables } from './tables.ts'

/** Deletes the person's own documents, and empties the author of what they changed in others. */
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
  return { deleted: Number(numDeletedRows), unnamed: Number(numUpdatedRows) }
}
