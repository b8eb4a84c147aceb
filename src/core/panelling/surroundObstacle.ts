import type { Length } from '../measure/length.ts'

/** A size that must be there: nothing of it, or less than nothing, makes no box. */
export interface NotPositive {
  readonly kind: 'notPositive'
  readonly what: 'object' | 'height' | 'sheet' | 'strip' | 'width'
  readonly value: Length
}

/** An allowance that may be nothing but never less. `value` is in nanometres, but for grooves, which are counted. */
export interface Negative {
  readonly kind: 'negative'
  readonly what: 'clearance' | 'fit' | 'kerf' | 'grooves'
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
  readonly face: 'end' | 'side'
  readonly widthBelow: Length
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
