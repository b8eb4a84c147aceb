import type { Point } from './scene.ts'

/** True inside of an outline. */
export function contains(outline: readonly Point[], [x, y]: Point): boolean {
  let inside = false
  let before = outline.at(-1) ?? [0, 0]
  for (const corner of outline) {
    const [[x1, y1], [x2, y2]] = [before, corner]
    if (y1 > y !== y2 > y && x < ((x2 - x1) * (y - y1)) / (y2 - y1) + x1) inside = !inside
    before = corner
  }
  return inside
}

/** How far a point is from a stretch of line. */
export function distanceTo([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [dx, dy] = [bx - ax, by - ay]
  const long = dx * dx + dy * dy
  const part = long === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / long))
  const [across, down] = [x - ax - part * dx, y - ay - part * dy]
  // Many times as quick as Math.hypot, which guards against numbers that no drawing has.
  return Math.sqrt(across * across + down * down)
}

/** How far a point is from the edge of an outline. */
export function edgeDistance(outline: readonly Point[], point: Point): number {
  let least = Number.POSITIVE_INFINITY
  let before = outline.at(-1) ?? point
  for (const corner of outline) {
    const far = distanceTo(point, before, corner)
    if (far < least) least = far
    before = corner
  }
  return least
}

/** True where a disc lies on an outline or touches its edge. */
export const touches = (outline: readonly Point[], centre: Point, radius: number): boolean =>
  contains(outline, centre) || edgeDistance(outline, centre) < radius
