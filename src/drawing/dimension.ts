import { arrow, ARROW, BIG, centred, line } from './marks.ts'
import type { Point, Shape, Text } from './scene.ts'
import { FIGURE, textWidth } from './textWidth.ts'

/** One size to show: the two points it is measured between, its number, and where its line runs. */
export interface Dimension {
  readonly from: Point
  readonly to: Point
  readonly text: string
  /** From the points to the dimension line. */
  readonly out: Point
  readonly size?: number | undefined
  readonly tone?: 'accent' | undefined
  /** Where the number goes when the line is too short for it: past its end, before its start, or outward of it. */
  readonly spill?: 'after' | 'before' | 'beside' | undefined
  /** Lines from the points to the dimension line; drawn unless said otherwise. */
  readonly extended?: boolean | undefined
}

/** Between the object and an extension line, past the dimension line, and round a number (ISO 129-1, ASME Y14.5). */
export const GAP = 8
const OVERSHOOT = 12
const ROOM = 12

/**
 * A dimension by drawing convention: extension lines that start a gap off, a line with filled arrows, the number upright in a
 * break of the line. Where it is too short the number stands past it; where it is shorter still the arrows point in from
 * outside.
 */
export function dimension(asked: Dimension): readonly Shape[] {
  const { from, to, out, tone, extended = true } = asked
  const start = shift(from, out, 1)
  const end = shift(to, out, 1)
  const along = unit(start, end)
  const long = distance(start, end)
  const fill = tone === 'accent' ? 'accent' : 'ink'
  const written = place(asked, start, end)
  const within = long >= 2 * ARROW + 4
  const arrows = within
    ? [arrow(start, turned(along), fill), arrow(end, along, fill)]
    : [arrow(start, along, fill), arrow(end, turned(along), fill)]
  return [
    ...(extended ? [extension(from, out), extension(to, out)] : []),
    ...lines(start, end, along, within, written),
    ...arrows,
    written.text,
  ]
}

interface Written {
  readonly text: Text
  readonly inside: boolean
  /** Half of the break in the line. */
  readonly half: number
}

const unit = (from: Point, to: Point): Point => {
  const long = distance(from, to) || 1
  return [(to[0] - from[0]) / long, (to[1] - from[1]) / long]
}
const distance = (from: Point, to: Point): number => Math.hypot(to[0] - from[0], to[1] - from[1])
const turned = ([x, y]: Point): Point => [-x, -y]
const shift = ([x, y]: Point, [dx, dy]: Point, by: number): Point => [x + dx * by, y + dy * by]

function extension(from: Point, out: Point) {
  const long = Math.hypot(...out) || 1
  return line([shift(from, out, GAP / long), shift(from, out, 1 + OVERSHOOT / long)], 'dimension')
}

/** How much of a line a number takes that stands in it. */
export function breakOf(text: string, size: number, along: Point): number {
  const across = textWidth({ text, size }) / 2 + ROOM
  const high = (size * FIGURE) / 2 + ROOM
  return Math.min(across / Math.max(1e-9, Math.abs(along[0])), high / Math.max(1e-9, Math.abs(along[1])))
}

/** True where the number and two arrows go between the points. */
export const hasRoom = (text: string, size: number, from: Point, to: Point): boolean =>
  distance(from, to) >= 2 * (breakOf(text, size, unit(from, to)) + ARROW)

function place(
  { text, size = BIG, tone, spill = 'after', out }: Dimension,
  start: Point,
  end: Point,
): Written {
  const along = unit(start, end)
  const half = breakOf(text, size, along)
  const centre: Point = [(start[0] + end[0]) / 2, (start[1] + end[1]) / 2]
  const written = (at: Point): Text => centred(text, at, size, { tone })
  if (hasRoom(text, size, start, end)) return { text: written(centre), inside: true, half }
  if (spill === 'beside') {
    const aside = unit([0, 0], out)
    const clear =
      (Math.abs(aside[0]) * textWidth({ text, size })) / 2 +
      (Math.abs(aside[1]) * size * FIGURE) / 2 +
      ROOM +
      6
    return { text: written(shift(centre, aside, clear)), inside: false, half }
  }
  const beyond = half - ROOM + tail(distance(start, end)) + ROOM
  return spill === 'after'
    ? { text: written(shift(end, along, beyond)), inside: false, half }
    : { text: written(shift(start, along, -beyond)), inside: false, half }
}

/** How far a line runs on past its points, with arrows that point in. */
export const tail = (long: number): number => (long >= 2 * ARROW + 4 ? 0 : 2 * ARROW)

function lines(start: Point, end: Point, along: Point, within: boolean, { inside, half }: Written) {
  if (!within)
    return [
      line([shift(start, along, -2 * ARROW), start], 'dimension'),
      line([end, shift(end, along, 2 * ARROW)], 'dimension'),
    ]
  if (!inside) return [line([start, end], 'dimension')]
  const centre: Point = [(start[0] + end[0]) / 2, (start[1] + end[1]) / 2]
  return [
    line([start, shift(centre, along, -half)], 'dimension'),
    line([shift(centre, along, half), end], 'dimension'),
  ]
}
