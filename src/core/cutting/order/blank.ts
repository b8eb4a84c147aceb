import type { Work } from './work.ts'

/** How the saw is used: the blade, and what is too narrow to run between it and the fence. */
export interface Saw {
  readonly kerf: number
  readonly safeWidth: number
  /** A remainder is kept when both its sides (a board's length) reach this. */
  readonly keepable: { readonly sheet: number; readonly board: number }
}

/** A rectangle (or a board, of width 0) and what is still to be done to it. */
export interface Blank {
  readonly of: 'sheet' | 'board'
  readonly work: Work
  readonly length: number
  readonly width: number
}

/** Its size across the cuts: along x its length, along y its width. */
export const spanOf = ({ length, width }: Blank, across: 'x' | 'y'): number =>
  across === 'x' ? length : width

/** A run whose one strip left is the whole piece needs no cut: what is asked of the strip is asked of the piece. */
export function settle(blank: Blank): Blank {
  const { work } = blank
  if (work.kind !== 'run') return blank
  const [strip] = work.strips
  if (strip === undefined) return { ...blank, work: { kind: 'rest' } }
  const isWhole = work.strips.length === 1 && strip.size === spanOf(blank, work.across)
  return isWhole ? settle({ ...blank, work: strip.work }) : blank
}
