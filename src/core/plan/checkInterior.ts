import { type Length, minus, plus } from '../measure/length.ts'
import type { Framing } from '../panelling/framing.ts'
import type { SurroundObstacle } from '../panelling/surroundObstacle.ts'
import { interiorOf } from './interior.ts'
import { frontHeight } from './slots.ts'
import type { Spec } from './spec.ts'

/** Whether a lower front still has stiles between its rails. */
export function checkFront(spec: Spec, framing: Framing | undefined): SurroundObstacle | undefined {
  if (!framing || framing.sideStile > 0) return undefined
  const height = frontHeight(spec)
  return { kind: 'tooLow', face: 'front', height, heightAbove: minus(height, framing.sideStile) }
}

/** Whether bottom, corner blocks and an inset lid leave anything between them. */
export function checkInterior(spec: Spec): SurroundObstacle | undefined {
  const { height, width, corner, bottom, lid } = spec
  if (!bottom && !lid) return undefined
  const { floor, ceiling } = interiorOf(spec)
  const front = frontHeight(spec)
  // Blocks end one strip width below the top.
  const over = corner === 'cleated' ? width : (0 as Length)
  const boxAbove = plus(floor, Math.max(minus(height, ceiling), over) as Length)
  if (height <= boxAbove) return { kind: 'noInterior', heightAbove: boxAbove }
  const frontAbove = plus(floor, over)
  return front <= frontAbove ? { kind: 'noInterior', face: 'front', heightAbove: frontAbove } : undefined
}
