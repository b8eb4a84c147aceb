import type { Kysely } from 'kysely'

/** The table of events seen within a day, found by age to prune them. */
export async function createEvents(database: Kysely<unknown>): Promise<void> {
  await database.schema
    .createTable('events')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('at', 'text', (column) => column.notNull())
    .execute()
  await database.schema.createIndex('events_by_age').on('events').columns(['at']).execute()
}
