import type { KitSteps } from '../../core/group/stations.ts'
import type { Step } from '../../core/steps/step.ts'
import type { Context } from '../context.ts'
import type { Planned } from '../plannedSurround.ts'
import { stepsOf } from '../stepsKept.ts'
import type { WorkedKit } from './kits.ts'

/** Steps of kits that were worked out before; a kit that is remembered keeps its steps. */
const remembered = new WeakMap<Planned, readonly Step[]>()

/** The steps of every kit that can be built. */
export const kitStepsOf = (worked: readonly WorkedKit[], context: Context): readonly KitSteps[] =>
  worked.flatMap(({ member, worked: kit, choices }) => {
    if (!kit) return []
    const steps = remembered.get(kit) ?? stepsOf(kit.plan, choices, context)
    remembered.set(kit, steps)
    return [{ kit: member.kit, steps }]
  })
