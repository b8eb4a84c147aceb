/** Solids with faces square to the axes, for building a plan in the round; whole nanometres. */
export interface Solid {
  readonly name: string
  readonly low: Point
  readonly high: Point
}

export type Point = readonly [x: number, y: number, z: number]

export const solid = (name: string, low: Point, size: Point): Solid => ({
  name,
  low,
  high: [low[0] + size[0], low[1] + size[1], low[2] + size[2]],
})

const AXES = [0, 1, 2] as const

const shared = (one: Solid, other: Solid, axis: 0 | 1 | 2): number =>
  Math.min(one.high[axis], other.high[axis]) - Math.max(one.low[axis], other.low[axis])

export const overlap = (one: Solid, other: Solid): boolean =>
  AXES.every((axis) => shared(one, other, axis) > 0)

/** Area where two solids touch, 0 where they only meet in an edge; exact. */
export function contact(one: Solid, other: Solid): bigint {
  const spans = AXES.map((axis) => shared(one, other, axis))
  const touching = spans.filter((span) => span === 0).length
  const open = spans.filter((span) => span > 0)
  return touching === 1 && open.length === 2 ? BigInt(open[0] as number) * BigInt(open[1] as number) : 0n
}

/** Volume of the part of `one` that lies in `other`, exact. */
export function volumeIn(one: Solid, other: Solid): bigint {
  return AXES.reduce((volume, axis) => volume * BigInt(Math.max(0, shared(one, other, axis))), 1n)
}

export const move = ({ name, low, high }: Solid, by: Point): Solid => ({
  name,
  low: [low[0] + by[0], low[1] + by[1], low[2] + by[2]],
  high: [high[0] + by[0], high[1] + by[1], high[2] + by[2]],
})

/** Everything that `one` passes through when it is moved by `by` in a straight line along one axis. */
export const sweep = (one: Solid, by: Point): Solid => {
  const there = move(one, by)
  return {
    name: one.name,
    low: [
      Math.min(one.low[0], there.low[0]),
      Math.min(one.low[1], there.low[1]),
      Math.min(one.low[2], there.low[2]),
    ],
    high: [
      Math.max(one.high[0], there.high[0]),
      Math.max(one.high[1], there.high[1]),
      Math.max(one.high[2], there.high[2]),
    ],
  }
}

/** The pairs of solids that overlap, by name, across two groups. */
export const collisions = (some: readonly Solid[], others: readonly Solid[]): readonly string[] =>
  some.flatMap((one) =>
    others
      .filter((other) => other !== one && overlap(one, other))
      .map((other) => `${one.name} in ${other.name}`),
  )

/** The box that just holds all of them. */
export const bounds = (solids: readonly Solid[]): Solid => ({
  name: 'bounds',
  low: [0, 1, 2].map((axis) => Math.min(...solids.map(({ low }) => low[axis] as number))) as unknown as Point,
  high: [0, 1, 2].map((axis) =>
    Math.max(...solids.map(({ high }) => high[axis] as number)),
  ) as unknown as Point,
})
