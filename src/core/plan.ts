import { type Length, plus, times, ZERO } from './measure/length.ts'
import { checkFraming } from './panelling/checkFraming.ts'
import { type CornerWarning, warnCorner } from './panelling/cornerWarning.ts'
import { braceFace, type Face, layFaces } from './panelling/face.ts'
import { type Corner, type Frame, type Framing, sizeFraming } from './panelling/framing.ts'
import type { SurroundObstacle } from './panelling/surroundObstacle.ts'

/** A surround as asked for: what it goes round, and the real sizes of what it is made of. */
export interface Spec {
  readonly object:
    | { readonly shape: 'rectangle'; readonly length: Length; readonly width: Length }
    | { readonly shape: 'round'; readonly diameter: Length }
  /** Finished height of the box. */
  readonly height: Length
  /** Room on each side of the object. */
  readonly clearance: Length
  /** True thickness of the sheet. */
  readonly sheet: Length
  /** Strip thickness: what the rip fence sets. */
  readonly strip: Length
  /** Strip face width: the dressed thickness of the board. */
  readonly width: Length
  readonly corner: Corner
  readonly braces: 'ends' | 'sides' | 'all' | 'none'
  /** In each panel. */
  readonly grooves: number
  /** Gap at each end of a captured corner stile. */
  readonly fit: Length
  readonly kerf: Length
}

/** What a part is called, the same in the list, in drawings and on labels. */
export type PartName =
  | 'end panel'
  | 'side panel'
  | 'end rail'
  | 'side rail'
  | 'end stile'
  | 'corner stile'
  | 'side stile'
  | 'corner block'
  | 'end brace'
  | 'side brace'

/**
 * Parts cut alike. A panel's length runs along the box and its width is the height; a strip's width is its face width and
 * its thickness how far it stands proud. A brace's length is its blank, tip to tip.
 */
export interface Part {
  /** A, B, C ... down the list, panels first. */
  readonly label: string
  readonly name: PartName
  readonly material: 'sheet' | 'strip'
  readonly count: number
  readonly length: Length
  readonly width: Length
  readonly thickness: Length
}

/** A surround worked out: every size that the other commands count from, exact but for braces. */
export interface Plan {
  readonly status: 'planned'
  readonly spec: Spec
  readonly inside: { readonly length: Length; readonly width: Length }
  readonly outside: { readonly length: Length; readonly width: Length }
  readonly panelHeight: Length
  readonly sidePanelLength: Length
  readonly endPanelLength: Length
  readonly sideRailLength: Length
  readonly endRailLength: Length
  readonly endStileLength: Length
  /** The stile at the ends of the side faces; shorter than the end stile by twice the fit where it is captured. */
  readonly cornerStileLength: Length
  /** How far a captured corner stile covers the side panel; 0 at other corners. */
  readonly lip: Length
  /** Gap at each end of a captured corner stile; 0 at other corners. */
  readonly fit: Length
  /** The four framed panels laid on one another (a butted box only before it is glued). */
  readonly flatStack: Length
  readonly parts: readonly Part[]
  readonly faces: readonly [end: Face, side: Face]
  readonly warnings: readonly CornerWarning[]
}

/** A surround that cannot be built as described, and the lengths that would do. */
export interface NoPlan {
  readonly status: 'impossible'
  readonly spec: Spec
  readonly obstacle: SurroundObstacle
}

/** Sizes every part of a surround; formulas in framing.ts, obstacles in surroundObstacle.ts. */
export function planSurround(spec: Spec): Plan | NoPlan {
  const impossible = (obstacle: SurroundObstacle): NoPlan => ({ status: 'impossible', spec, obstacle })
  const absurd = checkSpec(spec)
  if (absurd) return impossible(absurd)
  const frame: Frame = { ...spec, inside: insideOf(spec) }
  const framing = sizeFraming(frame)
  const obstacle = checkFraming(frame, framing)
  if (obstacle) return impossible(obstacle)
  const brace = (face: Face) => (isBraced(spec.braces, face.name) ? braceFace(face, spec.width) : face)
  const [end, side] = layFaces(frame, framing)
  const bracedEnd = brace(end)
  if ('kind' in bracedEnd) return impossible(bracedEnd)
  const bracedSide = brace(side)
  if ('kind' in bracedSide) return impossible(bracedSide)
  const faces = [bracedEnd, bracedSide] as const
  return { ...sizes(spec, frame, framing), faces, parts: listParts(spec, framing, faces) }
}

