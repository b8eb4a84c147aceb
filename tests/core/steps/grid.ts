import { inches, type Length } from '../../../src/core/measure/length.ts'
import { type Plan, planSurround, type Spec } from '../../../src/core/plan.ts'
import { buildSteps } from '../../../src/core/steps/buildSteps.ts'
import { CORNERS } from '../../../src/bot/settings.ts'
import { plain } from '../panelling/specs.ts'

/** Extras that a plan may have: each on its own, and all of them. */
const EXTRAS: readonly Partial<Spec>[] = [
  {},
  { lid: { kind: 'inset', handle: 'notch' } },
  { lid: { kind: 'overlapping', handle: 'strip' } },
  { bottom: { on: 'cleats' } },
  { bottom: { on: 'feet', drain: { diameter: inches(3, 8), spacing: inches(4) } } },
  { cord: { face: 'side', width: inches(1), height: inches(1) } },
  { front: { height: inches(10) } },
]

/** A plan, or a fault of the test where it cannot be built. */
export function planOf(changes: Partial<Spec>): Plan {
  const plan = planSurround({ ...plain, ...changes })
  if (plan.status === 'impossible') throw new Error(`no plan: ${JSON.stringify(plan.obstacle)}`)
  return plan
}

/** Every corner with every kind of brace, with and without grooves, with each extra. */
export const grid: readonly (readonly [name: string, plan: Plan])[] = CORNERS.flatMap((corner) =>
  (['none', 'ends', 'sides', 'all'] as const).flatMap((braces) =>
    [0, 3].flatMap((grooves) =>
      EXTRAS.map((extra): [string, Plan] => [
        `${corner}, braces ${braces}, grooves ${grooves}, ${Object.keys(extra).join() || 'no extras'}`,
        planOf({ corner, braces, grooves, ...extra }),
      ]),
    ),
  ),
)

/** A board 3 1/2 in wide, and 2 in that are safe at the fence. */
export const SAW = { board: inches(7, 2), safe: inches(2) } as const

export const stepsOf = (changes: Partial<Spec> = {}, saw: { board?: Length; safe: Length } = SAW) =>
  buildSteps(planOf(changes), saw)
