import { setTimeout as pause } from 'node:timers/promises'
import { type Database, SqliteError } from 'better-sqlite3'
import {
  type Dialect,
  SqliteDialect,
  type SqliteDialectConfig,
  SqliteDriver,
  type SqliteStatement,
} from 'kysely'
import { StoreError } from './storeError.ts'

/** Milliseconds to wait for another process before giving up. */
const PATIENCE = 5000

/** Kysely's SQLite, but transactions hold the write lock from their start, and faults are StoreErrors that name the file. */
export function sqliteDialect(database: Database): Dialect {
  const config = { database: { prepare: preparer(database), close: () => void database.close() } }
  return Object.assign(new SqliteDialect(config), { createDriver: () => new WritingDriver(config, database) })
}

class WritingDriver extends SqliteDriver {
  readonly #database: Database
  constructor(config: SqliteDialectConfig, database: Database) {
    super(config)
    this.#database = database
  }
  override async beginTransaction(): Promise<void> {
    await patiently(this.#database, () => this.#database.exec('begin immediate'))
  }
}

/** Runs `work`; while another process is in the way, tries again later without holding up this one. */
export async function patiently<Result>(
  database: Database,
  work: () => Result,
  patience = PATIENCE,
): Promise<Result> {
  const deadline = performance.now() + patience
  for (;;) {
    try {
      database.pragma('busy_timeout = 0')
      return work()
    } catch (error) {
      if (!isBusy(error) || performance.now() > deadline) throw explain(error, database)
    } finally {
      database.pragma(`busy_timeout = ${PATIENCE}`)
    }
    await pause(1)
  }
}

/** The texts are few and fixed, so each is prepared once. */
function preparer(database: Database): (text: string) => SqliteStatement {
  const prepared = new Map<string, SqliteStatement>()
  return (text) => {
    const statement = prepared.get(text) ?? explained(database, text)
    prepared.set(text, statement)
    return statement
  }
}

function explained(database: Database, text: string): SqliteStatement {
  const attempt = <Result>(work: () => Result): Result => {
    try {
      return work()
    } catch (error) {
      throw explain(error, database)
    }
  }
  const statement = attempt(() => database.prepare(text))
  return {
    reader: statement.reader,
    all: (values) => attempt(() => statement.all(values)),
    run: (values) => attempt(() => statement.run(values)),
    iterate: (values) => statement.iterate(values) as IterableIterator<unknown>,
  }
}

const isBusy = (error: unknown): boolean =>
  error instanceof SqliteError && error.code.startsWith('SQLITE_BUSY')

/** A fault of the engine as a StoreError; anything else as it is. */
export function explain(error: unknown, { name }: Pick<Database, 'name'>): unknown {
  if (!(error instanceof SqliteError)) return error
  return new StoreError(`the store "${name}" cannot be used: ${error.message}${advice(error.code)}`, error)
}

function advice(code: string): string {
  if (code === 'SQLITE_NOTADB' || code.startsWith('SQLITE_CORRUPT'))
    return '; put a copy in its place, or move it away to start anew'
  if (code.startsWith('SQLITE_BUSY')) return '; another process has kept hold of it, end that one'
  if (code === 'SQLITE_FULL') return '; make room on its disk'
  if (code.startsWith('SQLITE_READONLY') || code.startsWith('SQLITE_CANTOPEN'))
    return '; it and its folder must be writable'
  return ''
}
