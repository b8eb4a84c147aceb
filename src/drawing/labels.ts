import { type Area, areaOf, areaRound, middle, overlap, textArea } from './area.ts'
import { touches } from './crowd.ts'
import { centred, dot, line, NAME, nearest, RING, ring } from './marks.ts'
import type { Point, Shape } from './scene.ts'

/** Something to name: its letter and the area of it that can be seen. */
export interface Named {
  readonly text: string
  readonly area: Area
  /** Always in a ring, so that lines running past do not cross the letter. */
  readonly ringed?: boolean | undefined
}

const PAD = 8
const REACHES = [RING * 2.2, RING * 3.4, RING * 5, RING * 7]
const SLIDES = [0, -0.3, 0.3, -0.6, 0.6, -0.85, 0.85]
const TURNS = [5, 7, 1, 3, 6, 2, 0, 4].map((eighth): Point => {
  const angle = (eighth * Math.PI) / 4
  return [Math.cos(angle), Math.sin(angle)]
})

const ringArea = ([x, y]: Point): Area => ({
  left: x - RING,
  right: x + RING,
  top: y - RING,
  bottom: y + RING,
})

/**
 * Names things: the letter inside where it fits, else in a ring beside with a line to it. No name touches another, nor an area
 * of `taken`; a ring keeps off the shapes of `crowd` where it can. What finds no place has no name.
 */
export function nameParts(
  parts: readonly Named[],
  taken: readonly Area[],
  crowd: readonly Shape[] = [],
): readonly Shape[] {
  const used = [...taken]
  const outlines = crowd.flatMap((shape) =>
    shape.shape === 'text' ? [] : [{ points: shape.points, area: areaRound(shape.points) }],
  )
  return parts.flatMap(({ text, area, ringed }) => {
    const inside = spotsIn(area).find((spot) => isInside(text, spot, area, used, ringed))
    if (inside) {
      const label = centred(text, inside, NAME, { bold: true, rim: false })
      used.push(ringed ? ringArea(inside) : textArea(label))
      return ringed ? ring(text, inside) : [label]
    }
    const at = spotBeside(area, used, outlines)
    if (!at) return []
    used.push(ringArea(at))
    const end = inward(area, nearest(area, at))
    return [line([at, end], 'pointer'), dot(end), ...ring(text, at)]
  })
}

const spotsIn = ({ left, top, right, bottom }: Area): readonly Point[] =>
  [0.5, 0.3, 0.7, 0.15, 0.85].flatMap((part): Point[] =>
    right - left > bottom - top
      ? [[left + (right - left) * part, (top + bottom) / 2]]
      : [[(left + right) / 2, top + (bottom - top) * part]],
  )

function isInside(text: string, spot: Point, area: Area, used: readonly Area[], ringed = false): boolean {
  const letters = textArea(centred(text, spot, NAME, { bold: true }))
  // A capital has no foot below the line.
  const own = ringed ? ringArea(spot) : { ...letters, bottom: letters.bottom - NAME * 0.2 }
  const pad = ringed ? PAD / 2 : PAD
  const within =
    own.left >= area.left + pad &&
    own.right <= area.right - pad &&
    own.top >= area.top + pad &&
    own.bottom <= area.bottom - pad
  return within && used.every((other) => !overlap(ringed ? own : letters, other, PAD))
}

/** A shape to keep off. */
interface Outline {
  readonly points: readonly Point[]
  readonly area: Area
}

function spotBeside(area: Area, used: readonly Area[], crowd: readonly Outline[]): Point | undefined {
  let best: Point | undefined
  let least = Number.POSITIVE_INFINITY
  for (const spot of spotsBeside(area)) {
    const own = ringArea(spot)
    if (used.some((other) => overlap(own, other, PAD))) continue
    const end = nearest(area, spot)
    const crossed = used.filter((other) => runsThrough(spot, end, other)).length
    const count = CROSSING * crossed + crowding(crowd, spot, least - CROSSING * crossed)
    if (count < least) [best, least] = [spot, count]
    if (count === 0) break
  }
  return best
}

/** Places for a ring beside an area, the best first. */
function* spotsBeside(area: Area): Iterable<Point> {
  const [x, y] = middle(area)
  const wide = (area.right - area.left) / 2
  const high = (area.bottom - area.top) / 2
  for (const reach of REACHES)
    for (const slide of SLIDES)
      for (const [along, down] of TURNS)
        yield wide > high
          ? [x + slide * wide + along * reach, y + down * (reach + high)]
          : [x + along * (reach + wide), y + slide * high + down * reach]
}

/** A line through a number or a name is as bad as a ring on so many shapes. */
const CROSSING = 6

const STEPS = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9]

const runsThrough = ([x1, y1]: Point, [x2, y2]: Point, { left, top, right, bottom }: Area): boolean =>
  STEPS.some((part) => {
    const [x, y] = [x1 + (x2 - x1) * part, y1 + (y2 - y1) * part]
    return x > left && x < right && y > top && y < bottom
  })

/** How many shapes a ring at a spot would lie on, counted up to `most`. */
function crowding(crowd: readonly Outline[], spot: Point, most: number): number {
  const apart = RING + PAD / 2
  const [x, y] = spot
  const near = { left: x - apart, right: x + apart, top: y - apart, bottom: y + apart }
  let count = 0
  for (const { points, area } of crowd) {
    if (count >= most) break
    if (overlap(area, near) && touches(points, spot, apart)) count += 1
  }
  return count
}

/** A little way in from the edge, so that a dot lies on what it points to. */
function inward({ left, top, right, bottom }: Area, [x, y]: Point): Point {
  const [dx, dy] = [Math.min(14, (right - left) / 2), Math.min(14, (bottom - top) / 2)]
  return [Math.min(Math.max(x, left + dx), right - dx), Math.min(Math.max(y, top + dy), bottom - dy)]
}

/** The areas of every text among some shapes. */
export const textAreas = (shapes: readonly Shape[]): readonly Area[] =>
  shapes.flatMap((shape) => (shape.shape === 'text' ? [areaOf(shape)] : []))
