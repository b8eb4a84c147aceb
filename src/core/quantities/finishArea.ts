import { type Length, toMillimetres } from '../measure/length.ts'

/** A part as far as its surface goes. A strip's width is its face, its thickness how far it stands off the panel. */
export interface FinishedPart {
  readonly count: number
  readonly length: Length
  readonly width: Length
  readonly thickness: Length
  readonly material: 'sheet' | 'strip'
}

/** `outside`: one face of every panel and all edges. `all`: both faces and all edges. */
export type Faces = 'outside' | 'all'

/**
 * What a finish has to cover once the box is together, mm2: the panels' faces and edges, and the four sides of every
 * strip. A strip hides as much of its panel as its own face shows, so its face adds nothing. Ends that butt together are
 * counted though they do not show; grooves and what overhangs a panel are left out.
 */
export const exposedArea = (parts: readonly FinishedPart[], faces: Faces): number =>
  parts.reduce((total, part) => total + part.count * shownBy(part, faces), 0)

function shownBy(part: FinishedPart, faces: Faces): number {
  const [length, width, thickness] = [part.length, part.width, part.thickness].map(toMillimetres) as Sizes
  const edges = 2 * (length + width) * thickness
  if (part.material === 'strip') return edges
  return edges + length * width * (faces === 'all' ? 2 : 1)
}

type Sizes = [length: number, width: number, thickness: number]
