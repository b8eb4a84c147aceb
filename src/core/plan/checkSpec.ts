import { type Length, ZERO } from '../measure/length.ts'
import type { Negative, NotPositive, SurroundObstacle } from '../panelling/surroundObstacle.ts'
import { frontHeight } from './slots.ts'
import type { Spec } from './spec.ts'

/** The first size that no box can have, whatever its corners. */
export function checkSpec(spec: Spec): SurroundObstacle | undefined {
  const { object } = spec
  const short = object.shape === 'round' ? object.diameter : (Math.min(object.length, object.width) as Length)
  const needed: readonly (readonly [NotPositive['what'], Length | undefined])[] = [
    ['object', short],
    ['height', spec.height],
    ['sheet', spec.sheet],
    ['strip', spec.strip],
    ['width', spec.width],
    ['front', spec.front?.height],
    ['drain', spec.bottom?.drain?.diameter],
    ['drain spacing', spec.bottom?.drain?.spacing],
    ['cord', spec.cord && (Math.min(spec.cord.width, spec.cord.height) as Length)],
  ]
  for (const [what, value] of needed)
    if (value !== undefined && !(value > 0)) return { kind: 'notPositive', what, value }
  const allowed: readonly (readonly [Negative['what'], number])[] = [
    ['clearance', spec.clearance],
    ['fit', spec.fit],
    ['kerf', spec.kerf],
    ['grooves', spec.grooves],
    ['gap', spec.gap ?? ZERO],
    ['front grooves', spec.front?.grooves ?? 0],
  ]
  for (const [what, value] of allowed) if (!(value >= 0)) return { kind: 'negative', what, value }
  return frontHeight(spec) > spec.height ? { kind: 'frontTall', height: spec.height } : undefined
}
