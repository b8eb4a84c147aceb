/** Whole numbers below a limit, the same run after run: a linear congruential generator (Knuth, MMIX constants cut to 32 bits). */
export function createDraw(seed: number): (below: number) => number {
  let state = (seed ^ 0x9e3779b9) >>> 0
  return (below) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return Math.floor((state / 2 ** 32) * below)
  }
}
