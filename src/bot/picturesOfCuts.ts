import type { Length } from '../core/measure/length.ts'
import type { Diagonal } from '../core/panelling/diagonal.ts'
import type { Grooves } from '../core/panelling/grooves.ts'
import type { Rips } from '../core/panelling/rips.ts'
import type { Spacing } from '../core/panelling/spacing.ts'
import type { Measured, SquareCheck } from '../core/panelling/squareCheck.ts'
import type { GapAsked } from '../drawing/cornerGap.ts'
import { pair } from './pair.ts'
import { describe } from './pictures.ts'
import { pictureOf } from './picture.ts'
import type { Picture } from './reply.ts'
import type { Show } from './show.ts'
import { stockSize } from './stockSize.ts'

/** The end of a brace at the saw, and the opening that it crosses: of the panel that has the name, where it has one. */
export function bracePicture(
  { name, width, height }: { readonly name?: string; readonly width: Length; readonly height: Length },
  strip: Length,
  brace: Diagonal,
  show: Show,
): Picture {
  const second = brace.secondSaw === undefined ? '' : ` and ${show.angle(brace.secondSaw)}`
  const opening = { width, height }
  return pictureOf(
    name === undefined ? 'brace' : `${name}-brace`,
    describe([
      `${name === undefined ? 'A brace' : `The ${name} brace`} across an opening of ${pair(opening.width, opening.height, show)}, and its end at the saw: ${show.angle(brace.saw)}${second} from square`,
      `strip ${stockSize(strip, show)} wide, ${show.length(brace.length, 'cover')} tip to tip`,
    ]),
    () => ({ draw: 'brace', asked: { name, opening, strip, brace }, numbers: show.settings }),
  )
}

/** A board's end with the strips that come off it; none where no cut is safe. */
export function ripsPicture(
  board: { readonly width: Length; readonly thickness: Length },
  { strip, kerf, rips }: { readonly strip: Length; readonly kerf: Length; readonly rips: Rips },
  show: Show,
): readonly Picture[] {
  const [first] = rips.settings
  if (first === undefined) return []
  return [
    pictureOf(
      'rips',
      describe([
        `The end of a board ${stockSize(board.width, show)} wide against the fence: ${rips.count} strips of ${stockSize(strip, show)} come off on the far side of the blade`,
        `first fence ${show.length(first, 'mark', true)}, last ${show.length(rips.left, 'mark', true)}`,
      ]),
      () => ({
        draw: 'rips',
        asked: { ...board, strip, kerf, settings: rips.settings },
        numbers: show.settings,
      }),
    ),
  ]
}

/** Grooves across a panel of a length, with the fence settings. */
export function groovesPicture(
  panel: { readonly name: string; readonly length: Length; readonly thickness: Length },
  kerf: Length,
  laid: Grooves,
  show: Show,
): Picture {
  const name = panel.name === '' ? 'panel' : `${panel.name} panel`
  const fences = laid.settings.map(({ fence }) => show.mark(fence, 'mark', true)).join(', ')
  return pictureOf(
    panel.name === '' ? 'grooves' : `${panel.name}-grooves`,
    describe([
      `${laid.count} grooves across ${/^[aeiou]/u.test(name) ? 'an' : 'a'} ${name} ${show.length(panel.length, 'into')} long, ${show.length(laid.depth, 'into', true)} deep`,
      `fence settings ${fences} ${show.unit}; boards ${show.length(laid.boardWidth, 'mark', true)} wide`,
    ]),
    () => ({
      draw: 'grooves',
      asked: { name, panel: panel.length, thickness: panel.thickness, kerf, laid },
      numbers: show.settings,
    }),
  )
}

/** Equal pieces along a span. */
export const spacingPicture = (span: Length, piece: Length, spaced: Spacing, show: Show): Picture =>
  pictureOf(
    'spacing',
    describe([
      `${spaced.count} pieces of ${show.length(piece)} along ${show.length(span)}`,
      spaced.gap > 0 ? `gaps of ${show.length(spaced.gap)}` : 'edge to edge',
    ]),
    () => ({ draw: 'spacing', asked: { span, piece, spaced }, numbers: show.settings }),
  )

/** A frame as measured, leaning more than it does, with the corners to squeeze where the diagonals can be told apart. */
export function squarePicture(
  measured: Measured,
  check: Pick<SquareCheck, 'angle' | 'squeeze' | 'squeezed'>,
  show: Show,
): Picture {
  const { squeezed } = check
  return pictureOf(
    'square',
    describe([
      `A frame ${pair(measured.length, measured.width, show)} with diagonals of ${show.length(measured.rising, 'mark', true)} rising and ${show.length(measured.falling, 'mark', true)} falling`,
      squeezed
        ? `${show.angle(check.angle)} out of square; arrows at ${squeezed.join(' and ')} show where to squeeze`
        : 'it is square',
    ]),
    () => ({ draw: 'square', asked: { measured, ...check }, numbers: show.settings }),
  )
}

/** The gap of a captured corner stile in the driest and the wettest month. */
export const gapPicture = (asked: GapAsked): Picture =>
  pictureOf(
    'fit',
    describe([
      `A corner stile between its rails: a gap of ${asked.loosest} at each end in the driest month, ${asked.tightest} in the wettest${asked.binds ? ', where it binds' : ''}`,
    ]),
    () => ({ draw: 'gap', asked }),
  )
