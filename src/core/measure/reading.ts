import type { Region, StockTables } from '../stock/stock.ts'
import type { Length } from './length.ts'

/** The unit a person or a channel has settled on; a number typed bare is read in it. */
export type UnitSystem = 'inch' | 'metric'

/** What reading a measure depends on. */
export interface ReadingSettings {
  /** Undefined when nobody has said: a bare number is then a question. */
  readonly units?: UnitSystem | undefined
  readonly region: Region
  readonly kerf: Length
  readonly stock: StockTables
}

/** A length, as `readLength` gives it. */
export interface LengthRead {
  readonly status: 'read'
  readonly length: Length
  /** The unit system it was typed in, so that an answer can be given in the same. */
  readonly units: UnitSystem
  /** Said in one line when something was assumed: `24 read as 24 in`. */
  readonly note?: string | undefined
}

/** Two readings are possible: the question names both. */
export interface Ambiguous {
  readonly status: 'ambiguous'
  /** One clear sentence: what was read, and both readings, written so that either can be typed back. */
  readonly question: string
}

/** Not a measure: the sentence says what was read, why not, and what would do. */
export interface Invalid {
  readonly status: 'invalid'
  readonly problem: string
}

/** Lengths in the order given: a size, a phrase with several numbers, a piece of lumber, or one length. */
export interface LengthsRead {
  readonly status: 'read'
  readonly kind: 'length' | 'size' | 'dimension' | 'lumber'
  /** In the order given. One entry when a single number was given. */
  readonly lengths: readonly Length[]
  readonly units: UnitSystem
  /** The size is a diameter first (`17in round`, `Ø300`). */
  readonly round?: boolean | undefined
  /** The trade name of the stock when one was read: `2x6`. */
  readonly name?: string | undefined
  readonly count?: number | undefined
  readonly note?: string | undefined
}

export interface AngleRead {
  readonly status: 'read'
  readonly kind: 'angle'
  readonly degrees: number
  readonly note?: string | undefined
}

/** Any measure that a person types. */
export type MeasureRead = LengthsRead | AngleRead | Ambiguous | Invalid
