import { type Length, minus, nanometres, plus, ZERO } from '../measure/length.ts'
import type { Face } from '../panelling/face.ts'
import { halve } from '../panelling/halved.ts'
import type { NoRoomForCord } from '../panelling/surroundObstacle.ts'
import { interiorOf } from './interior.ts'
import type { Cutout } from './part.ts'
import type { CordSpec, Spec } from './spec.ts'

/** Where a cord goes through: the panel, and the notch in it, along its length and up from the floor. */
export interface CordPlan {
  readonly face: CordSpec['face']
  readonly notch: Cutout
}

/** What of a panel is free of the frame outside and of blocks, cleats and panels inside, from the panel's end and the floor. */
interface Window {
  readonly left: Length
  readonly right: Length
  readonly low: Length
  readonly high: Length
}

/**
 * Lays the cord notch on the bottom rail, or on the bottom where that lies higher: in the middle of the panel, or, under a
 * brace, which rises from the lower left, in the lower right corner of the opening. A brace of slope a and width w, whose lower
 * edge starts on the rail u along, leaves (x - u) tan a of height x along.
 */
export function layCord(spec: Spec, faces: readonly Face[]): CordPlan | NoRoomForCord | undefined {
  const { cord } = spec
  const face = cord && (faces.find(({ name }) => name === cord.face) ?? faces[1])
  if (!cord || !face) return undefined
  const window = windowOf(spec, face)
  const wide = minus(window.right, window.left)
  const left = face.brace
    ? minus(window.right, cord.width)
    : nanometres((window.left + window.right - cord.width) / 2)
  const heightAtMost = Math.max(
    0,
    Math.min(minus(window.high, window.low), underBrace(spec, face, left, window)),
  ) as Length
  if (cord.width > wide || cord.height > heightAtMost)
    return { kind: 'noRoomForCord', face: face.name, widthAtMost: Math.max(0, wide) as Length, heightAtMost }
  const size = { along: cord.width, across: cord.height }
  const notch = {
    kind: 'cord notch',
    parts: 1,
    round: false,
    size,
    at: [{ along: left, across: window.low }],
  } as const
  return { face: face.name, notch }
}

function windowOf(spec: Spec, { name, panel, covered, height }: Face): Window {
  const { floor, ceiling } = interiorOf(spec)
  // Blocks stand w along the sides, s along the ends; the end panel runs t past the inside, a halved one its tail more.
  const past =
    spec.corner === 'halved' ? plus(spec.sheet, halve(spec).tail) : name === 'end' ? spec.sheet : ZERO
  const inner = plus(past, name === 'end' ? spec.strip : spec.corner === 'cleated' ? spec.width : ZERO)
  const edge = Math.max(covered, inner) as Length
  return {
    left: edge,
    right: minus(panel, edge),
    low: Math.max(spec.width, floor) as Length,
    high: Math.min(minus(height, spec.width), ceiling) as Length,
  }
}

/** Free height above `low` under the lower edge of the brace at the notch's left side; without a brace no bound. */
function underBrace(
  { width }: Spec,
  { brace, covered, panel, opening }: Face,
  left: Length,
  { low }: Window,
): number {
  if (!brace) return Infinity
  const radians = (brace.slope * Math.PI) / 180
  // Perpendicular from the middle of the opening to the lower edge is w / 2.
  const from = left - covered - (panel - 2 * covered) / 2
  const middle = opening.height / 2 + from * Math.tan(radians) - width / 2 / Math.cos(radians)
  return Math.floor(middle - (low - width))
}
