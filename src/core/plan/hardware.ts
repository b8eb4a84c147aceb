import { type Length, millimetres, minus } from '../measure/length.ts'
import { interiorOf } from './interior.ts'
import type { Spec } from './spec.ts'

/** Bought parts that are screwed on. */
export interface Hardware {
  readonly name: 'corner bracket'
  readonly count: number
}

/** Two steel angles inside each bracketed corner, one near each rail; nothing at other corners (common practice). */
export const listHardware = ({ corner }: Spec): readonly Hardware[] =>
  corner === 'bracketed' ? [{ name: 'corner bracket', count: 8 }] : []

/** Sheet steel of a corner bracket: 2 mm, common practice. */
export const BRACKET = millimetres(2)

/** True where brackets stand at the height of the rails: unless a bottom or ledgers take the place. */
export const areBracketsOnRails = ({ bottom, lid }: Spec): boolean =>
  bottom === undefined && lid?.kind !== 'inset'

/** How the brackets in a corner stand: legs as long and as high as a rail is wide, and how high each begins. */
export interface BracketPlaces {
  readonly leg: Length
  readonly feet: readonly [low: Length, high: Length]
}

/** Where the two brackets of a corner stand under the top of a wall `height` high, clear of a bottom and of ledgers. */
export function placeBrackets(spec: Spec, height: Length): BracketPlaces {
  const { floor, ceiling } = interiorOf(spec)
  const top = minus(Math.min(height, ceiling) as Length, spec.width)
  return { leg: spec.width, feet: [floor, Math.max(floor, top) as Length] }
}
