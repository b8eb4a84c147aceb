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

/** The most sums that are listed before a grid must do. */
const MOST_SUMS = 6000

/** All sums of sizes up to `whole`, or undefined when there are too many. A size may be used again and again. */
const sumsOf = (sizes: readonly number[], whole: number): Float64Array | undefined => {
  const reached = new Set<number>([0])
  const sums = [0]
  for (let index = 0; index < sums.length; index++)
    for (const size of sizes) {
      const sum = (sums[index] as number) + size
      if (sum > whole || reached.has(sum)) continue
      reached.add(sum)
      sums.push(sum)
      if (sums.length > MOST_SUMS) return undefined
    }
  return Float64Array.from(sums).sort()
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

/** The sums that are also the most left beside another sum, in any of the wholes (raster points, Scheithauer, Terno 1996). */
const rasterOf = (sums: Float64Array, wholes: readonly number[]): Float64Array => {
  const kept = new Set<number>()
  for (const whole of wholes)
    for (const sum of sums) if (sum <= whole) kept.add(sums[findBelow(sums, whole - sum)] as number)
  return Float64Array.from([...kept, ...wholes]).sort()
}

/** Which sums are points: all of them (normal patterns, Herz 1972), or only those that whole sheets need. */
export type PointKind = 'sums' | 'raster'

/** The points of an axis for parts and sheets of the given sizes; a grid of `steps` when there were more than `most`. */
export const readPoints = (
  sizes: readonly number[],
  wholes: readonly number[],
  most: number,
  kind: PointKind,
  steps: number,
): Points => {
  const whole = Math.max(...wholes)
  const distinct = [...new Set(sizes)].filter((size) => size <= whole)
  const sums = sumsOf(distinct, whole)
  const all = sums && (kind === 'raster' ? rasterOf(sums, wholes) : Float64Array.from([...sums, whole]))
  const exact = all !== undefined && all.length <= most
  const at = exact
    ? Float64Array.from(new Set(all))
    : Float64Array.from({ length: steps + 1 }, (_, index) => index)
  return {
    at,
    exact,
    measure: exact ? (size) => size : (size) => Math.floor((size * steps) / whole),
    below: (measure) => findBelow(at, measure),
    rest: readRests(at),
  }
}
