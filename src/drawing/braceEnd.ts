import type { Length } from '../core/measure/length.ts'
import type { Diagonal } from '../core/panelling/diagonal.ts'
import { braceOutline } from './brace.ts'
import { dimension } from './dimension.ts'
import { arc, arrow, BIG, breakLine, centred, line, NAME, rectangle, SMALL } from './marks.ts'
import { fineMark, type Numbers, unitLine } from './numbers.ts'
import { layPage } from './page.ts'
import type { Point, Scene, Shape } from './scene.ts'
import { textWidth } from './textWidth.ts'

/** A brace, the opening that it crosses and the strip that it is cut from. */
export interface BraceAsked {
  readonly opening: { readonly width: Length; readonly height: Length }
  readonly strip: Length
  readonly brace: Diagonal
}

/** Units of the page: the strip lies across all of it, `DEEP` wide; the frame above is as tall as `TALL` at the most. */
const LONG = 860
const DEEP = 150
const TALL = 300

/** The end of a brace as it lies at the saw, with the saw's own angle, and above it where the brace goes. */
export function drawBraceEnd(asked: BraceAsked, numbers: Numbers): Scene {
  const { brace } = asked
  const entry = (angle: number): string =>
    `${numbers.angle(angle)} on the saw is ${numbers.angle(90 - angle)} to the edge`
  return layPage({
    title: `Brace: saw at ${numbers.angle(brace.saw)} from square`,
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
  return [...frame, ...stripShapes(asked, numbers, TALL + 190)]
}

/** The opening to scale, with the brace in it. */
function frameShapes({ opening, strip, brace }: BraceAsked, numbers: Numbers): readonly Shape[] {
  const scale = Math.min(TALL / opening.height, 560 / opening.width)
  const [wide, tall] = [opening.width * scale, opening.height * scale]
  const [left, top] = [(LONG - wide) / 2, TALL - tall]
  const outline = braceOutline({ opening, strip, ends: brace.ends, slope: brace.slope })
  const points = outline.map(([x, y]): Point => [left + x * scale, top + tall - y * scale])
  const corner: Point = [left, top + tall]
  return [
    rectangle([left, top], [left + wide, top + tall], { fill: 'sheet', stroke: 'outline', of: 'opening' }),
    { shape: 'polygon', points, fill: 'strip', stroke: 'outline', of: 'brace' },
    ...dimension({
      from: corner,
      to: [left + wide, top + tall],
      out: [0, 46],
      text: numbers.mark(opening.width),
      spill: 'after',
    }),
    ...dimension({
      from: [left, top],
      to: corner,
      out: [-52, 0],
      text: numbers.mark(opening.height),
      spill: 'beside',
    }),
  ]
}

/** The strip flat on the saw's table: both ends cut, the middle left out. */
function stripShapes({ strip, brace }: BraceAsked, numbers: Numbers, top: number): readonly Shape[] {
  const [near, far] = [top + DEEP, top]
  const outline = endOutline(brace)
  const left = outline.map(([x, y]): Point => [x, near - y * DEEP])
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
      text: fineMark(numbers, strip),
      extended: false,
    }),
  ]
}

/** The cut end from the far edge to the near one: x in page units, y from 0 at the near edge to 1. */
function endOutline({ saw, secondSaw }: Diagonal): readonly Point[] {
  const lean = (angle: number, part: number): number => Math.tan((angle * Math.PI) / 180) * DEEP * part
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
function angleShapes(
  { saw, secondSaw }: Diagonal,
  numbers: Numbers,
  left: readonly Point[],
): readonly Shape[] {
  const tip = left[secondSaw === undefined ? 0 : 1] ?? [0, 0]
  const radius = DEEP + 56
  const [up, turn] = [-Math.PI / 2, (saw * Math.PI) / 180]
  const bend = arc(tip, radius, up, up + turn)
  const end = bend.at(-1) ?? tip
  const text = numbers.angle(saw)
  const half = textWidth({ text, size: BIG, bold: true }) / 2
  const beside: Point = [end[0] + half + 26, end[1] - 12]
  return [
    line([tip, [tip[0], tip[1] - radius - 22]], 'dashed', 'square'),
    line([tip, end], 'cut'),
    line(bend, 'dimension'),
    arrow(end, [Math.cos(up + turn + Math.PI / 2 - 0.06), Math.sin(up + turn + Math.PI / 2 - 0.06)], 'ink'),
    centred(text, beside, BIG, { bold: true, tone: 'accent' }),
    { shape: 'text', text: 'square', size: SMALL, at: [tip[0] - 8, tip[1] - radius - 34], tone: 'soft' },
    ...(secondSaw === undefined ? [] : secondAngle(secondSaw, numbers, left)),
  ]
}

function secondAngle(saw: number, numbers: Numbers, left: readonly Point[]): readonly Shape[] {
  const at = left[0] ?? [0, 0]
  return [centred(numbers.angle(saw), [at[0] + 76, at[1] - 30], NAME, { bold: true, tone: 'accent' })]
}
