import { DEFAULT_MIGRATION_TABLE, type Kysely, type Migration, Migrator } from 'kysely'
import { createEvents } from './migrations/events.ts'
import { createRevisions } from './migrations/revisions.ts'
import { StoreError } from './storeError.ts'
import type { Tables } from './tables.ts'

/** Every step from nothing to the present schema, run in the order of their names. Add to the end; never edit one. */
const STEPS: Readonly<Record<string, Migration>> = {
  '001-revisions': { up: createRevisions },
  '002-events': { up: createEvents },
}

/**
 * Brings the schema of `database` up to date; `place` names it in errors. Throws a StoreError when a newer battenbot has
 * been at it. Where the database has no transactions for schema changes, the caller holds its lock meanwhile.
 */
export async function migrate(database: Kysely<Tables>, place: string): Promise<void> {
  const migrator = new Migrator({ db: database, provider: { getMigrations: async () => ({ ...STEPS }) } })
  const { error } = await migrator.migrateToLatest()
  if (error === undefined) return
  const newer = (await stepsTaken(database)).find((name) => !Object.hasOwn(STEPS, name))
  throw newer === undefined
    ? error
    : new StoreError(
        `${place} was written by a newer battenbot (it has step "${newer}"); run that one, or a copy made before`,
        error,
      )
}

async function stepsTaken(database: Kysely<Tables>): Promise<readonly string[]> {
  const dynamic = database.withTables<Record<typeof DEFAULT_MIGRATION_TABLE, { name: string }>>()
  const rows = await dynamic.selectFrom(DEFAULT_MIGRATION_TABLE).select('name').execute()
  return rows.map(({ name }) => name)
}
