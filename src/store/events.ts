import type { Transaction } from 'kysely'
import type { Tables } from './tables.ts'

const HOUR = 60 * 60 * 1000
const DAY = 24 * HOUR

/** Says whether an event is seen for the first time within a day. */
export type SeenFirst = (transaction: Transaction<Tables>, id: string, at: Date) => Promise<boolean>

/** Marks events as seen; true for one that had no mark, or one older than a day. Once an hour such old marks are dropped. */
export function createSeenFirst(): SeenFirst {
  let dropNext = Number.NEGATIVE_INFINITY
  return async (transaction, id, at) => {
    const dayBefore = new Date(at.getTime() - DAY).toISOString()
    if (at.getTime() >= dropNext) {
      await transaction.deleteFrom('events').where('at', '<', dayBefore).execute()
      dropNext = at.getTime() + HOUR
    }
    const { numInsertedOrUpdatedRows } = await transaction
      .insertInto('events')
      .values({ id, at: at.toISOString() })
      .onConflict((conflict) =>
        conflict.column('id').doUpdateSet({ at: at.toISOString() }).where('events.at', '<', dayBefore),
      )
      .executeTakeFirst()
    return numInsertedOrUpdatedRows === 1n
  }
}
