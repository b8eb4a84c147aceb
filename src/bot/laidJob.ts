import type { BoardGroup, Group, SheetGroup, StripGroup } from '../core/cutting/job.ts'
import type { LengthLayout, SheetLayout } from '../core/cutting/problem.ts'
import { boardsTaken } from '../core/cutting/strips.ts'
import type { Listed } from './cutList.ts'
import type { Show } from './show.ts'

interface Laid<G extends Group, Layout> {
  readonly group: G
  readonly layouts: readonly Layout[]
  /** Whole sheets or boards taken, those on hand among them. */
  readonly pieces: number
  /** No layout costs less than this; proven. In the unit of `value`. */
  readonly lowerBound: number
  /** What was made least: cents where every price is known, else mm2 of material that is not on hand. */
  readonly value: number
  readonly optimal: boolean
  readonly milliseconds: number
}

export type LaidSheets = Laid<SheetGroup, SheetLayout>
export type LaidLengths = Laid<BoardGroup | StripGroup, LengthLayout>

/** One group of parts, laid out. */
export type LaidGroup = LaidSheets | LaidLengths

/** The channel's whole cut list, laid out. */
export interface LaidJob {
  readonly parts: readonly Listed[]
  /** Prints lengths in the units that the list was written in, where nobody has settled them. */
  readonly show: Show
  readonly groups: readonly LaidGroup[]
  /** Labels of stock that nobody listed: the usual sheets and boards of the region. */
  readonly assumed: readonly string[]
  readonly milliseconds: number
}

export const isSheets = (laid: LaidGroup): laid is LaidSheets => laid.group.kind === 'sheet'

/** Strips that one board of a stock gives: 1 where boards are only crosscut. */
export const stripsPerBoard = ({ group }: LaidLengths): ReadonlyMap<string, number> =>
  new Map(
    group.kind === 'strip'
      ? group.problem.stock.map(({ id, strips }) => [id, strips])
      : group.problem.stock.map(({ id }) => [id, 1]),
  )

/** Whole sheets or boards that are taken of each stock, by its label. */
export function takenOf(laid: LaidGroup): ReadonlyMap<string, number> {
  if (isSheets(laid)) {
    const taken = new Map<string, number>()
    for (const { stock, count } of laid.layouts) taken.set(stock, (taken.get(stock) ?? 0) + count)
    return taken
  }
  const stock = [...stripsPerBoard(laid)].map(([id, strips]) => ({ id, strips }))
  return boardsTaken(stock, laid.layouts)
}