const isBraced = (braces: Spec['braces'], face: Face['name']): boolean =>
  braces === 'all' || braces === `${face}s`

function checkSpec(spec: Spec): SurroundObstacle | undefined {
  const { object } = spec
  const short = object.shape === 'round' ? object.diameter : (Math.min(object.length, object.width) as Length)
  const needed = {
    object: short,
    height: spec.height,
    sheet: spec.sheet,
    strip: spec.strip,
    width: spec.width,
  }
  for (const [what, value] of Object.entries(needed) as [keyof typeof needed, Length][]) {
    if (!(value > 0)) return { kind: 'notPositive', what, value }
  }
  const allowed = { clearance: spec.clearance, fit: spec.fit, kerf: spec.kerf, grooves: spec.grooves }
  for (const [what, value] of Object.entries(allowed) as [keyof typeof allowed, number][]) {
    if (!(value >= 0)) return { kind: 'negative', what, value }
  }
  return undefined
}

function insideOf({ object, clearance }: Spec): Frame['inside'] {
  const both = times(clearance, 2)
  const { length, width } =
    object.shape === 'round' ? { length: object.diameter, width: object.diameter } : object
  return { length: plus(length, both), width: plus(width, both) }
}

function sizes(spec: Spec, frame: Frame, framing: Framing): Omit<Plan, 'faces' | 'parts'> {
  const { inside } = frame
  const wall = plus(spec.sheet, spec.strip)
  const diameter = spec.object.shape === 'round' ? spec.object.diameter : undefined
  return {
    status: 'planned',
    spec,
    inside,
    outside: { length: plus(inside.length, times(wall, 2)), width: plus(inside.width, times(wall, 2)) },
    panelHeight: spec.height,
    sidePanelLength: framing.sidePanel,
    endPanelLength: framing.endPanel,
    sideRailLength: framing.sideRail,
    endRailLength: framing.endRail,
    endStileLength: framing.endStile,
    cornerStileLength: framing.sideStile,
    lip: framing.lip,
    fit: spec.corner === 'captured' ? spec.fit : ZERO,
    // A side that carries corner blocks is thicker by one strip.
    flatStack: plus(times(wall, 4), framing.block === undefined ? ZERO : times(spec.strip, 2)),
    warnings: warnCorner(frame, framing, { diameter, clearance: spec.clearance }),
  }
}

type Row = readonly [name: PartName, count: number, length: Length | undefined]

function listParts(spec: Spec, framing: Framing, [end, side]: Plan['faces']): readonly Part[] {
  const rows: readonly Row[] = [
    ['end panel', 2, framing.endPanel],
    ['side panel', 2, framing.sidePanel],
    ['end rail', 4, framing.endRail],
    ['side rail', 4, framing.sideRail],
    ['end stile', 4, framing.endStile],
    [spec.corner === 'captured' ? 'corner stile' : 'side stile', 4, framing.sideStile],
    ['corner block', 4, framing.block],
    ['end brace', 2, end.brace?.length],
    ['side brace', 2, side.brace?.length],
  ]
  return rows.filter(([, , length]) => length !== undefined).map((row, index) => part(spec, row, index))
}

function part(spec: Spec, [name, count, length = ZERO]: Row, index: number): Part {
  const label = String.fromCharCode('A'.charCodeAt(0) + index)
  return name.endsWith('panel')
    ? { label, name, material: 'sheet', count, length, width: spec.height, thickness: spec.sheet }
    : { label, name, material: 'strip', count, length, width: spec.width, thickness: spec.strip }
}
