import { inches, type Length, minus, plus, ZERO } from '../measure/length.ts'
import { halve } from '../panelling/halved.ts'
import type { Spec } from './spec.ts'

/** Half the play of halved corners, which what is fixed inside keeps clear of; 0 at other corners. */
export const slackOf = (spec: Spec): Length => (spec.corner === 'halved' ? halve(spec).slack : ZERO)

/** Room on each side of a lid or a bottom that drops in between walls: 1/16 in, common practice. */
const USUAL_GAP = inches(1, 16)

/** The gap round lid and bottom. */
export const gapOf = ({ gap }: Pick<Spec, 'gap'>): Length => gap ?? USUAL_GAP

/** The heights between which the inside is free. */
export interface Interior {
  /** Top of the bottom panel: w + t on cleats, s + t on feet; 0 without a bottom. */
  readonly floor: Length
  /** Under the ledgers of an inset lid: H - t - w; else the height of the box. */
  readonly ceiling: Length
}

/**
 * The free inside, from the floor that the box stands on. A bottom lies on cleats w high fixed to the walls, or on feet laid
 * flat, s high; an inset lid lies flush with the top on ledgers w high.
 */
export function interiorOf({ bottom, lid, height, sheet, strip, width }: Spec): Interior {
  const floor = bottom ? plus(bottom.on === 'cleats' ? width : strip, sheet) : ZERO
  return { floor, ceiling: lid?.kind === 'inset' ? minus(height, sheet, width) : height }
}

/** Corner blocks stand on the bottom rail's height, or on the bottom panel where that lies higher. */
export const blockFoot = (spec: Spec): Length => Math.max(spec.width, interiorOf(spec).floor) as Length
