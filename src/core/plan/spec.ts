import type { Length } from '../measure/length.ts'
import type { Corner } from '../panelling/framing.ts'

/** The kinds of framed panel; the front is the one side panel that differs from the other. */
export type FaceName = 'end' | 'side' | 'front'

/** What is carried as one when the box is apart: a framed panel, the lid or the bottom. */
export type Carried = FaceName | 'lid' | 'bottom'

/** How the front differs from the other side; what is left out is as it is there. */
export interface FrontSpec {
  readonly height?: Length | undefined
  readonly braced?: boolean | undefined
  readonly grooves?: number | undefined
}

/** `inset`: drops in between the walls onto ledgers. `overlapping`: lies on top, a rim hanging down all round. */
export interface LidSpec {
  readonly kind: 'inset' | 'overlapping'
  /** A strip on edge on top, or a notch for the fingers in the middle of one long edge (inset lids). */
  readonly handle?: 'strip' | 'notch' | undefined
}

/** A loose panel between the walls, on cleats fixed to them or on feet of its own, with drain holes where asked for. */
export interface BottomSpec {
  readonly on: 'cleats' | 'feet'
  readonly drain?: { readonly diameter: Length; readonly spacing: Length } | undefined
}

/** A way through one panel for a cord, above the bottom rail so that the frame stays whole. */
export interface CordSpec {
  readonly face: FaceName
  readonly width: Length
  readonly height: Length
}

/** A surround as asked for: what it goes round, and the real sizes of what it is made of. */
export interface Spec {
  readonly object:
    | { readonly shape: 'rectangle'; readonly length: Length; readonly width: Length }
    | { readonly shape: 'round'; readonly diameter: Length }
  /** Finished height of the box. */
  readonly height: Length
  /** Room on each side of the object. */
  readonly clearance: Length
  /** True thickness of the sheet. */
  readonly sheet: Length
  /** Strip thickness: what the rip fence sets. */
  readonly strip: Length
  /** Strip face width: the dressed thickness of the board. */
  readonly width: Length
  readonly corner: Corner
  readonly braces: 'ends' | 'sides' | 'all' | 'none'
  /** In each panel. */
  readonly grooves: number
  /** Gap at each end of a captured corner stile; of a halved corner, what a slot is wider than the sheet. */
  readonly fit: Length
  readonly kerf: Length
  readonly front?: FrontSpec | undefined
  readonly lid?: LidSpec | undefined
  readonly bottom?: BottomSpec | undefined
  readonly cord?: CordSpec | undefined
  /** Room on each side of an inset lid and a bottom, and inside the rim of an overlapping lid; 1/16 in left out. */
  readonly gap?: Length | undefined
}
