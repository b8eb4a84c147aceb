/** A seeded stream of random numbers: the same seed, the same numbers. */
export interface Random {
  /** At least 0, less than 1. */
  readonly next: () => number
  /** A whole number, at least 0, less than `limit`. */
  readonly below: (limit: number) => number
}

/** Marsaglia's xorshift with shifts 13, 17, 5 (Journal of Statistical Software 8, 2003), stirred by a Weyl step. */
export const createRandom = (seed: number): Random => {
  let state = (Math.imul(seed + 1, 0x9e3779b1) ^ 0x6a09e667) | 1
  let weyl = 0
  const next = (): number => {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    weyl = (weyl + 0x61c88647) | 0
    return ((state + weyl) >>> 0) / 4294967296
  }
  for (let turn = 0; turn < 8; turn++) next()
  return { next, below: (limit) => Math.floor(next() * limit) }
}
