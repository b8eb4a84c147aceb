import type { Drawable } from '../../drawing/drawing.ts'

/** The two papers that home printers hold: ISO 216 A4, and Letter (ANSI/ASME Y14.1 size A). */
export const PAPERS = ['a4', 'letter'] as const
export type Paper = (typeof PAPERS)[number]

/** What may be had: all of it, the labels alone, the parts for a spreadsheet. */
export const FILES = ['all', 'labels', 'parts'] as const

/** Words, or boxes to tick with a pencil; `ticked` of them are ticked already. */
export type HandoutCell = string | { readonly boxes: number; readonly ticked?: number }

export interface HandoutColumn {
  readonly heading: string
  /** Numbers to cut by: set in bold. */
  readonly strong?: boolean
  readonly right?: boolean
}

/** A table whose head is said again on each page that it goes on to. */
export interface HandoutTable {
  readonly block: 'table'
  readonly title?: string
  readonly columns: readonly HandoutColumn[]
  readonly rows: readonly (readonly HandoutCell[])[]
}

/** One thing to do and tick off: what it is, the numbers to set, how. */
export interface HandoutTask {
  readonly ticked: boolean
  readonly heading: string
  readonly settings: readonly string[]
  readonly words: string
}

/** What is cut out and stuck on one part. */
export interface Label {
  readonly name: string
  readonly size: string
  /** What it is, and whose. */
  readonly lines: readonly string[]
}

export type Block =
  | { readonly block: 'words'; readonly text: string; readonly strong?: boolean }
  | { readonly block: 'points'; readonly items: readonly string[] }
  | { readonly block: 'tasks'; readonly items: readonly HandoutTask[] }
  | { readonly block: 'picture'; readonly alt: string; readonly scene: Drawable; readonly tallest?: number }
  | { readonly block: 'labels'; readonly labels: readonly Label[] }
  | HandoutTable

/** One section with its heading, which never stands alone at the foot of a page. */
export interface Section {
  readonly title: string
  /** Begins a page. */
  readonly onNewPage?: boolean
  readonly blocks: readonly Block[]
}

/** A document to print, as data: what it says and in which order. Where it goes on the paper is the printer's to say. */
export interface Handout {
  readonly title: string
  /** Under the title: which version it is, and of when. */
  readonly subtitle: string
  /** At the foot of every page, beside its number. */
  readonly foot: string
  readonly paper: Paper
  /** When it was asked for. */
  readonly at: Date
  readonly sections: readonly Section[]
}

/** A document as a PDF, and how many pages it has. */
export interface Printed {
  readonly content: Uint8Array
  readonly pages: number
}

/** Prints a document as a PDF, away from the thread that answers. */
export type Print = (handout: Handout) => Promise<Printed>
