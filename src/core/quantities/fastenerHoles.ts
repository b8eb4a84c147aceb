import { inches, type Length, nanometres, toInches } from '../measure/length.ts'
import { ovendryGravity } from './density.ts'
import type { Graded, Into } from './fastenerBite.ts'
import type { FastenerSize, ScrewHoles } from './fastenerSize.ts'
import type { Species } from '../moisture/species.ts'

/** What is known of the wood that receives. */
export type Receiver = Pick<Species, 'kind' | 'gravity'>

/** Holes to drill first. */
export interface Holes {
  /** Into the receiver: a drill for a screw, the widest that is allowed for a nail. */
  readonly pilot: Length
  /** How deep the pilot goes in. */
  readonly depth: Length
  /** Through the held piece, for a screw. */
  readonly clear?: Length | undefined
  /** The wood splits without, or the screw breaks; else it only helps. */
  readonly needed: boolean
}

/** A wood screw is threaded over two thirds of its length (wood screw charts). */
const THREADED = 2 / 3

/** Thread of a screw that is in the receiver. */
export const threadIn = ({ size, bite }: Graded): Length => nanometres(Math.min(bite, size.length * THREADED))

/**
 * Holes for a fastener. Screw: the table's drills by soft or hard wood, half the shank into the edge of a sheet, half as deep
 * as the thread goes in. Nail: at most 90 % of its diameter in wood heavier than 0.6, 75 % in lighter (NDS digest), needed in
 * the heavier and where it stands too near an end. None for brads, which a nailer drives.
 */
export function holesFor(
  graded: Graded,
  into: Into,
  wood: Receiver | undefined,
  close: boolean,
): Holes | undefined {
  const { size, bite } = graded
  if (size.holes) return screwHoles(graded, size.holes, into, wood)
  if (size.kind === 'brad') return undefined
  const heavy = wood?.gravity !== undefined && ovendryGravity(wood.gravity) > 0.6
  return { pilot: nanometres(size.diameter * (heavy ? 0.9 : 0.75)), depth: bite, needed: heavy || close }
}

function screwHoles(graded: Graded, holes: ScrewHoles, into: Into, wood: Receiver | undefined): Holes {
  const depth = nanometres(threadIn(graded) / 2)
  const pilot = into === 'edge' ? halfShank(graded.size) : holes[wood?.kind === 'hardwood' ? 'hard' : 'soft']
  return { pilot, depth, clear: holes.clear, needed: true }
}

/** To the 1/64 in below, as drills go. */
const halfShank = ({ diameter }: FastenerSize): Length => inches(Math.floor(toInches(diameter) * 32), 64)
