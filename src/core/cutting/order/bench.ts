import type { Blank, Saw } from './blank.ts'
import { settle } from './blank.ts'
import type { Becomes, Piece } from './cutOrder.ts'

/** A blank that lies on the bench under its own number. */
export interface Lying {
  readonly blank: Blank
  readonly piece: Piece
  readonly layout: number
  readonly copy: number
  /** Whether an edge is sawn that can run against the fence for a cut across x, and across y. */
  readonly sawn: { readonly x: boolean; readonly y: boolean }
}

/** Numbers given out one by one. */
export type NextId = () => number

const isKept = ({ keepable }: Saw, { of, length, width }: Blank): boolean =>
  of === 'board' ? length >= keepable.board : Math.min(length, width) >= keepable.sheet

function nameBecomes(saw: Saw, blank: Blank): Becomes {
  if (blank.work.kind === 'part') return 'part'
  if (blank.work.kind !== 'rest') return 'piece'
  return isKept(saw, blank) ? 'offcut' : 'waste'
}

/** Lays a blank on the bench. */
export function layBlank(
  saw: Saw,
  nextId: NextId,
  from: Pick<Lying, 'layout' | 'copy' | 'sawn'>,
  raw: Blank,
): Lying {
  const blank = settle(raw)
  const { work, length, width } = blank
  const part = work.kind === 'part' ? work.part : undefined
  const { layout, copy, sawn } = from
  const piece = { id: nextId(), length, width, becomes: nameBecomes(saw, blank), part }
  return { blank, layout, copy, sawn, piece }
}
