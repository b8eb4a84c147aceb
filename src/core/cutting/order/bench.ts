import type { Blank, Saw } from './blank.ts'
import { settle } from './blank.ts'
import type { Becomes, Piece, SawCut } from './cutOrder.ts'
import type { Move } from './move.ts'
import { cutBlank, movesOf } from './move.ts'

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

function makeCut(saw: Saw, nextId: NextId, lying: Lying, move: Move): { cut: SawCut; out: Lying[] } {
  const { layout, copy, piece } = lying
  const sawn = { ...lying.sawn, [move.across]: true }
  const out = cutBlank(saw, lying.blank, move).map((blank) =>
    layBlank(saw, nextId, { layout, copy, sawn }, blank),
  )
  const cut: SawCut = {
    layout,
    copy,
    piece,
    out: out.map((one) => one.piece),
    parts: out.flatMap((one) => one.piece.part ?? []),
    reference: lying.sawn[move.across] ? 'sawn' : 'factory',
    narrow: move.narrow,
  }
  return { cut, out }
}

/** All that is cut at one setting; `bench` is what still waits there afterwards. */
export interface Batch {
  readonly move: Move
  readonly cuts: readonly SawCut[]
  readonly bench: readonly Lying[]
}

/** Makes every cut that one setting serves, also in pieces that come free meanwhile; undefined when there is none. */
export function cutAtSetting(
  saw: Saw,
  nextId: NextId,
  bench: readonly Lying[],
  setting: string,
): Batch | undefined {
  const cuts: SawCut[] = []
  const left: Lying[] = []
  const waiting = [...bench].reverse()
  let first: Move | undefined
  while (waiting.length > 0) {
    const lying = waiting.pop()!
    const move = movesOf(saw, lying.blank).find((one) => one.key === setting)
    if (move === undefined) left.push(lying)
    else {
      const { cut, out } = makeCut(saw, nextId, lying, move)
      cuts.push(cut)
      waiting.push(...out.filter((one) => one.piece.becomes === 'piece').reverse())
      first ??= move
    }
  }
  return first === undefined ? undefined : { move: first, cuts, bench: left }
}
