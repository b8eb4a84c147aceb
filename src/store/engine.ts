import type { Kysely, Transaction } from 'kysely'
import type { Tables } from './tables.ts'

/** What the store needs of a database: all that differs from one to the next. */
export interface Engine {
  readonly database: Kysely<Tables>
  /** Keeps every other writer off the rows named `name`, in any process, until the transaction ends. */
  readonly lock: (transaction: Transaction<Tables>, name: string) => Promise<void>
}
