import { type Length, minus, nanometres } from '../measure/length.ts'

/** One corner by the three sides of its triangle: two sides that meet in it and the diagonal across. */
export interface CornerSides {
  readonly along: Length
  readonly across: Length
  readonly diagonal: Length
}

/** How far a corner is from square. */
export interface CornerAngle {
  readonly status: 'measured'
  /** Degrees of the corner, and how far past 90 it is: negative where it is closed. */
  readonly angle: number
  readonly off: number
  /** What the diagonal would be at 90 degrees, and how far it is over that. */
  readonly square: Length
  readonly over: Length
  /** How far the far end of the `across` side has to move along the other to stand square. */
  readonly move: Length
  readonly verdict: 'square' | 'open' | 'closed'
}

/**
 * The corner between two sides by the law of cosines; 3, 4 and 5 of anything make it square. `square` within what a tape
 * shows, `within` of the diagonal. Impossible where the three are no triangle.
 */
export function cornerAngle(
  { along, across, diagonal }: CornerSides,
  within: Length,
): CornerAngle | { readonly status: 'impossible' } {
  const sides = [along, across, diagonal]
  const whole = along + across + diagonal
  if (!sides.every((side) => side > 0 && 2 * side < whole)) return { status: 'impossible' }
  const cosine = (along ** 2 + across ** 2 - diagonal ** 2) / (2 * along * across)
  const angle = (Math.acos(cosine) * 180) / Math.PI
  const square = nanometres(Math.hypot(along, across))
  const over = minus(diagonal, square)
  const verdict = Math.abs(over) <= within ? 'square' : over > 0 ? 'open' : 'closed'
  const move = nanometres(Math.abs(across * cosine))
  return { status: 'measured', angle, off: angle - 90, square, over, move, verdict }
}
