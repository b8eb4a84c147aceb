import { type Group, groupParts, type SawTerms } from '../core/cutting/job.ts'
import { asStrips } from '../core/cutting/strips.ts'
import { MILLIMETRE } from '../core/measure/length.ts'
import type { Context } from './context.ts'
import { asListed, type Listed } from './cutList.ts'
import { type LaidGroup, takenOf } from './laidJob.ts'
import type { Terms } from './layoutJob.ts'
import type { Stocked } from './shopStock.ts'

/** By what the most is meant: pieces, their sizes added up, or what they are worth. */
export const BY = ['count', 'size', 'worth'] as const
export type By = (typeof BY)[number]

/** What is asked: as many of these parts as this stock yields, and no part more often than its count. */
export interface MostAsked {
  readonly parts: readonly Listed[]
  readonly stock: readonly Stocked[]
  readonly saw: SawTerms
  readonly by: By
  /** Cents by label, where the most is by worth. */
  readonly worths: ReadonlyMap<string, number>
}

/** The most of one group, with its bound: pieces, cents, or mm2 (of boards mm) of parts. */
export interface MostGroup {
  readonly laid: LaidGroup
  readonly value: number
  readonly upperBound: number
}

/** What the stock yields, and the parts that nothing of it suits. */
export interface MostFound {
  readonly groups: readonly MostGroup[]
  readonly unsuited: readonly string[]
}

/** The most that the stock yields, group after group: what an earlier one takes is not there for a later one. */
export async function findMost(
  asked: MostAsked,
  seconds: number,
  context: Context,
  terms: Terms,
): Promise<MostFound> {
  const groups: MostGroup[] = []
  const unsuited: string[] = []
  const taken = new Map<string, number>()
  const all = groupParts(asListed(asked.parts), asked.stock, asked.saw)
  let left = seconds
  for (const [index, group] of all.entries()) {
    if (group.kind === 'noStock') {
      unsuited.push(...group.parts.map(({ label }) => label))
      continue
    }
    const timed = { ...terms, seconds: Math.max(0.2, left / (all.length - index)) }
    const most = await mostOf(group, taken, { asked, search: context.search, timed })
    for (const [label, count] of takenOf(most.laid)) taken.set(label, (taken.get(label) ?? 0) + count)
    left -= most.laid.milliseconds / 1000
    groups.push(most)
  }
  return { groups, unsuited }
}

interface Looking {
  readonly asked: MostAsked
  readonly search: Context['search']
  readonly timed: Parameters<Context['search']['mostFromSheets']>[1]
}

/** What is there when others have taken theirs. */
const rest = <Piece extends { readonly id: string; readonly onHand?: number | undefined }>(
  stock: readonly Piece[],
  taken: ReadonlyMap<string, number>,
) =>
  stock.flatMap((piece) => {
    const onHand = (piece.onHand ?? 1) - (taken.get(piece.id) ?? 0)
    return onHand > 0 ? [{ ...piece, onHand }] : []
  })

const MEASURES = { count: 'count', size: 'length', worth: 'worth' } as const

async function mostOf(
  group: Group,
  taken: ReadonlyMap<string, number>,
  { asked, search, timed }: Looking,
): Promise<MostGroup> {
  const { by, worths } = asked
  const worthOf = (id: string): number => worths.get(id) ?? 0
  if (group.kind === 'sheet') {
    const each = { count: () => 1, size: areaOf, worth: ({ id }: { readonly id: string }) => worthOf(id) }[by]
    const parts = group.problem.parts.map((part) => ({ ...part, worth: each(part) }))
    const problem = { ...group.problem, parts, stock: rest(group.problem.stock, taken) }
    const { outcome, milliseconds } = await search.mostFromSheets(problem, timed)
    const laid = laidOf(group, { ...outcome, milliseconds })
    return { laid, value: outcome.worth, upperBound: outcome.upperBound }
  }
  const strips =
    group.kind === 'strip'
      ? asStrips({ ...group.problem, stock: rest(group.problem.stock, taken) })
      : { ...group.problem, stock: rest(group.problem.stock, taken) }
  const problem = { ...strips, parts: strips.parts.map((part) => ({ ...part, worth: worthOf(part.id) })) }
  const { outcome, milliseconds } = await search.mostFromLengths(problem, MEASURES[by], timed)
  const unit = by === 'size' ? MILLIMETRE : 1
  const laid = laidOf(group, { ...outcome, milliseconds })
  return { laid, value: outcome[MEASURES[by]] / unit, upperBound: outcome.upperBound / unit }
}

/** Whole mm2, so that every sum of them is exact. */
const areaOf = ({ length, width }: { readonly length: number; readonly width: number }): number =>
  Math.max(1, Math.round((length / MILLIMETRE) * (width / MILLIMETRE)))

/** As a group laid out, of which nothing is bought. */
function laidOf(
  group: Group,
  found: Pick<LaidGroup, 'layouts' | 'milliseconds'> & { readonly status: string },
): LaidGroup {
  const { layouts, milliseconds, status } = found
  const base = { group, layouts, lowerBound: 0, value: 0, optimal: status === 'optimal', milliseconds }
  const laid = { ...base, pieces: 0 } as LaidGroup
  const pieces = [...takenOf(laid).values()].reduce((sum, count) => sum + count, 0)
  return { ...laid, pieces }
}
