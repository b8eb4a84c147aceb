/**
 * What is to be cut, from what, and what came of it: the language that the searches, the verifier, the cut order
 * and the commands share. Every size is a whole number in one unit (nanometres in the bot; published instances use
 * their own), every price a whole number of cents.
 */

/** Told to a search: stop now, keep the best so far. Called often, so it must be cheap. */
export type ShouldStop = () => boolean

/** One length that the shop sells, or an offcut on hand. */
export interface StockLength {
  readonly id: string
  readonly length: number
  /** Price of one in cents; 0 for an offcut on hand. */
  readonly price: number
  /** How many there are; without it as many as are needed can be bought. */
  readonly onHand?: number | undefined
}

export interface LengthPart {
  readonly id: string
  readonly length: number
  readonly count: number
  /** What one is worth when the most is asked of given stock by worth; a whole number, 0 when left out. */
  readonly worth?: number | undefined
}

/** Parts to crosscut from boards (or strips) of one section. */
export interface LengthProblem {
  readonly parts: readonly LengthPart[]
  readonly stock: readonly StockLength[]
  readonly kerf: number
  /** Taken off once from every board before the first part is measured. */
  readonly trim: number
  /** A remainder shorter than this is waste, not an offcut. */
  readonly keepable: number
}

/** One board cut: its parts in order from the trimmed end, and what is left after the last kerf. */
export interface LengthLayout {
  readonly stock: string
  /** How many boards are cut just so. */
  readonly count: number
  readonly parts: readonly string[]
  readonly offcut: number
}

/** A rectangle that the shop sells, or an offcut on hand. The grain runs along `length`. */
export interface StockSheet {
  readonly id: string
  readonly length: number
  readonly width: number
  readonly price: number
  readonly onHand?: number | undefined
  /** Set for an offcut given net: no trim is taken off it. */
  readonly net?: boolean | undefined
}

export interface SheetPart {
  readonly id: string
  readonly length: number
  readonly width: number
  readonly count: number
  /** May be laid with its length across the sheet: false where the grain matters. */
  readonly turnable: boolean
  /** What one is worth when the most is asked of given stock; its area when left out. */
  readonly worth?: number | undefined
}

export interface SheetProblem {
  readonly parts: readonly SheetPart[]
  readonly stock: readonly StockSheet[]
  readonly kerf: number
  /** Taken off all four edges of every sheet that is not marked `net`. */
  readonly trim: number
  /** A remainder is an offcut only when both its sides reach this. */
  readonly keepable: number
}

/** A rectangle in a sheet: `x` along the sheet's length, `y` along its width, from one corner of the untrimmed sheet. */
export interface Rectangle {
  readonly x: number
  readonly y: number
  readonly length: number
  readonly width: number
}

export interface Placement extends Rectangle {
  readonly part: string
  /** Laid with the part's length across the sheet. */
  readonly turned: boolean
}

/**
 * How a rectangle is taken apart. A cut across `x` is parallel to the sheet's width at distance `at` from the
 * rectangle's own low-`x` edge to the near side of the kerf; `first` is the low side, `second` what lies past the kerf.
 */
export type CutTree =
  | { readonly kind: 'part'; readonly part: string; readonly turned: boolean }
  | { readonly kind: 'rest' }
  | {
      readonly kind: 'cut'
      readonly across: 'x' | 'y'
      readonly at: number
      readonly first: CutTree
      readonly second: CutTree
    }

/** One sheet cut. `cuts` takes the trimmed rectangle apart. */
export interface SheetLayout {
  readonly stock: string
  /** How many sheets are cut just so. */
  readonly count: number
  readonly placements: readonly Placement[]
  /** Remainders worth keeping, each a real leaf of `cuts`, no two overlapping. */
  readonly offcuts: readonly Rectangle[]
  readonly cuts: CutTree
}

/**
 * What a search found. `optimal`: proven that no layout costs less. `stopped`: the best so far, with the bound.
 * `impossible`: `reason` says which part does not fit or what runs out; `proven` that no time would change it, where
 * without it no way was found in the time given.
 */
export type Outcome<Layout> =
  | {
      readonly status: 'optimal' | 'stopped'
      readonly layouts: readonly Layout[]
      /** Cents. */
      readonly cost: number
      /** Pieces of stock used, offcuts on hand among them. */
      readonly pieces: number
      /** No layout can cost less than this; proven. */
      readonly lowerBound: number
    }
  | {
      readonly status: 'impossible'
      readonly part: string
      readonly reason: string
      readonly proven: boolean
    }
