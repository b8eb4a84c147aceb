import { INCH, type Length, nanometres } from '../measure/length.ts'
import type { Frame, Framing } from './framing.ts'

/** A lip under `least` (1/8 in, common practice) soon splits off or misses the panel. */
export interface LipSmall {
  readonly kind: 'lipSmall'
  readonly lip: Length
  readonly least: Length
}

/** No fit at all: with paint or damp captured corner stiles do not go between the rails, nor halved panels into their slots. */
export interface NoFit {
  readonly kind: 'noFit'
}

/** The blocks in cleated corners stand where the object is; `clearanceAtLeast` on each side would clear them. */
export interface BlockMeetsObject {
  readonly kind: 'blockMeetsObject'
  readonly clearanceAtLeast: Length
}

/** What is worth saying about corners that can be built. */
export type CornerWarning = LipSmall | NoFit | BlockMeetsObject

const SMALL_LIP = nanometres(INCH / 8)

/** What stands in the box: a rectangle, or a circle of `diameter`, with `clearance` all round. */
export interface Contents {
  readonly diameter?: Length | undefined
  readonly clearance: Length
}

/** Warnings for corners that can be built, in the order to say them. */
export function warnCorner(frame: Frame, { lip }: Framing, contents: Contents): readonly CornerWarning[] {
  if (frame.corner === 'butted' || frame.corner === 'bracketed') return []
  if (frame.corner === 'cleated') return warnBlocks(frame, contents)
  if (frame.corner === 'halved') return frame.fit === 0 ? [{ kind: 'noFit' }] : []
  return [
    ...(lip < SMALL_LIP ? [{ kind: 'lipSmall', lip, least: SMALL_LIP } as const] : []),
    ...(frame.fit === 0 ? [{ kind: 'noFit' } as const] : []),
  ]
}

function warnBlocks({ strip, width }: Frame, { diameter, clearance }: Contents): readonly CornerWarning[] {
  const thin = Math.min(strip, width) as Length
  const clearanceAtLeast = diameter === undefined ? thin : roundClearance(diameter, strip, width)
  return clearance >= clearanceAtLeast ? [] : [{ kind: 'blockMeetsObject', clearanceAtLeast }]
}

/**
 * Clearance, rounded up to a nanometre, at which a circle of radius r just misses a block a x b set in the corner of its
 * square: (R - a)2 + (R - b)2 = r2 for the half inside R = r + c; never more than the block is thin. It holds where half the
 * inside is at least as wide as the block, which a box with room for its blocks always is.
 */
function roundClearance(diameter: Length, a: Length, b: Length): Length {
  const radius = diameter / 2
  const half = (a + b + Math.sqrt(Math.max(0, 2 * radius * radius - (a - b) ** 2))) / 2
  return Math.max(0, Math.min(a, b, Math.ceil(half - radius))) as Length
}
