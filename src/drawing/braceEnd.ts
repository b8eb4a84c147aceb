import type { Length } from '../core/measure/length.ts'
import type { Diagonal } from '../core/panelling/diagonal.ts'
import { braceOutline } from './brace.ts'
import { dimension } from './dimension.ts'
import { dimensionRows } from './dimensionRows.ts'
import { arc, arrow, BIG, breakLine, centred, line, NAME, rectangle, SMALL } from './marks.ts'
import { type Numbers, unitLine } from './numbers.ts'
import { layPage } from './page.ts'
import type { Point, Scene, Shape } from './scene.ts'
import { textWidth } from './textWidth.ts'

/** A brace, the opening that it crosses and the strip that it is cut from. */
export interface BraceAsked {
  /** The panel that it is on, where it is on one. */
  readonly name?: string | undefined
  readonly opening: { readonly width: Length; readonly height: Length }
  readonly strip: Length
  readonly brace: Diagonal
}

/** Units of the page: the strip lies across all of it; the frame above is as tall as `TALL` at the most. */
const LONG = 790
const TALL = 300

/** How wide the strip is drawn: less where its cut runs so flat that it would reach into the middle. */
function depthOf({ saw, secondSaw }: Diagonal): number {
  const steepest = (Math.max(saw, secondSaw ?? 0) * Math.PI) / 180
  const part = secondSaw === undefined ? 1 : 0.5
  return Math.min(150, (LONG * 0.42) / (Math.tan(steepest) * part))
}

/** The end of a brace as it lies at the saw, with the saw's own angle, and above it where the brace goes. */
export function drawBraceEnd(asked: BraceAsked, numbers: Numbers): Scene {
  const { brace, name } = asked
  const entry = (angle: number): string =>
    `${numbers.angle(angle)} on the saw is ${numbers.angle(90 - angle)} to the edge`
  return layPage({
    title: `${name === undefined ? 'Brace' : `${name.charAt(0).toUpperCase()}${name.slice(1)} brace`}: saw at ${numbers.angle(brace.saw)} from square`,
    size: { width: 1, height: 1 },
    largest: 1,
    toScale: false,
    draw: () => drawn(asked, numbers),
    foot: [
      { words: entry(brace.saw) },
      ...(brace.secondSaw === undefined ? [] : [{ words: entry(brace.secondSaw) }]),
      { words: `sizes in ${unitLine(numbers)}; angles true, length cut short` },
    ],
  })
}

function drawn(asked: BraceAsked, numbers: Numbers): readonly Shape[] {
  const frame = frameShapes(asked, numbers)
  const raised = asked.brace.secondSaw === undefined ? 0 : depthOf(asked.brace) / 2
  return [...frame, ...stripShapes(asked, numbers, TALL + 190 + raised)]
}

/** The opening to scale, with the brace in it. */
function frameShapes({ opening, strip, brace }: BraceAsked, numbers: Numbers): readonly Shape[] {
  const scale = Math.min(TALL / opening.height, 560 / opening.width)
  const [wide, tall] = [opening.width * scale, opening.height * scale]
  const [left, top] = [(LONG - wide) / 2, TALL - tall]
  const outline = braceOutline({ opening, strip, ends: brace.ends, slope: brace.slope })
  const points = outline.map(([x, y]): Point => [left + x * scale, top + tall - y * scale])
  return [
    rectangle([left, top], [left + wide, top + tall], { fill: 'sheet', stroke: 'outline', of: 'opening' }),
    { shape: 'polygon', points, fill: 'strip', stroke: 'outline', of: 'brace' },
    ...dimensionRows({ side: 'bottom', at: top + tall }, [
      { from: left, to: left + wide, text: numbers.mark(opening.width) },
    ]),
    ...dimensionRows({ side: 'left', at: left }, [
      { from: top, to: top + tall, text: numbers.mark(opening.height) },
    ]),
  ]
}

