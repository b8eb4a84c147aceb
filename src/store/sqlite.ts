import { mkdir } from 'node:fs/promises'
import { dirname } from 'node:path'
import BetterSqlite, { type Database } from 'better-sqlite3'
import { Kysely } from 'kysely'
import type { Store } from '../bot/state.ts'
import { createStore, type StoreSettings } from './documents.ts'
import { migrate } from './schema.ts'
import { explain, patiently, sqliteDialect } from './sqliteDialect.ts'
import { StoreError } from './storeError.ts'
import type { Tables } from './tables.ts'

/**
 * Opens the store in `file`, made with its folder when it is not there, or in memory for `:memory:`. Several processes may
 * have it open. Throws a StoreError when it cannot be opened or was written by a newer version.
 */
export async function openSqlite(file: string, settings: StoreSettings = {}): Promise<Store> {
  const connection = await connect(file)
  const database = new Kysely<Tables>({ dialect: sqliteDialect(connection) })
  try {
    await prepare(connection)
    await migrateAlone(connection, database)
  } catch (error) {
    connection.close()
    throw explain(error, connection)
  }
  // Transactions begin with the only write lock there is, so nothing is left to lock.
  return createStore({ database, lock: async () => {} }, settings)
}

async function connect(file: string): Promise<Database> {
  try {
    if (file !== ':memory:') await mkdir(dirname(file), { recursive: true })
    return new BetterSqlite(file)
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    throw new StoreError(
      `the store "${file}" cannot be opened: ${reason}; it and its folder must be writable`,
      error,
    )
  }
}

/** Settings that hold for the file or the connection; the first process to come turns on the write-ahead log. */
async function prepare(connection: Database): Promise<void> {
  await patiently(connection, () => connection.pragma('journal_mode = WAL'))
  connection.pragma('synchronous = NORMAL')
  // What was asked to be forgotten is overwritten, not only unlinked.
  connection.pragma('secure_delete = ON')
}

/** Two processes may open a new file at once: the second waits and finds the schema made. */
async function migrateAlone(connection: Database, database: Kysely<Tables>): Promise<void> {
  await patiently(connection, () => connection.exec('begin immediate'))
  try {
    await migrate(database, `the store "${connection.name}"`)
    connection.exec('commit')
  } catch (error) {
    if (connection.inTransaction) connection.exec('rollback')
    throw error
  }
}
