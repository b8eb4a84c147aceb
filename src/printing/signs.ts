import { openSync } from 'fontkit'
import { FACES, fontFile } from './faces.ts'

type Font = { readonly hasGlyphForCodePoint: (point: number) => boolean }

let opened: Font | undefined

/** Latin letters and signs, which every face has. */
const PLAIN = /^[\u0020-\u007e\u00a0-\u00ff]*$/u

/** Whether the faces have every sign of `text`. */
export const isCovered = (text: string): boolean => coveredBy(text) === text.normalize('NFC')

/** `text` with a question mark for each sign that the faces lack, as names may have. */
export function coveredBy(text: string): string {
  if (PLAIN.test(text)) return text
  opened ??= openSync(fontFile(FACES.body)) as unknown as Font
  const font = opened
  return [...text.normalize('NFC')]
    .map((sign) => (font.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0) ? sign : '?'))
    .join('')
}
