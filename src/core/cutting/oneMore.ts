/** What a length gives of equal pieces, and how little shorter they would have to be for one more. */
export interface OneMore {
  /** Pieces that come out as they are. */
  readonly fits: number
  /** The greatest size at which `fits + 1` come out: (room + kerf) / (fits + 1) - kerf, rounded down to the unit. */
  readonly at: number
}

/**
 * Counts pieces of `size` in `room` with a `kerf` between neighbours, all whole numbers in one unit, and solves the same
 * sum for one piece more. Two pieces of half a board's length never come out of it: the kerf between them is missing.
 */
export function oneMore(room: number, size: number, kerf: number): OneMore {
  const fits = Math.floor((room + kerf) / (size + kerf))
  return { fits, at: Math.floor((room + kerf) / (fits + 1)) - kerf }
}
