import type { Length } from '../../measure/length.ts'

/** A part as a line of a list gives it. `length` runs along the grain; a strip or board has no width. */
export interface ListedPart {
  /** The line of the pasted text, from 1. */
  readonly line: number
  readonly label?: string | undefined
  readonly count: number
  readonly length: Length
  readonly width?: Length | undefined
  /** As named in the list: the label of the sheet, not what it measures. */
  readonly thickness?: Length | undefined
  readonly material?: string | undefined
  /** Name of the board that it is crosscut from, as `2x4`; width and thickness are then what that measures. */
  readonly board?: string | undefined
  /** Whether the line says how many; without it the count is 1. */
  readonly counted: boolean
  /** What was assumed, in one line. */
  readonly note?: string | undefined
}

/** A line that is no part: a sentence says why, and what would do. */
export interface ListProblem {
  readonly line: number
  readonly text: string
  readonly problem: string
}

/** What one line comes to before it has its number. `ambiguous` marks a problem that knowing the unit might solve. */
export type LineRead =
  | {
      readonly status: 'part'
      readonly part: Omit<ListedPart, 'line'>
      readonly units?: 'inch' | 'metric' | undefined
    }
  | { readonly status: 'ambiguous' | 'problem'; readonly problem: string }

/** A line that cannot be read: what was read, and why it is no part. */
export const problemOf = (problem: string): LineRead => ({ status: 'problem', problem })

/** At most this many of one part: more is a slip of the keys. */
export const MOST_COPIES = 10_000
