import type { Plan } from '../core/plan.ts'
import type { CornerScrew } from '../drawing/cornerFixings.ts'
import type { Context } from './context.ts'
import { fastenPlan } from './planFasteners.ts'
import { chooseWood } from './wood.ts'

/** What the corners at the front of a plan are screwed together with; undefined where nothing is screwed or no screw holds. */
export function cornerScrew(
  plan: Plan,
  context: Pick<Context, 'reference'> & { readonly settled: Pick<Context['settled'], 'region'> },
): CornerScrew | undefined {
  const { reference, settled } = context
  const { wood } = chooseWood(undefined, context)
  const found = fastenPlan(plan, { kind: undefined, wood, region: settled.region }, reference).findLast(
    ({ joint }) => joint.fixing === 'screwed',
  )
  if (!found || 'obstacle' in found) return undefined
  const { size, row } = found.fastening
  const { through, held } = found.drive
  return { name: size.name, length: size.length, diameter: size.diameter, through, held, count: row.count }
}
