import { overlap, textArea, type Area } from './area.ts'
import { type Dimension, dimension, GAP, hasRoom, tail } from './dimension.ts'
import { ARROW, BIG, line } from './marks.ts'
import type { Line, Point, Shape, Text } from './scene.ts'
import { FIGURE, textWidth } from './textWidth.ts'

/** A size along one edge of a drawing, in units of the page along that edge. */
export interface Span {
  readonly from: number
  readonly to: number
  readonly text: string
  readonly tone?: 'accent' | undefined
}

/** The edge that sizes are put beside, and where it is: its y for top and bottom, its x for left and right. */
export interface Edge {
  readonly side: 'top' | 'bottom' | 'left' | 'right'
  readonly at: number
}

/** Between two rows of numbers, and from the drawing to the first. */
const ROW = 62
const FIRST = 48
const APART = 20

interface Placed {
  readonly span: Span
  readonly spill: 'after' | 'before' | 'beside'
  /** What it takes up along the edge. */
  readonly low: number
  readonly high: number
}

/**
 * Sizes beside one edge, the short ones nearest to it, in as many rows as keep every number clear of the others. Extension
 * lines give way to numbers that they would run through.
 */
export function dimensionRows({ side, at }: Edge, spans: readonly Span[]): readonly Shape[] {
  const upright = side === 'left' || side === 'right'
  const rows: Placed[][] = []
  for (const span of [...spans].sort((a, b) => Math.abs(a.to - a.from) - Math.abs(b.to - b.from))) {
    const fits = (row: readonly Placed[], placed: Placed): boolean =>
      row.every((other) => placed.low >= other.high + APART || other.low >= placed.high + APART)
    const choices = ways(span, upright)
    const free = rows.find((row) => choices.some((placed) => fits(row, placed)))
    const chosen = choices.find((placed) => !free || fits(free, placed))
    if (!chosen) continue
    if (free) free.push(chosen)
    else rows.push([chosen])
  }
  const outward = side === 'top' || side === 'left' ? -1 : 1
  const drawn: Shape[] = []
  let reach = 0
  for (const row of rows) {
    const offset = upright ? reach + columnHalf(row) : FIRST + reach
    drawn.push(...row.flatMap((placed) => shapesOf(placed, upright, at, offset * outward)))
    reach = upright ? offset + columnHalf(row) + besideOf(row) : reach + ROW
  }
  return breakThrough(drawn)
}

function ways(span: Span, upright: boolean): readonly Placed[] {
  const [low, high] = [Math.min(span.from, span.to), Math.max(span.from, span.to)]
  const ends: readonly [Point, Point] = upright
    ? [
        [0, low],
        [0, high],
      ]
    : [
        [low, 0],
        [high, 0],
      ]
  if (hasRoom(span.text, BIG, ...ends)) return [{ span, spill: 'after', low, high }]
  const past = tail(high - low)
  if (upright) {
    const half = Math.max(0, (BIG * FIGURE - (high - low)) / 2)
    return [{ span, spill: 'beside', low: low - Math.max(past, half), high: high + Math.max(past, half) }]
  }
  const beyond = past + APART + textWidth({ text: span.text, size: BIG })
  return [
    { span, spill: 'after', low: low - past, high: high + beyond },
    { span, spill: 'before', low: low - beyond, high: high + past },
  ]
}

/** Half of the widest number that stands in a line of this column, and room beside it. */
const columnHalf = (row: readonly Placed[]): number =>
  Math.max(
    FIRST - 8,
    ...row
      .filter(({ spill }) => spill !== 'beside')
      .map(({ span: { text } }) => textWidth({ text, size: BIG }) / 2 + APART),
  )

const besideOf = (row: readonly Placed[]): number =>
  Math.max(
    0,
    ...row
      .filter(({ spill }) => spill === 'beside')
      .map(({ span: { text } }) => textWidth({ text, size: BIG }) + APART - columnHalf(row)),
  )

function shapesOf({ span, spill }: Placed, upright: boolean, at: number, offset: number): readonly Shape[] {
  const [low, high] = [Math.min(span.from, span.to), Math.max(span.from, span.to)]
  const point = (along: number): Point => (upright ? [at, along] : [along, at])
  const asked: Dimension = {
    from: point(low),
    to: point(high),
    out: upright ? [offset, 0] : [0, offset],
    text: span.text,
    tone: span.tone,
    spill,
  }
  return dimension(asked)
}

/** Lines are taken away where they would run through a number. */
function breakThrough(shapes: readonly Shape[]): readonly Shape[] {
  const numbers = shapes.filter((shape): shape is Text => shape.shape === 'text').map(textArea)
  return shapes.flatMap((shape): readonly Shape[] =>
    shape.shape === 'line' ? numbers.reduce<readonly Line[]>(outside, [shape]) : [shape],
  )
}

/** What of straight, level or upright lines lies outside an area. */
const outside = (lines: readonly Line[], area: Area): readonly Line[] =>
  lines.flatMap((each) => {
    const [from, to] = each.points
    if (!from || !to) return []
    const upright = from[0] === to[0]
    const { left, top, right, bottom } = area
    const wide = { left: left - GAP, top: top - GAP / 2, right: right + GAP, bottom: bottom - GAP / 2 }
    const own = {
      left: Math.min(from[0], to[0]),
      right: Math.max(from[0], to[0]),
      top: Math.min(from[1], to[1]),
      bottom: Math.max(from[1], to[1]),
    }
    if (!overlap(own, wide)) return [each]
    const axis = upright ? 1 : 0
    const [low, high] = upright ? [own.top, own.bottom] : [own.left, own.right]
    const [start, end] = upright ? [wide.top, wide.bottom] : [wide.left, wide.right]
    const piece = (a: number, b: number): readonly Line[] => {
      const at = (value: number): Point => (axis === 1 ? [from[0], value] : [value, from[1]])
      return b - a > ARROW / 6 ? [line([at(a), at(b)], each.stroke)] : []
    }
    return [...piece(low, Math.min(high, start)), ...piece(Math.max(low, end), high)]
  })
