import type { Length } from '../measure/length.ts'
import type { FaceName } from '../plan/spec.ts'

/** A size that must be there: nothing of it, or less than nothing, makes no box. */
export interface NotPositive {
  readonly kind: 'notPositive'
  readonly what:
    | 'object'
    | 'height'
    | 'sheet'
    | 'strip'
    | 'width'
    | 'front'
    | 'drain'
    | 'drain spacing'
    | 'cord'
  readonly value: Length
}

/** An allowance that may be nothing but never less. `value` is in nanometres, but for grooves, which are counted. */
export interface Negative {
  readonly kind: 'negative'
  readonly what: 'clearance' | 'fit' | 'kerf' | 'grooves' | 'gap' | 'front grooves'
  readonly value: number
}

/**
 * The corner stiles would not reach over the side panels, so nothing would hold those in. Either change alone would do:
 * strips thinner than `stripBelow` (there are none where that is 0 or less), or wider than `widthAbove`.
 */
export interface NoLip {
  readonly kind: 'noLip'
  readonly lip: Length
  readonly stripBelow: Length
  readonly widthAbove: Length
}

/** Cleated or butted: a stile hangs wholly past its own panel; strips wider than `widthAbove` would do. */
export interface NoHold {
  readonly kind: 'noHold'
  readonly face: 'end' | 'side'
  readonly widthAbove: Length
}

/** The two rails leave no stile between them; a box higher than `heightAbove` would do. */
export interface TooLow {
  readonly kind: 'tooLow'
  readonly face?: 'front'
  readonly height: Length
  readonly heightAbove: Length
}

/** The two stiles of a face meet; `shows` is how wide that face is, and wider than `showsAbove` would do. */
export interface TooNarrow {
  readonly kind: 'tooNarrow'
  readonly face: 'end' | 'side'
  readonly shows: Length
  readonly showsAbove: Length
}

/** Two corner blocks would meet inside: the inside has to be `inside` or more the way `along` says. */
export interface NoRoomForBlocks {
  readonly kind: 'noRoomForBlocks'
  readonly along: 'length' | 'width'
  readonly inside: Length
}

/** The strip is as wide as the opening that a brace would cross; strips narrower than `widthBelow` would do. */
export interface NoRoomForBrace {
  readonly kind: 'noRoomForBrace'
  readonly face: FaceName
  readonly widthBelow: Length
}

/** The front is higher than the box; `height` is the most. */
export interface FrontTall {
  readonly kind: 'frontTall'
  readonly height: Length
}

/** A lid lies level: it takes a front as high as the box is. */
export interface LidOnSlope {
  readonly kind: 'lidOnSlope'
  readonly height: Length
}

/** An overlapping lid has its rim where a finger notch would be. */
export interface NotchInRim {
  readonly kind: 'notchInRim'
}

/** Bottom and inset lid leave nothing between them, or no block: a box, or a front, higher than `heightAbove` would do. */
export interface NoInterior {
  readonly kind: 'noInterior'
  readonly face?: 'front'
  readonly heightAbove: Length
}

/** Cleats, ledgers or feet would meet: the inside has to be more than `insideAbove` the way `along` says. */
export interface NoRoomForCleats {
  readonly kind: 'noRoomForCleats'
  readonly along: 'length' | 'width'
  readonly insideAbove: Length
}

/** Drain holes as large, or as near one another, would run into cleats, feet or each other. */
export interface DrainWide {
  readonly kind: 'drainWide'
  readonly diameterAtMost: Length
}

/** Nowhere in the panel, clear of its frame and brace, is there room for the cord notch; the most that fits either way. */
export interface NoRoomForCord {
  readonly kind: 'noRoomForCord'
  readonly face: FaceName
  readonly widthAtMost: Length
  readonly heightAtMost: Length
}

/** Why a surround cannot be built as described, with the lengths that would do. The words are the caller's. */
export type SurroundObstacle =
  | NotPositive
  | Negative
  | NoLip
  | NoHold
  | TooLow
  | TooNarrow
  | NoRoomForBlocks
  | NoRoomForBrace
  | FrontTall
  | LidOnSlope
  | NotchInRim
  | NoInterior
  | NoRoomForCleats
  | DrainWide
  | NoRoomForCord
