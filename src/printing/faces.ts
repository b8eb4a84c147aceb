import { createRequire } from 'node:module'

/** Where the file of a face lies. */
export const fontFile = (name: string): string =>
  createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)

/** Faces by name: narrow ones for reading, and those that pictures are drawn for. */
export const FACES = {
  body: 'DejaVuSansCondensed',
  strong: 'DejaVuSansCondensed-Bold',
  picture: 'DejaVuSans',
  pictureStrong: 'DejaVuSans-Bold',
} as const
export type Face = keyof typeof FACES

/** A document with every face ready; one that is not used takes no room in the file. */
export function registerFaces(doc: PDFKit.PDFDocument): void {
  for (const [name, font] of Object.entries(FACES)) doc.registerFont(name, fontFile(font))
}
