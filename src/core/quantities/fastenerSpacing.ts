import { type Length, minus, nanometres, times, ZERO } from '../measure/length.ts'
import type { FastenerDistances, FastenerSize } from './fastenerSize.ts'

/** A row of one size along a joint. */
export interface RowRequest {
  readonly size: FastenerSize
  /** Along the grain of the held piece. */
  readonly jointLength: Length
  /** The holes are drilled first. */
  readonly drilled: boolean
  /** How many at least. */
  readonly atLeast: number
}

/** Where the fasteners of a joint go. */
export interface FastenerRow {
  readonly status: 'spaced'
  readonly count: number
  /** From one to the next; 0 where there is one. */
  readonly spacing: Length
  /** From each end of the joint to the first. */
  readonly end: Length
  /** Nearest that any may come to an edge. */
  readonly edge: Length
  /** Closer to the end than wood stands undrilled, though far enough if drilled. */
  readonly close: boolean
}

export type NoRow = { readonly status: 'impossible' } & (
  | { readonly reason: 'joint short'; readonly lengthAtLeast: Length }
  | { readonly reason: 'overloaded'; readonly countAtMost: number }
)

/**
 * Fasteners spaced evenly, the first and the last as near the ends as the wood stands, none further apart than the rule for
 * their kind. One in the middle where there is no room for two.
 */
export function spaceRow(request: RowRequest, distances: FastenerDistances): FastenerRow | NoRow {
  const { size, jointLength, drilled, atLeast } = request
  const rule = drilled ? distances.drilled : distances.undrilled
  const end = Math.max(times(size.diameter, rule.end), distances.leastEnd) as Length
  const row = times(size.diameter, rule.row)
  const edge = times(size.diameter, rule.edge)
  const between = minus(jointLength, times(end, 2))
  const most = between < row ? 1 : Math.floor(between / row) + 1
  if (atLeast > most) return { status: 'impossible', reason: 'overloaded', countAtMost: most }
  if (most === 1) return single(request, edge, end, distances)
  const count = Math.max(2, atLeast, Math.ceil(between / distances.apart[size.kind]) + 1)
  const spacing = Math.floor(between / (count - 1)) as Length
  return { status: 'spaced', count, spacing, end, edge, close: false }
}

function single(
  { size, jointLength }: RowRequest,
  edge: Length,
  wanted: Length,
  { drilled }: FastenerDistances,
): FastenerRow | NoRow {
  const lengthAtLeast = times(size.diameter, 2 * drilled.end)
  if (jointLength < lengthAtLeast) return { status: 'impossible', reason: 'joint short', lengthAtLeast }
  const end = nanometres(Math.floor(jointLength / 2))
  return { status: 'spaced', count: 1, spacing: ZERO, end, edge, close: end < wanted }
}
