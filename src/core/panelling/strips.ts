import { INCH, type Length } from '../measure/length.ts'

/** A board to rip: its dressed width, the strip that the fence sets, and the kerf. */
export interface Ripping {
  readonly board: Length
  readonly strip: Length
  readonly kerf: Length
}

/** What a board's width gives. */
export interface StripCount {
  readonly status: 'counted'
  /** Strips by arithmetic, every cut perfect. */
  readonly count: number
  /** Strips to count on: one fewer where nothing is spare, for the last cut; a board that is one strip takes no cut. */
  readonly safeCount: number
  /** Width left beyond the last strip, before the cut that frees it. */
  readonly spare: Length
  /** What is left of the spare after that cut; 0 where the kerf eats all of it. */
  readonly offcut: Length
  /** True where a strip comes out and the spare is 1/16 in or less: edges to clean up can cost it. */
  readonly tight: boolean
}

const TIGHT = (INCH / 16) as Length

/**
 * Strips across a board: floor((B + k) / (s + k)), since n strips take n s + (n - 1) k. Exact on whole nanometres. A board
 * narrower than one strip gives none and is all spare. Impossible where the board or strip is nothing or the kerf negative.
 */
export function countStrips({ board, strip, kerf }: Ripping): StripCount | { readonly status: 'impossible' } {
  if (!(board > 0 && strip > 0 && kerf >= 0)) return { status: 'impossible' }
  const count = Math.floor((board + kerf) / (strip + kerf))
  const used = count === 0 ? 0 : count * strip + (count - 1) * kerf
  const spare = (board - used) as Length
  return {
    status: 'counted',
    count,
    safeCount: spare === 0 && count > 1 ? count - 1 : count,
    spare,
    offcut: Math.max(0, count === 0 ? spare : spare - kerf) as Length,
    tight: count > 0 && spare <= TIGHT,
  }
}
