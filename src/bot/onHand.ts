import type { Group } from '../core/cutting/job.ts'
import { type LaidGroup, takenOf } from './laidJob.ts'

/** How many of each piece on hand are spoken for, by label. */
export type OnHand = Map<string, number>

/** Notes what a group takes. */
export function takeFrom(laid: LaidGroup, taken: OnHand): void {
  for (const [label, count] of takenOf(laid)) taken.set(label, (taken.get(label) ?? 0) + count)
}

/** The group with only what others have left on hand; undefined where it takes no more than that anyway. */
export function leaveOnHand(laid: LaidGroup, taken: ReadonlyMap<string, number>): Group | undefined {
  const { group } = laid
  const wanted = takenOf(laid)
  const left = ({ label, onHand }: Group['stock'][number]): number | undefined =>
    onHand === undefined ? undefined : Math.max(0, onHand - (taken.get(label) ?? 0))
  const isShort = group.stock.some((item) => {
    const rest = left(item)
    return rest !== undefined && (wanted.get(item.label) ?? 0) > rest
  })
  if (!isShort) return undefined
  const rests = new Map(group.stock.map((item) => [item.label, left(item)]))
  const leave = <Piece extends { readonly id: string }>(stock: readonly Piece[]): readonly Piece[] =>
    stock.flatMap((piece) => {
      const onHand = rests.get(piece.id)
      if (onHand === undefined) return [piece]
      return onHand > 0 ? [{ ...piece, onHand }] : []
    })
  // Each kind by itself, so that its problem keeps its own shape.
  if (group.kind === 'sheet')
    return { ...group, problem: { ...group.problem, stock: leave(group.problem.stock) } }
  return group.kind === 'strip'
    ? { ...group, problem: { ...group.problem, stock: leave(group.problem.stock) } }
    : { ...group, problem: { ...group.problem, stock: leave(group.problem.stock) } }
}
