/** Patterns that tell surfaces apart without a colour. */
export type PatternName = 'layers' | 'uprightLayers' | 'hatch' | 'dots'

/** One tile of each, in points: its sides and how it is drawn, in the language of PDF (ISO 32000-1, 8.7.3). */
const TILES: Readonly<Record<PatternName, { readonly side: number; readonly stream: string }>> = {
  layers: { side: 4, stream: '0.6 w 0 1 m 4 1 l 0 3 m 4 3 l S' },
  uprightLayers: { side: 4, stream: '0.6 w 1 0 m 1 4 l 3 0 m 3 4 l S' },
  hatch: { side: 7, stream: '0.6 w -1 -1 m 8 8 l -1 6 m 1 8 l 6 -1 m 8 1 l S' },
  dots: { side: 6, stream: '1 1 0.7 0.7 re 4 4 0.7 0.7 re f' },
}

/** The patterns of one document. */
export type Patterns = Readonly<Record<PatternName, PDFKit.PDFTilingPattern>>

/** Patterns that keep their size whatever the scale of the picture that they fill. */
export function createPatterns(doc: PDFKit.PDFDocument): Patterns {
  const make = (name: PatternName): PDFKit.PDFTilingPattern => {
    const { side, stream } = TILES[name]
    const pattern = doc.pattern([0, 0, side, side], side, side, stream)
    // Its scale is that of the moment it is first used, so this is done before any picture is drawn.
    pattern.embed()
    return pattern
  }
  return {
    layers: make('layers'),
    uprightLayers: make('uprightLayers'),
    hatch: make('hatch'),
    dots: make('dots'),
  }
}
