import type { Amount } from './amount.ts'
import type { Length } from './length.ts'
import type { ReadingSettings } from './reading.ts'
import type { Thickness } from './sheetThickness.ts'
import type { Unit } from './unit.ts'

/** Numbers joined by x, and whether `of` stands before them. */
export interface Chunk {
  readonly amounts: readonly Amount[]
  readonly after: readonly string[]
  readonly of: boolean
  /** No space before the last x: `2x4`. */
  readonly tight: boolean
}

/** What one chunk of a stock name stands for. */
export interface Part {
  readonly status: 'read'
  readonly lengths: readonly Length[]
  readonly unit: Unit
  /** What the part is; only a board, a sheet or a thickness makes a stock name. */
  readonly is: 'board' | 'sheet' | 'thickness' | 'length'
  readonly name?: string | undefined
  /** How thick a sheet is, by its label and as made. */
  readonly thickness?: Thickness | undefined
  readonly note?: string | undefined
}

/** All that a chunk is read with. */
export interface StockContext {
  readonly words: readonly string[]
  readonly chunks: readonly Chunk[]
  readonly settings: ReadingSettings
  readonly text: string
}
