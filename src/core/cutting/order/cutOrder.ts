/** What a piece on the bench is: a finished part, a piece with cuts to come, an offcut to keep, or waste. */
export type Becomes = 'part' | 'piece' | 'offcut' | 'waste'

/** A piece of a sheet (or of a board, whose `width` is 0). Its `id` is its own throughout the order. */
export interface Piece {
  readonly id: number
  readonly length: number
  readonly width: number
  readonly becomes: Becomes
  readonly part?: string | undefined
}

/** Why a cut needs care: the wanted strip falls on the free side, or both sides are narrower than is safe. */
export type Narrow = 'free side' | 'both sides'

/** One pass of the saw. */
export interface SawCut {
  /** Index of the layout among the sheets (or the boards), and which of its copies, from 0. */
  readonly layout: number
  readonly copy: number
  readonly piece: Piece
  /** What comes of it: first the piece between fence and blade, then what the free side leaves, if anything. */
  readonly out: readonly Piece[]
  /** Parts finished by this cut. */
  readonly parts: readonly string[]
  /** The edge to run against the fence: as it came, or sawn before. */
  readonly reference: 'factory' | 'sawn'
  readonly narrow?: Narrow | undefined
}

/** `rip`: along the length of the sheet; `crosscut`: across it, or across a board; `trim`: a raw edge off. */
export type CutKind = 'rip' | 'crosscut' | 'trim'

/** Pieces of one size with cuts still to come. */
export interface Waiting {
  readonly length: number
  readonly width: number
  readonly count: number
}

/** Everything cut at one setting of the saw. */
export interface SawStep {
  /**
   * Fence (or stop) to the nearest tooth: the width of the piece at the fence, exact. For the trim of a board, which
   * needs no stop: how much comes off.
   */
  readonly setting: number
  /** The setting to the nearest step of the tape. */
  readonly mark: number
  readonly kind: CutKind
  readonly of: 'sheet' | 'board'
  readonly cuts: readonly SawCut[]
  /** What is still to be cut further, the 50 largest kinds of it, and how many pieces there are in all. */
  readonly remaining: readonly Waiting[]
  readonly waiting: number
}

/** Two parts so near in size that they are easily mixed up. */
export interface EasySwap {
  readonly first: string
  readonly second: string
}

/** How to saw everything, setting after setting. */
export interface CutOrder {
  readonly steps: readonly SawStep[]
  /** Stock that goes in as it is: a sheet or board that is a part without a cut. */
  readonly uncut: readonly Piece[]
  readonly swaps: readonly EasySwap[]
  readonly figures: {
    /** Different settings, and how often the saw is set: more when one must be used again. */
    readonly settings: number
    readonly steps: number
    readonly cuts: number
  }
}
