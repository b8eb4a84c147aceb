/** The cut positions worth trying along one axis. */
export interface Points {
  /** Ascending, from 0: every sum of part sizes, or where those are too many, the steps of a grid. */
  readonly at: Float64Array
  /** Whether the points are true sums; on a grid, sizes are rounded down, so that only bounds can be read off it. */
  readonly exact: boolean
  /** A size of a part or sheet as it counts among the points. */
  readonly measure: (size: number) => number
  /** Index of the largest point not over a measure. */
  readonly below: (measure: number) => number
  /** For every point, for every point of at most its half: the index below what the cut leaves. */
  readonly rest: readonly Int32Array[]
}

/** All sums of sizes up to `whole`, or undefined when there are more than `most`. A size may be used again and again. */
const sumsOf = (sizes: readonly number[], whole: number, most: number): number[] | undefined => {
  const reached = new Set<number>([0, whole])
  const sums = [0]
  for (let index = 0; index < sums.length; index++)
    for (const size of sizes) {
      const sum = (sums[index] as number) + size
      if (sum > whole || reached.has(sum)) continue
      reached.add(sum)
      sums.push(sum)
      if (sums.length > most) return undefined
    }
  return [...reached].sort((a, b) => a - b)
}

const findBelow = (at: Float64Array, position: number): number => {
  let low = 0
  let high = at.length - 1
  while (low < high) {
    const middle = (low + high + 1) >> 1
    if ((at[middle] as number) <= position) low = middle
    else high = middle - 1
  }
  return low
}

const readRests = (at: Float64Array): Int32Array[] =>
  Array.from(at, (position, index) => {
    let half = 1
    while (half <= index && 2 * (at[half] as number) <= position) half++
    const rest = new Int32Array(half)
    for (let cut = 1; cut < half; cut++) rest[cut] = findBelow(at, position - (at[cut] as number))
    return rest
  })

/** The points of an axis for parts of the given sizes (normal patterns, Herz 1972); a grid when there are over `most`. */
export const readPoints = (sizes: readonly number[], whole: number, most: number): Points => {
  const distinct = [...new Set(sizes)].filter((size) => size <= whole)
  const sums = sumsOf(distinct, whole, most)
  const at = Float64Array.from(sums ?? Array.from({ length: most + 1 }, (_, index) => index))
  return {
    at,
    exact: sums !== undefined,
    measure: sums ? (size) => size : (size) => Math.floor((size * most) / whole),
    below: (measure) => findBelow(at, measure),
    rest: readRests(at),
  }
}
