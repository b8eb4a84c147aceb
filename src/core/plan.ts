import { type Length, plus, times, ZERO } from './measure/length.ts'
import { checkFraming } from './panelling/checkFraming.ts'
import { type CornerWarning, warnCorner } from './panelling/cornerWarning.ts'
import { braceFace, type Face, layFace } from './panelling/face.ts'
import { type Frame, type Framing, sizeFraming } from './panelling/framing.ts'
import { halve, type Halving } from './panelling/halved.ts'
import type { SurroundObstacle } from './panelling/surroundObstacle.ts'
import { type BottomPlan, layBottom } from './plan/bottom.ts'
import { checkFront, checkInterior } from './plan/checkInterior.ts'
import { checkSpec } from './plan/checkSpec.ts'
import { type CordPlan, layCord } from './plan/cord.ts'
import { type Hardware, listHardware } from './plan/hardware.ts'
import { blockFoot } from './plan/interior.ts'
import { type LidPlan, layLid } from './plan/lid.ts'
import type { Part, PartName } from './plan/part.ts'
import { listParts } from './plan/partList.ts'
import { frontHeight } from './plan/slots.ts'
import type { FaceName, Spec } from './plan/spec.ts'

export type { Part, PartName, Spec }

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
  /** Slots and tails of halved corners. */
  readonly halving?: Halving
  /** The four framed panels laid on one another, bottom and lid on top (a butted box only before it is glued). */
  readonly flatStack: Length
  readonly parts: readonly Part[]
  /** The front only where it differs from the other side. */
  readonly faces: readonly [end: Face, side: Face, ...front: Face[]]
  readonly lid?: LidPlan
  readonly bottom?: BottomPlan
  readonly cord?: CordPlan
  /** What is bought and screwed on, besides fasteners; empty for most. */
  readonly hardware: readonly Hardware[]
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
  const frame: Frame = { ...spec, inside: insideOf(spec), blockFoot: blockFoot(spec) }
  const framing = sizeFraming(frame)
  const frontFraming = spec.front && sizeFraming({ ...frame, height: frontHeight(spec) })
  const obstacle = checkFraming(frame, framing) ?? checkFront(spec, frontFraming) ?? checkInterior(spec)
  if (obstacle) return impossible(obstacle)
  const faces = braceFaces(spec, layFaces(spec, framing, frontFraming))
  if ('kind' in faces) return impossible(faces)
  const overall = sizes(spec, frame, framing)
  const extras = layExtras(spec, overall, faces)
  if ('kind' in extras) return impossible(extras)
  const { flatStack } = overall
  return {
    ...overall,
    ...extras,
    flatStack: plus(flatStack, extras.lid?.thickness ?? ZERO, extras.bottom?.thickness ?? ZERO),
    faces,
    parts: listParts({ spec, framing, frontFraming, faces, ...extras }),
    hardware: listHardware(spec),
  }
}

type Faces = Plan['faces']

function layFaces(spec: Spec, framing: Framing, frontFraming: Framing | undefined): Faces {
  const { height, width, grooves, front } = spec
  const end = layFace({ name: 'end', count: 2, height, width, grooves }, framing)
  const side = layFace({ name: 'side', count: frontFraming ? 1 : 2, height, width, grooves }, framing)
  if (!frontFraming) return [end, side]
  const terms = { height: frontHeight(spec), width, grooves: front?.grooves ?? grooves }
  return [end, side, layFace({ name: 'front', count: 1, ...terms }, frontFraming)]
}

function braceFaces(spec: Spec, faces: Faces): Faces | SurroundObstacle {
  const braced: Face[] = []
  for (const face of faces) {
    const found = isBraced(spec, face.name) ? braceFace(face, spec.width) : face
    if ('kind' in found) return found
    braced.push(found)
  }
  const [end, side, ...front] = braced
  if (!end || !side) throw new RangeError('a box has ends and sides')
  return [end, side, ...front]
}

const isBraced = ({ braces, front }: Spec, face: FaceName): boolean =>
  face === 'front'
    ? (front?.braced ?? (braces === 'all' || braces === 'sides'))
    : braces === 'all' || braces === `${face}s`

/** Lid, bottom and cord, or the first of them that cannot be. */
function layExtras(
  spec: Spec,
  { inside, outside }: Pick<Plan, 'inside' | 'outside'>,
  faces: Faces,
): Pick<Plan, 'lid' | 'bottom' | 'cord'> | SurroundObstacle {
  const lid = layLid(spec, inside, outside)
  if (lid && !('gap' in lid)) return lid
  const bottom = layBottom(spec, inside)
  if (bottom && !('gap' in bottom)) return bottom
  const cord = layCord(spec, faces)
  if (cord && 'kind' in cord) return cord
  return { ...(lid ? { lid } : {}), ...(bottom ? { bottom } : {}), ...(cord ? { cord } : {}) }
}

function insideOf({ object, clearance }: Spec): Frame['inside'] {
  const both = times(clearance, 2)
  const { length, width } =
    object.shape === 'round' ? { length: object.diameter, width: object.diameter } : object
  return { length: plus(length, both), width: plus(width, both) }
}

type Overall = Omit<Plan, 'faces' | 'parts' | 'hardware' | 'lid' | 'bottom' | 'cord'>

function sizes(spec: Spec, frame: Frame, framing: Framing): Overall {
  const { inside } = frame
  const halving = spec.corner === 'halved' ? halve(spec) : undefined
  const past = plus(spec.sheet, halving ? halving.tail : spec.strip)
  const diameter = spec.object.shape === 'round' ? spec.object.diameter : undefined
  return {
    status: 'planned',
    spec,
    inside,
    outside: { length: plus(inside.length, times(past, 2)), width: plus(inside.width, times(past, 2)) },
    panelHeight: spec.height,
    sidePanelLength: framing.sidePanel,
    endPanelLength: framing.endPanel,
    sideRailLength: framing.sideRail,
    endRailLength: framing.endRail,
    endStileLength: framing.endStile,
    cornerStileLength: framing.sideStile,
    lip: framing.lip,
    fit: spec.corner === 'captured' ? spec.fit : ZERO,
    ...(halving ? { halving } : {}),
    flatStack: plus(times(plus(spec.sheet, spec.strip), 4), times(spec.strip, thickerPanels(spec, framing))),
    warnings: warnCorner(frame, framing, { diameter, clearance: spec.clearance }),
  }
}

/** How many of the four panels carry strips inside: blocks on the sides, cleats and ledgers on all. */
function thickerPanels({ lid, bottom }: Spec, { block }: Framing): number {
  if (lid?.kind === 'inset' || bottom?.on === 'cleats') return 4
  return block === undefined ? 0 : 2
}
