import { type Area, textArea } from './area.ts'
import type { Line, Point, Polygon, Shape, Stroke, Text } from './scene.ts'
import { FIGURE } from './textWidth.ts'

/** Sizes of writing on a page 1000 units wide: the number to cut, a name, the small print. */
export const BIG = 42
export const NAME = 36
export const SMALL = 32

/** A text with its figures centred on a point. */
export const centred = (
  text: string,
  [x, y]: Point,
  size: number,
  look: Pick<Text, 'bold' | 'tone' | 'turn' | 'rim' | 'of'> = {},
): Text => ({
  shape: 'text',
  text,
  size,
  anchor: 'middle',
  at: look.turn === -90 ? [x + (size * FIGURE) / 2, y] : [x, y + (size * FIGURE) / 2],
  ...look,
})

/** A rectangle by two opposite corners. */
export const rectangle = (
  [left, top]: Point,
  [right, bottom]: Point,
  look: Pick<Polygon, 'fill' | 'stroke' | 'of'>,
): Polygon => ({
  shape: 'polygon',
  points: [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ],
  ...look,
})

export const line = (points: readonly Point[], stroke: Stroke, of?: string): Line => ({
  shape: 'line',
  points,
  stroke,
  ...(of === undefined ? {} : { of }),
})

const ARC_STEP = Math.PI / 36

/** Points along a circle, from one angle to another; 0 is to the right, a quarter turn is down. */
export function arc([x, y]: Point, radius: number, from: number, to: number): readonly Point[] {
  const steps = Math.max(2, Math.ceil(Math.abs(to - from) / ARC_STEP))
  return Array.from({ length: steps + 1 }, (_, step): Point => {
    const angle = from + ((to - from) * step) / steps
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)]
  })
}

/** Arrowheads are filled and three times as long as wide (ISO 129-1). */
export const ARROW = 24

/** A filled arrowhead with its tip at a point, pointing along a direction of length 1. */
export function arrow([x, y]: Point, [dx, dy]: Point, fill: 'ink' | 'accent' = 'ink'): Polygon {
  const half = ARROW / 6
  const [backX, backY] = [x - dx * ARROW, y - dy * ARROW]
  return {
    shape: 'polygon',
    points: [
      [x, y],
      [backX - dy * half, backY + dx * half],
      [backX + dy * half, backY - dx * half],
    ],
    fill,
  }
}

/** Radius of the ring round a letter or a number. */
export const RING = 28

/** A letter in a ring: what the part is called in the list. */
export function ring(text: string, at: Point, tone?: 'accent'): readonly Shape[] {
  const [x, y] = at
  const label = centred(text, at, NAME, { bold: true, tone })
  const { left, right } = textArea(label)
  const stretch = Math.max(0, right - left - RING * 1.3) / 2
  return [
    {
      shape: 'polygon',
      points: [
        ...arc([x + stretch, y], RING, -Math.PI / 2, Math.PI / 2),
        ...arc([x - stretch, y], RING, Math.PI / 2, (3 * Math.PI) / 2),
      ],
      fill: 'paper',
      stroke: tone === 'accent' ? 'cut' : 'thin',
    },
    label,
  ]
}

/** A dot that ends a leader inside what it points to. */
export const dot = (at: Point): Polygon => ({
  shape: 'polygon',
  points: arc(at, 6, 0, 2 * Math.PI),
  fill: 'ink',
})

/** The nearest point of an area's edge or inside to a point outside. */
export const nearest = ({ left, top, right, bottom }: Area, [x, y]: Point): Point => [
  Math.min(Math.max(x, left), right),
  Math.min(Math.max(y, top), bottom),
]

/** A zigzag across a part of which only the ends are drawn. */
export function breakLine([fromX, fromY]: Point, [toX, toY]: Point): readonly Point[] {
  const [dx, dy] = [toX - fromX, toY - fromY]
  const long = Math.hypot(dx, dy) || 1
  const [nx, ny] = [-dy / long, dx / long]
  const step = Math.min(13, long / 6)
  const along = (away: number, out: number): Point => [
    fromX + (dx / long) * (long / 2 + away) + nx * out,
    fromY + (dy / long) * (long / 2 + away) + ny * out,
  ]
  return [
    [fromX, fromY],
    along(-2 * step, 0),
    along(-step, step),
    along(step, -step),
    along(2 * step, 0),
    [toX, toY],
  ]
}
