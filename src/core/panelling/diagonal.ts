import { type Length, nanometres } from '../measure/length.ts'

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

/** A brace to cut. Angles in degrees; `saw` is the saw's scale, from square, and 90 - saw the angle to the edge. */
export interface Diagonal {
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
  /** X only: the angle between the two braces as seen from the stiles, above 90 where they are steep. */
  readonly crossing?: number
  /** X by cutting: each half from its outer to its inner long point, and the inner cut from square. */
  readonly halfLength?: Length
  readonly innerSaw?: number
  /** X by halving: the notch along the strip, centred, and how deep. */
  readonly notchWidth?: Length
  readonly notchDepth?: Length
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
  if (cross === undefined) return one(asked)
  const below = crossingLimit(width, height, ends)
  return strip < below
    ? { ...one(asked), ...crossed(asked, one(asked)) }
    : { status: 'impossible', kind: 'crossing', below }
}

function one({ width, height, strip, ends }: DiagonalAsked): Diagonal {
  const long = Math.hypot(width, height)
  const p = Math.atan2(height, width)
  const lean = Math.asin(strip / long)
  if (ends === 'pointed') {
    const slope = degrees(p)
    const cuts = (strip / 2) * (height / width + width / height)
    return {
      status: 'laid',
      ends,
      slope,
      saw: slope,
      secondSaw: 90 - slope,
      length: nanometres(long),
      edge: nanometres(long - cuts),
    }
  }
  const length = nanometres(Math.sqrt((long - strip) * (long + strip)))
  const turned = ends === 'rails' ? p + lean : p - lean
  const slope = degrees(turned)
  return ends === 'rails'
    ? { status: 'laid', ends, slope, saw: 90 - slope, length, edge: nanometres(height / Math.sin(turned)) }
    : { status: 'laid', ends, slope, saw: slope, length, edge: nanometres(width / Math.cos(turned)) }
}

/**
 * Two equal braces at slope a cross at g = 2a. The one that is cut loses (w/2)/sin g to the edge of the whole one and its
 * long edge gains (w/2)/|tan g| back; a halving is w / sin g along the strip and half the thickness deep.
 */
function crossed({ strip, cross, thickness }: DiagonalAsked, { slope, length }: Diagonal): Partial<Diagonal> {
  const crossing = 2 * slope
  const g = (crossing * Math.PI) / 180
  const half = strip / 2
  if (cross === 'cut') {
    const halfLength = nanometres(length / 2 - half / Math.sin(g) + half / Math.abs(Math.tan(g)))
    return { crossing, halfLength, innerSaw: Math.abs(90 - crossing) }
  }
  const notchWidth = nanometres(strip / Math.sin(g))
  return {
    crossing,
    notchWidth,
    ...(thickness === undefined ? {} : { notchDepth: nanometres(thickness / 2) }),
  }
}

/** The width at which the lozenge where two braces cross would touch the frame: w / cos(slope) = H or w / sin(slope) = W. */
function crossingLimit(width: Length, height: Length, ends: Ends): Length {
  const long = Math.hypot(width, height)
  const product = width * height
  if (ends === 'pointed') return nanometres(product / long)
  const along = long * long + (ends === 'rails' ? height : width) ** 2
  return nanometres((product * long) / Math.hypot(along, product))
}
