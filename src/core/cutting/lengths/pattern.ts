/** One way to cut a bar: how many of which sizes. */
export interface Pattern {
  /** Index of the bar in the task. */
  readonly bar: number
  /** Indexes of sizes in the task, ascending, with `counts` alongside, each at least 1. */
  readonly types: readonly number[]
  readonly counts: readonly number[]
}

/** Patterns and how often each is cut. Together they make at least what is asked for. */
export interface Plan {
  readonly cuts: readonly Cut[]
  /** What the search makes as small as it can: see `Weights`. */
  readonly weight: number
}

export interface Cut {
  readonly pattern: Pattern
  readonly times: number
}

/** A key that two patterns share only when they are the same. */
export const keyOf = (pattern: Pattern): string =>
  `${pattern.bar}:${pattern.types.join(',')}:${pattern.counts.join(',')}`

/** The length that a pattern uses. */
export function sizeOf(pattern: Pattern, sizes: Float64Array): number {
  return pattern.types.reduce((sum, type, place) => sum + sizes[type]! * pattern.counts[place]!, 0)
}

/** The pattern without what is no longer asked for; undefined when nothing of it is. */
export function trimPattern(pattern: Pattern, demand: Int32Array): Pattern | undefined {
  const types: number[] = []
  const counts: number[] = []
  pattern.types.forEach((type, place) => {
    const count = Math.min(pattern.counts[place]!, demand[type]!)
    if (count > 0) {
      types.push(type)
      counts.push(count)
    }
  })
  return types.length === 0 ? undefined : { bar: pattern.bar, types, counts }
}

/** How often the pattern can be cut before it makes more than `demand`. */
export function timesWithin(pattern: Pattern, demand: Int32Array): number {
  return pattern.types.reduce(
    (least, type, place) => Math.min(least, Math.floor(demand[type]! / pattern.counts[place]!)),
    Infinity,
  )
}

/** Takes what the pattern makes off `demand`, never below nothing. */
export function takeFrom(demand: Int32Array, pattern: Pattern, times: number): void {
  pattern.types.forEach((type, place) => {
    demand[type] = Math.max(0, demand[type]! - times * pattern.counts[place]!)
  })
}
