import { z } from 'zod'
import { defineCommand } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { adhesive, area, count, first, size, species, temperature } from '../src/bot/option.ts'
import { planned } from '../src/bot/plannedSurround.ts'
import { Refusal } from '../src/bot/refusal.ts'
import { listed } from '../src/bot/suggest.ts'
import { chooseWood } from '../src/bot/wood.ts'
import type { Length } from '../src/core/measure/length.ts'
import { showHours, showTemperature } from '../src/core/measure/showAir.ts'
import { showForce, showPressure } from '../src/core/measure/showWeight.ts'
import { layJoints } from '../src/core/plan/joints.ts'
import { gluedArea, glueNeeded, type GluedJoint } from '../src/core/quantities/glue.ts'
import { type ClampPlan, planClamps } from '../src/core/quantities/glueClamps.ts'
import { glueHardness } from '../src/core/quantities/glueHardness.ts'
import type { Adhesive } from '../src/core/quantities/glueProduct.ts'
import { glueTimes, type GlueTimes } from '../src/core/quantities/glueTimes.ts'

const options = z.strictObject({
  area: first(area('the area that is glued, or the sides of one joint', '2 sq ft')).optional(),
  joint: size('length and width of one joint, for its clamps', '24in x 1 1/2in').optional(),
  count: count('how many joints like it', 1, 500).optional(),
  product: adhesive('what is spread').optional(),
  temperature: temperature('of the shop, the wood and the glue').optional(),
  wood: species('what is pressed together, for the clamps').optional(),
})
type Asked = z.output<typeof options>

export default defineCommand({
  name: 'glue',
  summary: 'How much glue to buy, how long to clamp at your temperature, and how many clamps',
  examples: [
    'glue joint=24in x 1 1/2in count=8 temperature=55F',
    'glue 0.5m2 product=waterproof glue temperature=18C',
    'glue 3 sq ft',
  ],
  options,
  idle: [
    {
      option: 'count',
      what: 'an area or a joint, so many times',
      how: 'joint= without an area, or an area alone',
      isUsed: ({ input }) => (input.area === undefined) !== (input.joint === undefined),
    },
    {
      option: 'wood',
      what: 'clamps',
      how: 'joint=',
      isUsed: ({ input }) => input.joint !== undefined || input.area === undefined,
    },
  ],
  run: (input, context) => {
    const { show, reference, settled } = context
    const product = input.product ?? reference.glue.adhesives[0]
    if (!product) throw new Refusal('fault', 'the settings know no glue; add one to config/adhesives.yaml')
    const degrees = input.temperature?.celsius ?? reference.seasons.temperature
    const times = timesAt(product, degrees, context)
    const { glued, longest, ofPlan } = whatIsGlued(input, context)
    const need = glueNeeded(glued, product, settled.region, reference.glue)
    const { wood, notes } = chooseWood(input.wood, context)
    const clamps =
      longest && planClamps(longest.length, longest.width, glueHardness(wood), reference.glue.clamping)
    const bottles = need.bottles.map(({ name, count: bought }) => `${bought} x ${name}`).join(' + ')
    return {
      answer: `Clamp ${showHours(times.clamp)} at ${showTemperature(degrees, show.units)}, full strength after ${showHours(times.full)}; buy ${bottles} of ${product.name}`,
      cautions: context.cautions({ glue: true, temperature: input.temperature?.celsius }),
      notes: [
        `${show.volume(need.volume)} on ${show.area(glued)}, one face of each joint: ${Math.round(need.waste * 100)} % waste added, a film ${Math.round(need.film)} µm wet`,
        `close each joint within ${showHours(times.open.low)} of spreading; a joint that pulls stays clamped until full strength`,
        ...(times.slower > 1.005 ? [`${times.slower.toFixed(1)} times as slow as in a warm shop`] : []),
        ...(clamps && longest ? [clampNote(longest.length, clamps, context)] : []),
        ...(clamps ? notes : []),
        ...(product.waterproof ? [] : [`${product.name} is for dry places (product=waterproof glue)`]),
        ...(ofPlan ? ["the glued joints of this channel's project"] : []),
        ...(input.temperature ? [] : [`reckoned at ${showTemperature(degrees, show.units)} (temperature=)`]),
        ...(input.product ? [] : [`reckoned with ${product.name} (product=)`]),
      ],
      figures: {
        area: glued,
        volume: need.volume,
        clampMinutes: times.clamp * 60,
        fullHours: times.full,
        openMinutes: times.open.low * 60,
        bottles: need.bottles.map((bottle) => ({ ...bottle })),
        product: product.name,
        clamps: clamps ? { ...clamps.count } : null,
        pressure: clamps ? { ...clamps.pressure } : null,
        force: clamps ? { ...clamps.force } : null,
      },
    }
  },
})

/** Throws a Refusal where the glue does not set, with what would do: more warmth, or a glue that sets. */
function timesAt(product: Adhesive, degrees: number, { show, reference }: Context): GlueTimes {
  const times = glueTimes(product, degrees, reference.glue.timing)
  if (times.status === 'timed') return times
  const others = reference.glue.adhesives.filter(({ lowest }) => lowest <= degrees).map(({ name }) => name)
  const instead = others.length > 0 ? `, or use ${listed(others, 'or')} (product=)` : ''
  throw new Refusal(
    'invalid',
    `${product.name} does not hold at ${showTemperature(degrees, show.units)}: it dries to chalk below ${showTemperature(times.lowest, show.units)}. Warm wood, glue and room past that until full strength${instead}`,
  )
}

interface Glued {
  /** mm2 */
  readonly glued: number
  /** The joint that takes the most clamps. */
  readonly longest: GluedJoint | undefined
  readonly ofPlan: boolean
}

function whatIsGlued({ area: typed, joint, count: joints = 1 }: Asked, context: Context): Glued {
  const [length, width, third] = joint?.lengths ?? []
  if (joint && (joint.round || length === undefined || width === undefined || third !== undefined))
    throw new Refusal('invalid', 'a joint has a length and a width; write joint=24in x 1 1/2in')
  const one =
    length !== undefined && width !== undefined ? { count: joints, ...sides(length, width) } : undefined
  if (typed) return { glued: typed.area * (one ? 1 : joints), longest: one, ofPlan: false }
  if (one) return { glued: gluedArea([one]), longest: one, ofPlan: false }
  if (!context.project)
    throw new Refusal(
      'invalid',
      'what is glued? Write its area, such as 2 sq ft, or joint=24in x 1 1/2in, or start a project in this channel',
    )
  const { plan } = planned(context.project.choices, context)
  const lying = layJoints(plan).filter(({ fixing }) => fixing === 'glued')
  const [longest] = lying.toSorted((a, b) => b.length - a.length || b.width - a.width)
  return { glued: gluedArea(lying), longest, ofPlan: true }
}

const sides = (a: Length, b: Length) => (a >= b ? { length: a, width: b } : { length: b, width: a })

function clampNote(length: Length, { count: clamps, force, pressure }: ClampPlan, { show }: Context): string {
  const each = `${showForce(force.low, show.units)} to ${showForce(force.high, show.units)}`
  const some = clamps.low === clamps.high ? `${clamps.low}` : `${clamps.low} to ${clamps.high}`
  const long = `${show.mark(length)} ${show.unit}`
  return `${some} clamps on the longest joint, ${long}: ${showPressure(pressure.low, pressure.high, show.units)}, so ${each} from each of the fewest`
}
