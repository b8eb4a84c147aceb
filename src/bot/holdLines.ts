import { inches, type Length, millimetres, plus } from '../core/measure/length.ts'
import { type Plan, planSurround, type Spec } from '../core/plan.ts'
import type { NoFastening } from '../core/quantities/fastener.ts'
import type { Context } from './context.ts'
import { fastenPlan } from './planFasteners.ts'
import type { Show } from './show.ts'
import { stockMark, stockSize } from './stockSize.ts'
import { chooseWood } from './wood.ts'

type Loose = NoFastening & { readonly part: string }

/** What keeps the corners of a plan from being screwed together with anything on sale, and what would do; mostly nothing. */
export function holdLines(plan: Plan, context: Context): readonly string[] {
  const [loose] = looseIn(plan, context)
  if (!loose) return []
  const { show } = context
  const { spec } = plan
  if (loose.part === 'corner bracket') {
    const sheet = leastThat('sheet', spec, context)
    const thicker = sheet === undefined ? '' : `, or take sheet of ${stockSize(sheet, show)} (sheet=)`
    return [
      `no screw bites enough behind the corner brackets without coming through: bolt them through with nuts and washers${thicker}`,
    ]
  }
  const strip = leastThat('strip', spec, context)
  const thicker = strip === undefined ? '' : `; take strip=${stockMark(strip, show)}${show.unit} or more`
  return [
    `no screw holds corner blocks ${stockSize(spec.strip, show)} thick, they would split${thicker}${strip === undefined ? '; take' : ', or'} another corner=`,
  ]
}

/** Joints that are to come apart by screws and that no screw holds. */
function looseIn(plan: Plan, context: Context): readonly Loose[] {
  const { wood } = chooseWood(undefined, context)
  const terms = { kind: undefined, wood, region: context.settled.region }
  return fastenPlan(plan, terms, context.reference).flatMap((each) =>
    'obstacle' in each && each.joint.fixing === 'screwed'
      ? [{ ...each.obstacle, part: each.joint.part }]
      : [],
  )
}

/** Thicker stock than this is not looked for. */
const MOST = inches(1, 1)

/** The least thickness of sheet or strip above that of the plan, in steps of 1/8 in or 1 mm, with which screws hold. */
function leastThat(of: 'sheet' | 'strip', spec: Spec, context: Context): Length | undefined {
  const step = stepOf(context.show)
  const first = (Math.floor(spec[of] / step) + 1) * step
  for (let thickness = first as Length; thickness <= MOST; thickness = plus(thickness, step)) {
    const tried = planSurround({ ...spec, [of]: thickness })
    if (tried.status === 'planned' && looseIn(tried, context).length === 0) return thickness
  }
  return undefined
}

const stepOf = ({ units }: Show): Length => (units === 'inch' ? inches(1, 8) : millimetres(1))