/** The strip flat on the saw's table: both ends cut, the middle left out. */
function stripShapes({ strip, brace }: BraceAsked, numbers: Numbers, top: number): readonly Shape[] {
  const deep = depthOf(brace)
  const [near, far] = [top + deep, top]
  const outline = endOutline(brace, deep)
  const left = outline.map(([x, y]): Point => [x, near - y * deep])
  // Half a turn brings one end over the other.
  const right = left.map(([x, y]): Point => [LONG - x, near + far - y])
  const cutAt = LONG * 0.62
  const gap = 34
  const [leftBreak, rightBreak] = [
    breakLine([cutAt, near], [cutAt, far]),
    breakLine([cutAt + gap, far], [cutAt + gap, near]),
  ]
  return [
    { shape: 'polygon', points: [...left, ...[...leftBreak].reverse()], fill: 'strip', of: 'brace end' },
    { shape: 'polygon', points: [...right, ...[...rightBreak].reverse()], fill: 'strip', of: 'brace end' },
    ...[left, right].map((points) => line(points, 'cut', 'cut')),
    ...edges(left, right, cutAt, gap),
    line(leftBreak, 'thin'),
    line(rightBreak, 'thin'),
    ...angleShapes(brace, numbers, left),
    ...dimension({
      from: [0, near],
      to: [LONG, near],
      out: [0, 62],
      text: `${numbers.mark(brace.length, 'cover')} tip to tip`,
    }),
    ...dimension({
      from: [LONG * 0.5, far],
      to: [LONG * 0.5, near],
      out: [0.001, 0],
      text: numbers.stock(strip),
      spill: 'beside',
      extended: false,
    }),
  ]
}

/** The cut end from the far edge to the near one: x in page units, y from 0 at the near edge to 1. */
function endOutline({ saw, secondSaw }: Diagonal, deep: number): readonly Point[] {
  const lean = (angle: number, part: number): number => Math.tan((angle * Math.PI) / 180) * deep * part
  if (secondSaw === undefined)
    return [
      [0, 0],
      [lean(saw, 1), 1],
    ].map(([x = 0, y = 0]): Point => [x, y])
  const [low, high] = [lean(secondSaw, 0.5), lean(saw, 0.5)]
  return [
    [low, 0],
    [0, 0.5],
    [high, 1],
  ]
}

function edges(
  left: readonly Point[],
  right: readonly Point[],
  cutAt: number,
  gap: number,
): readonly Shape[] {
  const [first = [0, 0], last = [0, 0]] = [left[0], left.at(-1)]
  const [opposite = [0, 0], end = [0, 0]] = [right[0], right.at(-1)]
  return [
    line([first, [cutAt, first[1]]], 'outline'),
    line([last, [cutAt, last[1]]], 'outline'),
    line([opposite, [cutAt + gap, opposite[1]]], 'outline'),
    line([end, [cutAt + gap, end[1]]], 'outline'),
  ]
}

/** The square line, the arc from it to the cut, and the saw's number. */
function angleShapes(brace: Diagonal, numbers: Numbers, left: readonly Point[]): readonly Shape[] {
  const { saw, secondSaw } = brace
  const deep = depthOf(brace)
  const tip = left[secondSaw === undefined ? 0 : 1] ?? [0, 0]
  const radius = deep + 56
  const [up, turn] = [-Math.PI / 2, (saw * Math.PI) / 180]
  const bend = arc(tip, radius, up, up + turn)
  const end = bend.at(-1) ?? tip
  const text = numbers.angle(saw)
  const half = textWidth({ text, size: BIG, bold: true }) / 2
  // Outside the middle of the arc.
  const beside: Point = [
    tip[0] + Math.sin(turn / 2) * (radius + 20) + half + 14,
    tip[1] - Math.cos(turn / 2) * (radius + 30),
  ]
  return [
    line([tip, [tip[0], tip[1] - radius - 22]], 'dashed', 'square'),
    line([tip, end], 'cut'),
    line(bend, 'dimension'),
    arrow(end, [Math.cos(up + turn + Math.PI / 2 - 0.06), Math.sin(up + turn + Math.PI / 2 - 0.06)], 'ink'),
    centred(text, beside, BIG, { bold: true, tone: 'accent' }),
    {
      shape: 'text',
      text: 'square',
      size: SMALL,
      at: [tip[0] - 12, tip[1] - radius],
      anchor: 'end',
      tone: 'soft',
    },
    ...(secondSaw === undefined ? [] : secondAngle(secondSaw, deep, numbers, left)),
  ]
}

/** The other cut of a point: in the strip where that is wide enough, else under it. */
function secondAngle(saw: number, deep: number, numbers: Numbers, left: readonly Point[]): readonly Shape[] {
  const [x, y] = left[0] ?? [0, 0]
  const at: Point = deep < 110 ? [90, y + 28] : [x + 76, y - 30]
  return [centred(numbers.angle(saw), at, NAME, { bold: true, tone: 'accent' })]
}
