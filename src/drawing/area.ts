import type { Point, Shape, Text } from './scene.ts'
import { ASCENT, DESCENT, textWidth } from './textWidth.ts'

/** A rectangle of the page. */
export interface Area {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** True where two areas come nearer to each other than `apart`. */
export const overlap = (one: Area, other: Area, apart = 0): boolean =>
  one.left < other.right + apart &&
  other.left < one.right + apart &&
  one.top < other.bottom + apart &&
  other.top < one.bottom + apart

/** The smallest area round all of `points`. */
export function areaRound(points: readonly Point[]): Area {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [x, y] of points) {
    if (x < left) left = x
    if (y < top) top = y
    if (x > right) right = x
    if (y > bottom) bottom = y
  }
  return { left, top, right, bottom }
}

/** The smallest area round all of `areas`. */
export function joined(areas: readonly Area[]): Area {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const area of areas) {
    if (area.left < left) left = area.left
    if (area.top < top) top = area.top
    if (area.right > right) right = area.right
    if (area.bottom > bottom) bottom = area.bottom
  }
  return { left, top, right, bottom }
}

/** What a text takes up, from the top of its figures to the foot of a `g`. */
export function textArea(text: Text): Area {
  const {
    at: [x, y],
    size,
    anchor = 'start',
    turn = 0,
  } = text
  const width = textWidth(text)
  const before = { start: 0, middle: width / 2, end: width }[anchor]
  const [up, down] = [ASCENT * size, DESCENT * size]
  return turn === 0
    ? { left: x - before, right: x - before + width, top: y - up, bottom: y + down }
    : { left: x - up, right: x + down, top: y + before - width, bottom: y + before }
}

/** What a shape takes up. */
export const areaOf = (shape: Shape): Area =>
  shape.shape === 'text' ? textArea(shape) : areaRound(shape.points)

/** The four corners of an area, going round. */
export const corners = ({ left, top, right, bottom }: Area): readonly Point[] => [
  [left, top],
  [right, top],
  [right, bottom],
  [left, bottom],
]

export const middle = ({ left, top, right, bottom }: Area): Point => [(left + right) / 2, (top + bottom) / 2]
