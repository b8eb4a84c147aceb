import { INK } from './paper.ts'

/** Of a box to tick with a pencil. */
export const BOX = 11
export const BOX_GAP = 4

/** An empty box, or one with a tick. */
export function drawBox(doc: PDFKit.PDFDocument, x: number, y: number, ticked: boolean): void {
  doc.lineWidth(1.1).strokeColor(INK).rect(x, y, BOX, BOX).stroke()
  if (!ticked) return
  doc
    .lineWidth(1.8)
    .moveTo(x + 2, y + BOX * 0.55)
    .lineTo(x + BOX * 0.42, y + BOX - 2.2)
    .lineTo(x + BOX - 1.5, y + 2)
    .stroke()
}
