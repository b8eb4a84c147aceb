import type { Transaction } from 'kysely'
import type { Tables } from './tables.ts'

const DAY = 24 * 60 * 60 * 1000

/** Marks the event as seen and drops the marks older than a day; true when it had none. */
export async function seenFirst(transaction: Transaction<Tables>, id: string, at: Date): Promise<boolean> {
  const dayBefore = new Date(at.getTime() - DAY).toISOString()
  await transaction.deleteFrom('events').where('at', '<', dayBefore).execute()
  const { numInsertedOrUpdatedRows } = await transaction
    .insertInto('events')
    .values({ id, at: at.toISOString() })
    .onConflict((conflict) => conflict.doNothing())
    .executeTakeFirst()
  return numInsertedOrUpdatedRows === 1n
}
