import type { Length } from '../core/measure/length.ts'
import type { Grooves } from '../core/panelling/grooves.ts'
import { dimension } from './dimension.ts'
import { dimensionRows } from './dimensionRows.ts'
import { BIG, breakLine, centred, line, rectangle, SMALL } from './marks.ts'
import { fineMark, type Numbers, unitLine } from './numbers.ts'
import { layPage } from './page.ts'
import type { Scene, Shape } from './scene.ts'
import { textWidth } from './textWidth.ts'

/** A panel with grooves across it. */
export interface GroovesAsked {
  /** Such as `side panel`. */
  readonly name: string
  readonly panel: Length
  readonly kerf: Length
  readonly thickness: Length
  readonly laid: Grooves
}

/** Settings that are drawn; the table has the rest. */
const MOST = 3

const FACE = 190
const DETAIL = 120

/** A panel at the fence: where each groove is, the first fence settings, the boards between, and how deep. */
export function drawGrooves(asked: GroovesAsked, numbers: Numbers): Scene {
  const { laid, name } = asked
  const count = `${laid.count} ${laid.count === 1 ? 'groove' : 'grooves'}`
  return layPage({
    title: `${count} across the ${name}`,
    size: { width: asked.panel * 1.05, height: asked.panel * 0.05 },
    draw: (scale) => drawn(asked, numbers, scale),
    foot: [
      { words: 'fence to nearest tooth; turn the panel end for end for the other half' },
      { words: `sizes in ${unitLine(numbers)}` },
    ].slice(laid.count > 1 ? 0 : 1),
    tallest: 1000,
  })
}

function drawn(asked: GroovesAsked, numbers: Numbers, scale: number): readonly Shape[] {
  const { panel, laid, kerf } = asked
  const wide = panel * scale
  const lower = breakLine([wide, FACE], [0, FACE])
  const face: readonly Shape[] = [
    rectangle([-26, -30], [-2, FACE + 26], { fill: 'ink', of: 'fence' }),
    {
      shape: 'polygon',
      points: [[0, 0], [wide, 0], ...lower],
      fill: 'sheet',
      of: 'panel',
    },
    line(
      [
        [0, FACE],
        [0, 0],
        [wide, 0],
        [wide, FACE],
      ],
      'outline',
    ),
    line(lower, 'thin'),
    ...laid.centres.map(
      (centre): Shape =>
        kerf * scale >= 4
          ? rectangle([(centre - kerf / 2) * scale, 0], [(centre + kerf / 2) * scale, FACE - 16], {
              fill: 'ink',
              of: 'groove',
            })
          : line(
              [
                [centre * scale, 0],
                [centre * scale, FACE - 16],
              ],
              'outline',
              'groove',
            ),
    ),
  ]
  const [first, second] = laid.centres
  const boards = dimensionRows({ side: 'top', at: 0 }, [
    first !== undefined && second !== undefined
      ? { from: first * scale, to: second * scale, text: fineMark(numbers, laid.boardWidth) }
      : { from: 0, to: (first ?? 0) * scale, text: fineMark(numbers, laid.margin) },
  ])
  const fences = dimensionRows({ side: 'bottom', at: FACE + 20 }, [
    ...laid.settings.slice(0, MOST).map(({ fence }, index) => ({
      from: 0,
      to: fence * scale,
      text: fineMark(numbers, fence),
      tone: index === 0 ? ('accent' as const) : undefined,
    })),
    { from: 0, to: wide, text: numbers.mark(panel, 'into') },
  ])
  const lowest = Math.max(...fences.map((shape) => (shape.shape === 'text' ? shape.at[1] : 0)))
  return [...face, ...boards, ...fences, ...detail(asked, numbers, wide / 2, lowest + 90)]
}

/** One groove cut through, enlarged: how deep it is in how thick a sheet. */
function detail(
  { laid, thickness, kerf }: GroovesAsked,
  numbers: Numbers,
  middle: number,
  top: number,
): readonly Shape[] {
  const scale = DETAIL / thickness
  const [deep, wide] = [laid.depth * scale, Math.min(kerf * scale, 200)]
  const [left, right] = [middle - 215, middle + 215]
  const bottom = top + DETAIL
  return [
    {
      shape: 'polygon',
      points: [
        [left, top],
        [middle - wide / 2, top],
        [middle - wide / 2, top + deep],
        [middle + wide / 2, top + deep],
        [middle + wide / 2, top],
        [right, top],
        ...breakLine([right, top], [right, bottom]),
        ...breakLine([left, bottom], [left, top]),
      ],
      fill: 'sheetCut',
      stroke: 'outline',
      of: 'section',
    },
    ...dimension({
      from: [middle + wide / 2, top],
      to: [middle + wide / 2, top + deep],
      out: [right - middle - wide / 2 + 44, 0],
      text: `${numbers.mark(laid.depth, 'into', true)} deep`,
      spill: 'beside',
    }),
    ...dimension({
      from: [left, top],
      to: [left, bottom],
      out: [-36 - textWidth({ text: numbers.stock(thickness), size: BIG }) / 2, 0],
      text: numbers.stock(thickness),
      spill: 'beside',
    }),
    centred('one groove, larger', [middle, bottom + 34], SMALL, { tone: 'soft' }),
  ]
}
