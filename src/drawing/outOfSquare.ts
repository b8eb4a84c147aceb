import type { Length } from '../core/measure/length.ts'
import type { FrameCorner, Measured } from '../core/panelling/squareCheck.ts'
import { dimension } from './dimension.ts'
import { arrow, BIG, centred, line, NAME } from './marks.ts'
import { fineMark, type Numbers, unitLine } from './numbers.ts'
import { layPage } from './page.ts'
import type { Point, Scene, Shape } from './scene.ts'

/** A frame as measured, how far it leans, and the corners to squeeze; none where it is square. */
export interface SquareAsked {
  readonly measured: Measured
  /** Degrees off 90. */
  readonly angle: number
  readonly squeezed?: readonly [FrameCorner, FrameCorner] | undefined
  /** How much each squeezed pair has to come together. */
  readonly squeeze: Length
}

/** Degrees that a frame is drawn out of square, so that it shows. */
const LEAN = 9

/** So low that two numbers on its diagonals would meet: they stand at the foot. */
const isFlat = ({ length, width }: Measured): boolean => width < length * 0.3

/** A frame with its diagonals, leaning much further than it does, and which corners to push. */
export function drawOutOfSquare(asked: SquareAsked, numbers: Numbers): Scene {
  const { measured, angle, squeezed } = asked
  const times = Math.round(LEAN / Math.max(angle, 1e-9))
  const drawnOut =
    squeezed === undefined
      ? 'true to scale'
      : angle >= LEAN
        ? 'drawn as it leans; broken lines are square'
        : `drawn leaning ${times < 1000 ? `about ${times} times` : 'far'} more than it does; broken lines are square`
  return layPage({
    title: squeezed ? `Out of square by ${numbers.angle(angle)}` : 'Square: both diagonals agree',
    size: { width: measured.length * 1.2, height: measured.width },
    draw: (scale) => drawn(asked, numbers, scale),
    foot: [
      ...(squeezed
        ? [{ words: `squeeze at the arrows by ${fineMark(numbers, asked.squeeze)} altogether` }]
        : []),
      ...(isFlat(measured)
        ? [
            {
              words: `diagonals ${fineMark(numbers, measured.rising)} rising, ${fineMark(numbers, measured.falling)} falling`,
            },
          ]
        : []),
      { words: drawnOut },
      { words: `sizes in ${unitLine(numbers)}` },
    ],
    toScale: squeezed === undefined,
    tallest: 780,
  })
}

function drawn(
  { measured, angle, squeezed }: SquareAsked,
  numbers: Numbers,
  scale: number,
): readonly Shape[] {
  const [wide, tall] = [measured.length * scale, measured.width * scale]
  const isRising = squeezed?.includes('bottom left') ?? false
  const lean = squeezed === undefined ? 0 : (Math.max(LEAN, angle) * Math.PI) / 180
  // The longer diagonal leans to its own side.
  const slide = Math.sin(lean) * tall * (isRising ? 1 : -1)
  const high = Math.cos(lean) * tall
  const at: Readonly<Record<FrameCorner, Point>> = {
    'bottom left': [0, 0],
    'bottom right': [wide, 0],
    'top left': [slide, -high],
    'top right': [wide + slide, -high],
  }
  const outline = [at['bottom left'], at['bottom right'], at['top right'], at['top left']]
  const square: readonly Point[] = [
    [0, 0],
    [0, -tall],
    [wide, -tall],
    [wide, 0],
  ]
  return [
    { shape: 'polygon', points: outline, fill: 'sheet', stroke: 'outline', of: 'frame' },
    ...(squeezed ? [line(square, 'dashed', 'square')] : []),
    ...diagonals(measured, at, squeezed !== undefined, numbers),
    ...dimension({
      from: [0, 0],
      to: [wide, 0],
      out: [0, 84],
      text: numbers.mark(measured.length),
      spill: 'after',
    }),
    ...dimension({
      from: at['bottom right'],
      to: at['top right'],
      out: [Math.max(0, slide) + 76, 0],
      text: numbers.mark(measured.width),
      spill: 'beside',
    }),
    ...(squeezed ?? []).flatMap((corner) => push(at[corner], [wide / 2 + slide / 2, -high / 2])),
  ]
}

/** Both diagonals, each with its number near its upper end. */
function diagonals(
  measured: Measured,
  at: Readonly<Record<FrameCorner, Point>>,
  differ: boolean,
  numbers: Numbers,
): readonly Shape[] {
  const { rising, falling } = measured
  const along = ([x1, y1]: Point, [x2, y2]: Point, part: number): Point => [
    x1 + (x2 - x1) * part,
    y1 + (y2 - y1) * part,
  ]
  const one = (from: FrameCorner, to: FrameCorner, long: Length, part: number): readonly Shape[] => {
    const isLong = differ && long === Math.max(rising, falling)
    const [start, end] = [at[from], at[to]]
    const text = `${isLong ? 'long ' : ''}${fineMark(numbers, long)}`
    return [
      line([start, end], isLong ? 'cut' : 'dimension', long === rising ? 'rising' : 'falling'),
      ...(isFlat(measured)
        ? []
        : [
            centred(
              text,
              along(start, end, part),
              isLong ? BIG : NAME,
              isLong ? { bold: true, tone: 'accent' } : {},
            ),
          ]),
    ]
  }
  return [...one('bottom left', 'top right', rising, 0.76), ...one('top left', 'bottom right', falling, 0.76)]
}

const PUSH = 70

/** An arrow from outside into a corner. */
function push(corner: Point, centre: Point): readonly Shape[] {
  const [dx, dy] = [centre[0] - corner[0], centre[1] - corner[1]]
  const long = Math.hypot(dx, dy) || 1
  const way: Point = [dx / long, dy / long]
  const tip: Point = [corner[0] - way[0] * 10, corner[1] - way[1] * 10]
  return [
    line([[tip[0] - way[0] * PUSH, tip[1] - way[1] * PUSH], tip], 'cut', 'squeeze'),
    arrow(tip, way, 'accent'),
  ]
}
