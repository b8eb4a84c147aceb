/** Plane figures for braces: corners in order, inches or any other unit. */
export type Corner = readonly [x: number, y: number]
export type Polygon = readonly Corner[]

/** The points p with n . p <= bound. */
export interface HalfPlane {
  readonly normal: Corner
  readonly bound: number
}

export const dot = ([a, b]: Corner, [c, d]: Corner): number => a * c + b * d

/** `polygon` cut down to one side of a line (Sutherland and Hodgman). */
export function clip(polygon: Polygon, { normal, bound }: HalfPlane): Polygon {
  return polygon.flatMap((corner, index) => {
    const next = polygon[(index + 1) % polygon.length] as Corner
    const [here, there] = [dot(normal, corner) - bound, dot(normal, next) - bound]
    const kept = here <= 0 ? [corner] : []
    if (here < 0 === there < 0 || here === 0 || there === 0) return kept
    const part = here / (here - there)
    return [
      ...kept,
      [corner[0] + part * (next[0] - corner[0]), corner[1] + part * (next[1] - corner[1])] as const,
    ]
  })
}

export const area = (polygon: Polygon): number =>
  Math.abs(
    polygon.reduce((sum, [x, y], index) => {
      const [nextX, nextY] = polygon[(index + 1) % polygon.length] as Corner
      return sum + (x * nextY - nextX * y) / 2
    }, 0),
  )

/** How far a polygon reaches along a direction. */
export function extent(polygon: Polygon, along: Corner): number {
  const places = polygon.map((corner) => dot(along, corner) / Math.hypot(...along))
  return Math.max(...places) - Math.min(...places)
}

export const distance = ([a, b]: Corner, [c, d]: Corner): number => Math.hypot(a - c, b - d)

/** The corner where two sides meet, as the angle inside it in degrees. */
export function angleAt(polygon: Polygon, index: number): number {
  const [x, y] = polygon[index] as Corner
  const [ax, ay] = polygon[(index + polygon.length - 1) % polygon.length] as Corner
  const [bx, by] = polygon[(index + 1) % polygon.length] as Corner
  const [one, other]: [Corner, Corner] = [
    [ax - x, ay - y],
    [bx - x, by - y],
  ]
  return (Math.acos(dot(one, other) / (Math.hypot(...one) * Math.hypot(...other))) * 180) / Math.PI
}
