import { coveredBy } from './signs.ts'
import type { Face } from './faces.ts'
import { INK, LEADING } from './paper.ts'

/** A face at a size in points. */
export interface Style {
  readonly face: Face
  readonly size: number
}

/** Sets lines of type: measures them, breaks them, puts them on the page. */
export interface Setter {
  readonly width: (text: string, style: Style) => number
  /** `text` in lines no wider than `room`; a word that is wider alone is broken. */
  readonly wrap: (text: string, style: Style, room: number) => readonly string[]
  /** Draws one line with its foot at `y`; `x` is its start, middle or end. */
  readonly draw: (
    text: string,
    at: { readonly x: number; readonly y: number; readonly anchor?: 'start' | 'middle' | 'end' },
    style: Style,
    colour?: string,
  ) => void
}

/** Sets type on `doc`. Signs that the faces lack, as names may have them, become a question mark. */
export function createSetter(doc: PDFKit.PDFDocument): Setter {
  const widths = new Map<string, number>()
  const width = (text: string, { face, size }: Style): number => {
    const key = `${face} ${text}`
    const known = widths.get(key)
    if (known !== undefined) return known * size
    const measured = doc.font(face).fontSize(100).widthOfString(text) / 100
    widths.set(key, measured)
    return measured * size
  }
  return {
    width,
    wrap: (text, style, room) => wrapped(coveredBy(text), (line) => width(line, style) <= room),
    draw: (given, { x, y, anchor = 'start' }, style, colour = INK) => {
      const text = coveredBy(given)
      const moved = anchor === 'start' ? 0 : width(text, style) / (anchor === 'end' ? 1 : 2)
      doc.font(style.face).fontSize(style.size).fillColor(colour)
      doc.text(text, x - moved, y, { lineBreak: false, baseline: 'alphabetic' })
    },
  }
}

/** From the top of a line to the foot of its letters, as a part of its height. */
export const BASELINE = 0.76

export const lineHeight = ({ size }: Style): number => size * LEADING

/** Words into lines that fit. */
export function wrapped(text: string, fits: (line: string) => boolean): readonly string[] {
  const lines: string[] = []
  for (const word of text.split(/\s+/u).filter((each) => each !== '')) {
    const last = lines.at(-1)
    if (last !== undefined && fits(`${last} ${word}`)) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(...broken(word, fits))
  }
  return lines.length === 0 ? [''] : lines
}

/** A word in pieces that fit, at least a sign each. */
function broken(word: string, fits: (line: string) => boolean): readonly string[] {
  if (fits(word)) return [word]
  const pieces: string[] = []
  let piece = ''
  for (const sign of word) {
    if (piece !== '' && !fits(piece + sign)) {
      pieces.push(piece)
      piece = ''
    }
    piece += sign
  }
  return [...pieces, piece]
}
