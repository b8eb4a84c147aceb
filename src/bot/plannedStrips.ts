import { FOOT, type Length, times } from '../core/measure/length.ts'
import { type BoardRead, readBoard } from '../core/measure/readBoard.ts'
import type { Plan } from '../core/plan.ts'
import type { Region } from '../core/stock/stock.ts'
import type { Context } from './context.ts'
import { Refusal } from './refusal.ts'

/** The board to rip where none was typed, and why that one. */
export interface BoardOfPlan {
  readonly board: BoardRead
  readonly from: string
}

/** The plan's own board, else the usual one of the region. Throws a Refusal where strips that wide come from neither. */
export function boardOfPlan(
  plan: Plan | undefined,
  { project, settings, settled, reference }: Context,
): BoardOfPlan {
  const region: Region = project?.choices.region ?? settled.region
  const usual = settings.usual[region].board
  const kept = project?.choices.board
  const name = kept || usual
  const read = readBoard(name, { ...settled, units: undefined, region, stock: reference.stock })
  const gives = read.status === 'read' && (!plan || isNear(read.thickness, plan.spec.width))
  if (read.status !== 'read' || !gives)
    throw new Refusal('invalid', 'which board is ripped? Write it first, such as 2x6 or 38x140')
  return {
    board: read,
    from: kept
      ? `${name} is the board of this channel's project (board=)`
      : `${name} is what strips are ripped from here unless you say (board=)`,
  }
}

/** Half a millimetre is no different strip. */
export const isNear = (a: Length, b: Length): boolean => Math.abs(a - b) <= 500_000

/** The shortest usual length of board, from about eight feet up, that takes the longest strip of the plan. */
export function usualBoardLength(plan: Plan, { project, settled, reference }: Context): Length | undefined {
  const region = project?.choices.region ?? settled.region
  const least = Math.max(times(FOOT, 7.5), ...stripLengths(plan))
  const enough = reference.stock.lengths.filter((row) => row.region === region && row.length >= least)
  return enough.length === 0 ? undefined : (Math.min(...enough.map(({ length }) => length)) as Length)
}

/**
 * How many strips, each `stock` long, the strip parts of a plan come out of: longest part first, each into the first strip
 * with room, a kerf between. An estimate from above. Undefined where a part is longer than `stock`.
 */
export function stripsOfPlan(plan: Plan, stock: Length, kerf: Length): number | undefined {
  const rooms: number[] = []
  for (const length of stripLengths(plan)) {
    if (length > stock) return undefined
    const found = rooms.findIndex((room) => room >= length)
    const at = found < 0 ? rooms.length : found
    rooms[at] = (rooms[at] ?? stock) - length - kerf
  }
  return rooms.length
}

/** Longest first. */
const stripLengths = ({ parts }: Plan): readonly Length[] =>
  parts
    .filter(({ material }) => material === 'strip')
    .flatMap(({ count, length }) => Array.from({ length: count }, () => length))
    .sort((a, b) => b - a)
