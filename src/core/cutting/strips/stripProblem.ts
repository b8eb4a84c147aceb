import type { LengthProblem, StockLength } from '../problem.ts'

/** A board to be ripped: its price and how many there are are those of whole boards. */
export interface StockBoard extends StockLength {
  /** Strips that one board gives, side by side: 1 at least. */
  readonly strips: number
}

/** Parts to crosscut from strips that are ripped out of whole boards. */
export interface StripProblem extends Omit<LengthProblem, 'stock'> {
  readonly stock: readonly StockBoard[]
}
