import type { Length } from '../core/measure/length.ts'
import type { Caution } from '../core/checks/caution.ts'
import type { Drawable } from '../drawing/drawing.ts'

export type { Caution }

/**
 * Which way a length is rounded to the tape, by what the number is for: a part that goes into something rounds down,
 * one that covers rounds up, a mark on the wood goes to the nearest.
 */
export type Purpose = 'into' | 'cover' | 'mark'

/** A number in a table, kept exact until format.ts prints it in the units of the person who asked. */
export interface Quantity {
  readonly length: Length
  readonly purpose?: Purpose
  /** To the joint tape (1/32 in by default) in place of the ordinary one. */
  readonly fine?: boolean
}

export type Cell = string | number | Quantity

export interface Table {
  readonly title?: string
  readonly columns: readonly string[]
  readonly rows: readonly (readonly Cell[])[]
}

/** A button is a command invocation and nothing else: pressing it is typing the line. */
export interface Button {
  readonly label: string
  readonly line: string
}

/** A picture to look at. */
export interface Picture {
  /** Of the file, without its ending. */
  readonly name: string
  /** What it shows, with the numbers, for those who do not see it. */
  readonly alt: string
  /** Drawn, or what it is drawn from. */
  readonly scene: Drawable
}

/** A file to keep or print. */
export interface File {
  readonly name: string
  readonly type: string
  readonly content: string | Uint8Array
}

/** The same answer as numbers in mm, degrees, mm2, mL, g, or lists and records of them: for scripts and tests. */
export type Figure =
  | number
  | string
  | boolean
  | null
  | readonly Figure[]
  | { readonly [name: string]: Figure }

/** All that was said in the channel, or all that this person said on the platform. */
export type Forgets = 'channel' | 'person'

/** What a command answers, in fixed slots; each platform decides where they go, always in this order. */
export interface Reply {
  /** The first line: the number to cut or buy, with its unit. Never cut short. */
  readonly answer: string
  /** Never cut short. */
  readonly cautions?: readonly Caution[]
  readonly tables?: readonly Table[]
  readonly pictures?: readonly Picture[]
  /** What was assumed, said in at most one line each. */
  readonly notes?: readonly string[]
  readonly files?: readonly File[]
  readonly buttons?: readonly Button[]
  readonly figures: Readonly<Record<string, Figure>>
  /** `asker` unless said otherwise; one tap shares it. */
  readonly audience?: 'asker' | 'channel'
  /** What was deleted for good: the platform deletes what it keeps of it itself. */
  readonly forgets?: Forgets
  /** What is put up for the whole channel besides, in the place of what stood there under the same name. */
  readonly notice?: Notice
}

/**
 * A standing notice of a channel: put up and pinned the first time, edited in place from then on. Where a platform cannot do
 * so, it says that in a sentence.
 */
export interface Notice {
  readonly name: string
  readonly reply: Reply
  /** The revision in the store that it was rendered from: an older one never takes the place of a newer. */
  readonly revision: number
  /** When what it is about began, in ISO 8601, since revisions count anew once that was deleted. */
  readonly since?: string | undefined
}
