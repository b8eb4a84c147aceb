import { type Length, toMillimetres } from '../measure/length.ts'
import type { Carried } from './spec.ts'

/** What a part is called, the same in the list, in drawings and on labels. */
export type PartName =
  | 'end panel'
  | 'side panel'
  | 'front panel'
  | 'lid panel'
  | 'cover panel'
  | 'bottom panel'
  | 'end rail'
  | 'side rail'
  | 'front rail'
  | 'end stile'
  | 'corner stile'
  | 'side stile'
  | 'front stile'
  | 'corner block'
  | 'front block'
  | 'end brace'
  | 'side brace'
  | 'front brace'
  | 'side ledger'
  | 'front ledger'
  | 'end ledger'
  | 'lid rim'
  | 'lid rim end'
  | 'handle'
  | 'side cleat'
  | 'front cleat'
  | 'end cleat'
  | 'foot'

/** A place in a part: along its length from one end, and across its width from the bottom or the front edge. */
export interface Place {
  readonly along: Length
  readonly across: Length
}

/**
 * Cut out of a part besides its outline, right through. `size` goes along and across the part, both the diameter of a round
 * one; `at` is the low corner of each, the centre of a round one.
 */
export interface Cutout {
  readonly kind: 'slot' | 'cord notch' | 'finger notch' | 'drain hole'
  /** In how many of the parts cut alike. */
  readonly parts: number
  readonly round: boolean
  readonly size: Place
  readonly at: readonly Place[]
}

/**
 * Parts cut alike. A panel's length runs along the box and its width is the height; a strip's width is its face width and
 * its thickness how far it stands proud. A brace's length is its blank, tip to tip. A lid or bottom lies with its length along
 * the box.
 */
export interface Part {
  /** A, B, C ... down the list, panels first. */
  readonly label: string
  readonly name: PartName
  readonly material: 'sheet' | 'strip'
  readonly count: number
  readonly length: Length
  readonly width: Length
  readonly thickness: Length
  /** What it is fixed to for good and carried with. */
  readonly carriedBy: Carried
  /** Slots, notches and holes; none where it is left out. */
  readonly cutouts?: readonly Cutout[]
}

/** Area of one hole or notch of a kind, mm2. */
export function cutoutArea({ round, size }: Cutout): number {
  const [along, across] = [toMillimetres(size.along), toMillimetres(size.across)]
  return round ? (Math.PI * along * across) / 4 : along * across
}

/** What is cut out of all the parts cut alike together, mm2 of one face. */
export const cutoutsArea = ({ cutouts = [] }: Pick<Part, 'cutouts'>): number =>
  cutouts.reduce((sum, cutout) => sum + cutout.parts * cutout.at.length * cutoutArea(cutout), 0)
