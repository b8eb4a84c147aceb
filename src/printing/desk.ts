import type { Setter } from './type.ts'

/** What every block is laid out on: the document, its type, and the part of the page for text, in points. */
export interface Desk {
  readonly doc: PDFKit.PDFDocument
  readonly setter: Setter
  readonly left: number
  readonly width: number
  /** Of a whole page of text. */
  readonly height: number
}
