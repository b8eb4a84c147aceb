import type { Length } from '../core/measure/length.ts'
import type { Spacing } from '../core/panelling/spacing.ts'
import { areaOf } from './area.ts'
import { dimensionRows } from './dimensionRows.ts'
import { textAreas } from './labels.ts'
import { centred, line, NAME, rectangle } from './marks.ts'
import { type Numbers, unitLine } from './numbers.ts'
import { layPage } from './page.ts'
import type { Scene, Shape } from './scene.ts'
import { textWidth } from './textWidth.ts'

/** Equal pieces along a span. */
export interface SpacingAsked {
  readonly span: Length
  readonly piece: Length
  readonly spaced: Spacing
}

const TALL = 210

/** Pieces along a span, with the gap, the piece and where the first two start. */
export function drawSpacing(asked: SpacingAsked, numbers: Numbers): Scene {
  const { spaced } = asked
  return layPage({
    title:
      spaced.gap === 0
        ? `${spaced.count} edge to edge`
        : `${spaced.count} ${spaced.count === 1 ? 'piece' : 'pieces'}, ${spaced.gaps} equal ${spaced.gaps === 1 ? 'gap' : 'gaps'}`,
    size: { width: asked.span, height: asked.span / 1000 },
    draw: (scale) => drawn(asked, numbers, scale),
    foot: [{ words: `measure every start from the left; sizes in ${unitLine(numbers)}` }],
  })
}

function drawn({ span, piece, spaced }: SpacingAsked, numbers: Numbers, scale: number): readonly Shape[] {
  const { starts, gap } = spaced
  // Lines round pieces a few units wide would leave nothing of them to see.
  const isFine = Math.min(piece, gap || piece) * scale < 6
  const pieces = starts.map((start) =>
    rectangle([start * scale, 0], [(start + piece) * scale, TALL], {
      fill: 'strip',
      stroke: isFine ? undefined : 'outline',
      of: 'piece',
    }),
  )
  const rails = [0, TALL].map((y) =>
    line(
      [
        [0, y],
        [span * scale, y],
      ],
      'outline',
    ),
  )
  const [first = 0 as Length, second] = starts
  const from = second === undefined ? 0 : first + piece
  const sizes = [
    ...dimensionRows({ side: 'top', at: 0 }, [
      ...(gap > 0
        ? [
            {
              from: from * scale,
              to: (from + gap) * scale,
              text: `gap ${numbers.mark(gap)}`,
              tone: 'accent' as const,
            },
          ]
        : []),
    ]),
    ...dimensionRows({ side: 'bottom', at: TALL }, [
      { from: first * scale, to: (first + piece) * scale, text: numbers.mark(piece) },
      ...(second === undefined ? [] : [{ from: 0, to: second * scale, text: numbers.mark(second) }]),
      { from: 0, to: span * scale, text: numbers.mark(span) },
    ]),
  ]
  return [...pieces, ...rails, ...sizes, ...counted(pieces, textAreas(sizes).length)]
}

/** Each piece its number, where all of them have room. */
function counted(pieces: readonly ReturnType<typeof rectangle>[], sizes: number): readonly Shape[] {
  const widest = textWidth({ text: String(pieces.length), size: NAME, bold: true }) + 14
  const areas = pieces.map(areaOf)
  if (sizes === 0 || areas.some(({ left, right }) => right - left < widest)) return []
  return areas.map(({ left, right }, index) =>
    centred(String(index + 1), [(left + right) / 2, TALL / 2], NAME, { bold: true, rim: false }),
  )
}
