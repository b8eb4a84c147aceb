import type { Lying, NextId } from './bench.ts'
import { layBlank } from './bench.ts'
import type { Saw } from './blank.ts'
import type { SawCut, Waiting } from './cutOrder.ts'
import type { Move } from './move.ts'
import { cutBlank, movesOf } from './move.ts'
import { createWaitingList } from './waiting.ts'

/** All that is cut at one setting, and what still waits afterwards. */
export interface Batch {
  readonly move: Move
  readonly cuts: readonly SawCut[]
  /** The largest kinds of pieces with cuts to come. */
  readonly remaining: readonly Waiting[]
  /** Pieces with cuts to come. */
  readonly waiting: number
}

/** The pieces that wait to be cut, each under every setting that it is ready for. */
export interface Bench {
  /** Makes every cut that the setting serves, also in pieces that come free meanwhile; undefined when there is none. */
  readonly cutAt: (setting: string) => Batch | undefined
}

/** Kinds of pieces that are told of after a setting: more are of no help at the saw. */
const MOST_KINDS = 50

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

/** Stock by stock, and of one sheet first what was cut first. */
const inTurn = (a: Lying, b: Lying): number =>
  a.layout - b.layout || a.copy - b.copy || a.piece.id - b.piece.id

/** A bench with `start` on it; ids of new pieces from `nextId`. */
export function createBench(saw: Saw, nextId: NextId, start: readonly Lying[]): Bench {
  const ready = new Map<string, Map<Lying, Move>>()
  const moves = new Map<Lying, readonly Move[]>()
  const list = createWaitingList()

  const put = (lying: Lying): void => {
    if (lying.piece.becomes !== 'piece') return
    const own = movesOf(saw, lying.blank)
    moves.set(lying, own)
    list.add(lying.piece)
    for (const move of own) {
      const group = ready.get(move.key)
      if (group) group.set(lying, move)
      else ready.set(move.key, new Map([[lying, move]]))
    }
  }
  const take = (lying: Lying): void => {
    for (const { key } of moves.get(lying) ?? []) ready.get(key)?.delete(lying)
    moves.delete(lying)
    list.remove(lying.piece)
  }
  start.forEach(put)

  const cutAt = (setting: string): Batch | undefined => {
    const cuts: SawCut[] = []
    const group = ready.get(setting) ?? new Map<Lying, Move>()
    const waiting = [...group].sort(([a], [b]) => inTurn(b, a))
    const [first] = waiting.at(-1)?.slice(1) ?? []
    for (let next = waiting.pop(); next; next = waiting.pop()) {
      const [lying, move] = next
      const { cut, out } = makeCut(saw, nextId, lying, move)
      cuts.push(cut)
      take(lying)
      out.forEach(put)
      for (const one of [...out].reverse()) {
        const again = group.get(one)
        if (again) waiting.push([one, again])
      }
    }
    if (first === undefined) return undefined
    return { move: first as Move, cuts, remaining: list.largest(MOST_KINDS), waiting: moves.size }
  }
  return { cutAt }
}
