import { type Length, nanometres } from '../measure/length.ts'

/** A frame meant to be square, with sides `length` and `width`, whose diagonals differ by `difference`. */
export interface Skewed {
  readonly length: Length
  readonly width: Length
  readonly difference: Length
}

/** How far from square a frame is. */
export interface Squareness {
  readonly status: 'measured'
  /** Degrees that the corners are off 90. */
  readonly angle: number
  /** How far one side has slid past the other, measured over the length and over the width. */
  readonly overLength: Length
  readonly overWidth: Length
  /** What the long diagonal has to lose, and the short one gain. */
  readonly squeeze: Length
}

/**
 * Out of square by the diagonals: with d their difference and D the true one, about d D / (2 a b) radians; exactly
 * asin(d sqrt(4 D2 - d2) / (4 a b)), since d1 2 - d2 2 = 4 a b sin e and d1 2 + d2 2 = 2 D2. Impossible where no frame of
 * those sides has such diagonals.
 */
export function outOfSquare({
  length,
  width,
  difference,
}: Skewed): Squareness | { readonly status: 'impossible' } {
  const long = Math.hypot(length, width)
  const apart = Math.abs(difference)
  const sine = (apart * Math.sqrt((2 * long - apart) * (2 * long + apart))) / (4 * length * width)
  // At the flat-folded limit the rounding of the root may carry the sine just past 1.
  if (!(length > 0 && width > 0 && apart <= 2 * Math.min(length, width) && sine >= 0))
    return { status: 'impossible' }
  const angle = Math.asin(Math.min(1, sine))
  return {
    status: 'measured',
    angle: (angle * 180) / Math.PI,
    overLength: nanometres(length * Math.sin(angle)),
    overWidth: nanometres(width * Math.sin(angle)),
    squeeze: nanometres(apart / 2),
  }
}

/** How much the diagonals of a `length` x `width` frame differ when its corners are `angle` degrees off 90. */
export function diagonalDifference(length: Length, width: Length, angle: number): Length {
  const sine = Math.sin((Math.abs(angle) * Math.PI) / 180)
  const squares = length * length + width * width
  const skew = 2 * length * width * sine
  return nanometres(Math.sqrt(squares + skew) - Math.sqrt(Math.max(0, squares - skew)))
}
