import { type Length, toInches, toMillimetres } from '../measure/length.ts'
import type { Gravity } from '../moisture/species.ts'
import { airDryGravity, ovendryGravity } from './density.ts'

/** One newton for each pound of force. */
export const POUND_FORCE = 4.4482216152605

/** What it takes to draw one fastener straight out of side grain, N. */
export interface Withdrawal {
  /** What design allows; a fifth of the ultimate or so. */
  readonly allowable: number
  /** What draws it, on the average; given for nails only. */
  readonly ultimate?: number | undefined
}

/** A fastener `bite` deep in side grain of this gravity; for a screw, `bite` is the thread alone. */
export interface Drawn {
  readonly gravity: Gravity
  readonly diameter: Length
  readonly bite: Length
}

/**
 * A smooth nail or brad. Ultimate: 54.12 G^2.5 D L newtons, G of the volume at 12 % (Wood Handbook, GTR-190, ch. 8). Allowable:
 * 1380 G^2.5 D pounds for each inch, G of the ovendry volume, a fifth of 6900 (USDA Forest Products Laboratory, FPL-093).
 */
export function nailWithdrawal({ gravity, diameter, bite }: Drawn): Withdrawal {
  const pounds = 1380 * ovendryGravity(gravity) ** 2.5 * toInches(diameter) * toInches(bite)
  const ultimate = 54.12 * airDryGravity(gravity) ** 2.5 * toMillimetres(diameter) * toMillimetres(bite)
  return { allowable: pounds * POUND_FORCE, ultimate }
}

/** A wood screw: 2850 G^2 D pounds for each inch of thread, G of the ovendry volume (NDS form in civil engineering tables). */
export function screwWithdrawal({ gravity, diameter, bite }: Drawn): Withdrawal {
  const pounds = 2850 * ovendryGravity(gravity) ** 2 * toInches(diameter) * toInches(bite)
  return { allowable: pounds * POUND_FORCE }
}
