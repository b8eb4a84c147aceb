import { type Length, nanometres } from '../measure/length.ts'
import { type Crossing, crossBraces, crossingLimit } from './crossing.ts'

/** Where a brace ends: two cuts meeting in each corner, one cut flush with the rails, or one flush with the stiles. */
export type Ends = 'pointed' | 'rails' | 'stiles'

/** A clear opening, the real width of the strip across it, and what happens where two of them cross. */
export interface DiagonalAsked {
  readonly width: Length
  readonly height: Length
  readonly strip: Length
  readonly ends: Ends
  /** An X: one piece cut in two, or both halved over each other. */
  readonly cross?: 'cut' | 'halving' | undefined
  /** Strip thickness, for the depth of a halving. */
  readonly thickness?: Length | undefined
}

/**
 * A brace to cut; with an X, what its crossing asks too. Angles in degrees; `saw` is the saw's scale, from square, and
 * 90 - saw the angle to the edge.
 */
export interface Diagonal extends Partial<Crossing> {
  readonly status: 'laid'
  readonly ends: Ends
  /** How steep the brace lies, from level. */
  readonly slope: number
  /** For pointed ends the cut that lies along the stile. */
  readonly saw: number
  /** Pointed ends only: the other cut, along the rail. */
  readonly secondSaw?: number
  /** Tip to tip along the strip: the blank that one brace needs. */
  readonly length: Length
  /** Either long edge from cut to cut, for marking. */
  readonly edge: Length
}

/** `strip` is too wide to lie in the opening, or (crossing) for two to cross within it; narrower than `below` would do. */
export interface DiagonalObstacle {
  readonly status: 'impossible'
  readonly kind: 'notPositive' | 'opening' | 'crossing'
  readonly below: Length
}

const degrees = (radians: number): number => (radians * 180) / Math.PI

/**
 * Lays a strip of real width w from corner to corner of W x H, D = sqrt(W2 + H2), p = atan(H / W). Pointed: slope p. Flush
 * ends: the opposite edges of the strip run into opposite corners, so its slope is p + asin(w / D) on the rails and
 * p - asin(w / D) on the stiles, and tip to tip is sqrt(D2 - w2). Own derivation from the band's width across the diagonal.
 */
export function diagonal(asked: DiagonalAsked): Diagonal | DiagonalObstacle {
  const { width, height, strip, ends, cross } = asked
  const shorter = Math.min(width, height) as Length
  if (!(shorter > 0 && strip > 0)) return { status: 'impossible', kind: 'notPositive', below: shorter }
  if (strip >= shorter) return { status: 'impossible', kind: 'opening', below: shorter }
  const brace = ends === 'pointed' ? pointed(asked) : flush(asked, ends)
  if (cross === undefined) return brace
  const below = crossingLimit(width, height, ends)
  if (strip >= below) return { status: 'impossible', kind: 'crossing', below }
  return { ...brace, ...crossBraces({ ...asked, ...brace }, cross) }
}

function pointed({ width, height, strip }: DiagonalAsked): Diagonal {
  const long = Math.hypot(width, height)
  const slope = degrees(Math.atan2(height, width))
  // Each long edge stops short of the tips by (w/2) / tan p at the rail and (w/2) tan p at the stile.
  const cuts = (strip / 2) * (height / width + width / height)
  return {
    status: 'laid',
    ends: 'pointed',
    slope,
    saw: slope,
    secondSaw: 90 - slope,
    length: nanometres(long),
    edge: nanometres(long - cuts),
  }
}

function flush({ width, height, strip }: DiagonalAsked, ends: 'rails' | 'stiles'): Diagonal {
  const long = Math.hypot(width, height)
  const lean = Math.asin(strip / long)
  const turned = Math.atan2(height, width) + (ends === 'rails' ? lean : -lean)
  const slope = degrees(turned)
  const length = nanometres(Math.sqrt((long - strip) * (long + strip)))
  return ends === 'rails'
    ? { status: 'laid', ends, slope, saw: 90 - slope, length, edge: nanometres(height / Math.sin(turned)) }
    : { status: 'laid', ends, slope, saw: slope, length, edge: nanometres(width / Math.cos(turned)) }
}
