import type { Piece, Waiting } from './cutOrder.ts'

/** What waits to be cut further, kind by kind, the largest first; kept up to date piece by piece. */
export interface WaitingList {
  readonly add: (piece: Piece) => void
  readonly remove: (piece: Piece) => void
  /** The largest kinds, `most` of them. */
  readonly largest: (most: number) => Waiting[]
}

interface Kind extends Waiting {
  count: number
}

const rank = ({ length, width }: Pick<Waiting, 'length' | 'width'>): number => length * Math.max(1, width)

/** A list with nothing on it. */
export function createWaitingList(): WaitingList {
  const kinds: Kind[] = []

  /** Where the first kind stands that is no larger than `piece`. */
  const placeOf = (piece: Piece): number => {
    let [low, high] = [0, kinds.length]
    while (low < high) {
      const middle = (low + high) >> 1
      if (rank(kinds[middle]!) > rank(piece)) low = middle + 1
      else high = middle
    }
    return low
  }

  const find = (piece: Piece): number => {
    for (let at = placeOf(piece); at < kinds.length && rank(kinds[at]!) === rank(piece); at += 1)
      if (kinds[at]!.length === piece.length && kinds[at]!.width === piece.width) return at
    return -1
  }

  return {
    add: (piece) => {
      const at = find(piece)
      if (at >= 0) kinds[at]!.count += 1
      else kinds.splice(placeOf(piece), 0, { length: piece.length, width: piece.width, count: 1 })
    },
    remove: (piece) => {
      const at = find(piece)
      if (at < 0) return
      kinds[at]!.count -= 1
      if (kinds[at]!.count === 0) kinds.splice(at, 1)
    },
    largest: (most) => kinds.slice(0, most).map((kind) => ({ ...kind })),
  }
}
