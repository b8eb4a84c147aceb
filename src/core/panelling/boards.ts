import type { Length } from '../measure/length.ts'

/** Strips as long as the boards, or a total length of strip to be cut from strips `boardLength` long. */
export type StripNeed = { readonly strips: number } | { readonly total: Length; readonly boardLength: Length }

/** Boards to buy. `spareStrips` come out of them over and above the need. */
export interface BoardCount {
  readonly status: 'counted'
  readonly strips: number
  readonly boards: number
  readonly spareStrips: number
}

/**
 * Boards for a need at `perBoard` strips each, rounded up. From a total length it is a lower bound: parts do not share out
 * evenly, and only a layout says how they do. Impossible where a board gives no strip.
 */
export function boardsFor(need: StripNeed, perBoard: number): BoardCount | { readonly status: 'impossible' } {
  const strips = 'strips' in need ? need.strips : Math.ceil(need.total / need.boardLength)
  if (!(perBoard >= 1 && strips >= 0 && Number.isFinite(strips))) return { status: 'impossible' }
  const boards = Math.ceil(strips / perBoard)
  return { status: 'counted', strips, boards, spareStrips: boards * perBoard - strips }
}
