import type { Point } from './scene.ts'

/** True inside of an outline. */
export function contains(outline: readonly Point[], [x, y]: Point): boolean {
  let inside = false
  outline.forEach(([x1, y1], index) => {
    const [x2, y2] = outline[(index + 1) % outline.length] ?? [x1, y1]
    if (y1 > y !== y2 > y && x < ((x2 - x1) * (y - y1)) / (y2 - y1) + x1) inside = !inside
  })
  return inside
}

/** How far a point is from a stretch of line. */
export function distanceTo([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [dx, dy] = [bx - ax, by - ay]
  const long = dx * dx + dy * dy
  const part = long === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / long))
  return Math.hypot(x - ax - part * dx, y - ay - part * dy)
}

/** True where a disc lies on an outline or touches its edge. */
export const touches = (outline: readonly Point[], centre: Point, radius: number): boolean =>
  contains(outline, centre) ||
  outline.some((point, index) => {
    const next = outline[(index + 1) % outline.length] ?? point
    return distanceTo(centre, point, next) < radius
  })
