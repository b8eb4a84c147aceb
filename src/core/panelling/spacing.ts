import { type Length, nanometres } from '../measure/length.ts'

/**
 * Equal pieces along a span, either a given number or as many as keep the gap from being wider than `gap`. With ends
 * `gaps` there is a gap outside the first and last piece, n + 1 in all; with `flush` a piece at both ends, n - 1 gaps.
 */
export interface SpacingAsked {
  readonly span: Length
  readonly piece: Length
  readonly ends: 'gaps' | 'flush'
  readonly count?: number | undefined
  readonly gap?: Length | undefined
}

/** Pieces spaced evenly over a span. */
export interface Spacing {
  readonly status: 'spaced'
  readonly count: number
  /** How many gaps there are. */
  readonly gaps: number
  /** Each gap, to the nearest nanometre; 0 where there is none. */
  readonly gap: Length
  /** Where each piece starts, from the start of the span; each rounded alone, so nothing builds up. */
  readonly starts: readonly Length[]
}

/**
 * No such spacing. `tooMany`: the pieces alone are longer than the span; `most` fit. `alone`: flush ends need two pieces,
 * or one as long as the span. `noCount`: a count more does not fit and one fewer, given as `fewer`, gaps wider than asked.
 */
export type SpacingObstacle =
  | { readonly status: 'impossible'; readonly kind: 'notPositive' }
  | { readonly status: 'impossible'; readonly kind: 'tooMany'; readonly most: number }
  | { readonly status: 'impossible'; readonly kind: 'alone' }
  | { readonly status: 'impossible'; readonly kind: 'noCount'; readonly fewer: Spacing | undefined }

/**
 * Spaces pieces evenly: gap = (L - n w) / (n + 1), or over n - 1 when flush. A wanted gap is a most, as it is for
 * balusters: the count is the smallest whose equal gap is no wider, ceil((L - g) / (w + g)), or ceil((L + g) / (w + g))
 * when flush. (Published answers that divide L by w + g and round differ by a piece now and then; none may be wider here.)
 * Given both, the count rules.
 */
export function spaceEvenly(asked: SpacingAsked): Spacing | SpacingObstacle {
  const { span, piece, gap, count } = asked
  const sound =
    span > 0 &&
    piece > 0 &&
    (count === undefined ? gap !== undefined && gap >= 0 : Number.isInteger(count) && count > 0)
  if (!sound) return { status: 'impossible', kind: 'notPositive' }
  return count === undefined ? byGap(asked, gap as Length) : byCount(asked, count)
}

function byGap(asked: SpacingAsked, gap: Length): Spacing | SpacingObstacle {
  const { span, piece, ends } = asked
  const room = ends === 'gaps' ? span - gap : span + gap
  const count = Math.max(0, Math.ceil(room / (piece + gap)))
  if (count === 0) return laid(asked, 0)
  const spaced = byCount(asked, count)
  if (spaced.status === 'spaced') return spaced
  const fewer = count > 1 ? byCount(asked, count - 1) : undefined
  return { status: 'impossible', kind: 'noCount', fewer: fewer?.status === 'spaced' ? fewer : undefined }
}

function byCount(asked: SpacingAsked, count: number): Spacing | SpacingObstacle {
  const { span, piece, ends } = asked
  if (count * piece > span) return { status: 'impossible', kind: 'tooMany', most: Math.floor(span / piece) }
  if (ends === 'flush' && count === 1 && piece !== span) return { status: 'impossible', kind: 'alone' }
  return laid(asked, count)
}

function laid({ span, piece, ends }: SpacingAsked, count: number): Spacing {
  const gaps = ends === 'gaps' ? count + 1 : count - 1
  const open = span - count * piece
  const before = (index: number): number => (ends === 'gaps' ? index + 1 : index)
  const starts = Array.from({ length: count }, (_, index) =>
    nanometres(index * piece + (gaps === 0 ? 0 : (open * before(index)) / gaps)),
  )
  return { status: 'spaced', count, gaps, gap: nanometres(gaps === 0 ? 0 : open / gaps), starts }
}
