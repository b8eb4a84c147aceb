import { z } from 'zod'
import { defineCommand, type Idle } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import {
  boxFigures,
  drilledNotes,
  fasteningFigures,
  fasteningNotes,
  furtherPurchases,
  noFastening,
  obstacleWords,
  purchaseAnswer,
  purchases,
} from '../src/bot/fastenerWords.ts'
import { holdLines } from '../src/bot/holdLines.ts'
import { choice, count, first, length, species, weight, yes } from '../src/bot/option.ts'
import { type FastenedJoint, fastenPlan } from '../src/bot/planFasteners.ts'
import { planned } from '../src/bot/plannedSurround.ts'
import { Refusal } from '../src/bot/refusal.ts'
import type { Cell, Reply } from '../src/bot/reply.ts'
import type { Show } from '../src/bot/show.ts'
import { chooseWood } from '../src/bot/wood.ts'
import type { Facts } from '../src/core/checks/cautionFacts.ts'
import { FOOT, type Length, millimetres, plus, toMillimetres } from '../src/core/measure/length.ts'
import type { Hardware } from '../src/core/plan/hardware.ts'
import { fastenJoint } from '../src/core/quantities/fastener.ts'
import { INTO } from '../src/core/quantities/fastenerBite.ts'
import { FASTENER_KINDS } from '../src/core/quantities/fastenerSize.ts'

const options = z.strictObject({
  held: first(length('thickness of the piece that the head sits in', '3/4in')).optional(),
  receiver: length('how deep the other piece is in the direction of driving', '1 1/2in').optional(),
  kind: choice('what is driven', FASTENER_KINDS).optional(),
  into: choice('into the face, the edge of a sheet, or the end grain of a board', INTO).optional(),
  wood: species('the wood that it goes into').optional(),
  length: length('length of the joint', '24in').optional(),
  width: length('the narrower piece, across the fastener', '1 1/2in').optional(),
  joints: count('how many joints like it', 1, 500).optional(),
  glued: yes('glue holds the joint, and the fastener only clamps it').optional(),
  load: weight('what pulls the joint straight apart, in all', '20kg').optional(),
})
type Asked = z.output<typeof options>

const OF_ONE = (['into', 'length', 'width', 'joints', 'glued', 'load'] as const).map(
  (option): Idle<Asked> => ({
    option,
    what: 'one joint',
    how: 'write its thicknesses, such as 3/4in receiver=1 1/2in',
    isUsed: ({ input }) => input.held !== undefined,
  }),
)

export default defineCommand({
  name: 'fasteners',
  summary: 'Brads, nails or screws that hold and never come through, their holes, and how many boxes',
  examples: [
    'fasteners 3/4in receiver=1 1/2in kind=screw wood=pine length=30in',
    'fasteners 1/2in receiver=15/32in kind=brad glued=yes length=15in joints=8',
    'fasteners 18mm receiver=38mm kind=nail length=600mm',
  ],
  options,
  idle: [
    ...OF_ONE,
    {
      option: 'wood',
      what: 'what a face holds',
      how: 'into=face',
      isUsed: ({ input: { into, kind, glued } }) =>
        into !== 'edge' && !(into === 'end' && (kind ?? (glued ? 'brad' : 'screw')) === 'brad'),
    },
  ],
  run: (input, context) => {
    const { held, receiver } = input
    if (held === undefined && receiver === undefined && context.project) return fastenThePlan(input, context)
    if (held === undefined)
      throw new Refusal(
        'invalid',
        'how thick is the piece that the head sits in? Write it first, such as 3/4in',
      )
    if (receiver === undefined)
      throw new Refusal('invalid', 'how thick is the piece that takes the point? Add receiver=1 1/2in')
    return fastenOne({ ...input, held, receiver }, context)
  },
})

function fastenOne(input: Asked & { held: Length; receiver: Length }, context: Context): Reply {
  const { show, settled, reference } = context
  const { held, receiver, into = 'face', glued = false, width, joints = 1 } = input
  const kind = input.kind ?? (glued ? 'brad' : 'screw')
  const { wood, notes } = chooseWood(input.wood, context)
  const jointLength = input.length ?? (show.units === 'inch' ? FOOT : millimetres(300))
  const fastening = fastenJoint(
    {
      kind,
      region: settled.region,
      held,
      receiver,
      into,
      glued,
      width,
      jointLength,
      load: ((input.load?.grams ?? 0) / 1000) * 9.80665,
      // The formulas are for side grain, which the edge of a sheet is not.
      wood: into === 'edge' ? undefined : wood,
    },
    reference.fasteners,
  )
  if (fastening.status === 'impossible') throw noFastening(fastening, kind, show)
  const total = fastening.row.count * joints
  const bought = purchases([[fastening.size, total]])
  return {
    answer: purchaseAnswer(bought, show),
    cautions: context.cautions(
      kind === 'brad' ? bradFacts([[fastening.size.length, plus(held, receiver)]]) : {},
    ),
    notes: [
      ...fasteningNotes(fastening, into, wood.name, show),
      ...(input.length ? [] : [`for a joint ${show.length(jointLength)} long (length=)`]),
      ...(input.kind ? [] : [`${kind}s (kind=)`]),
      ...(into === 'face' ? notes : []),
      'a tenth to spare is in the boxes',
    ],
    figures: {
      ...fasteningFigures(fastening),
      count: total,
      perJoint: fastening.row.count,
      boxes: boxFigures(bought),
      name: fastening.size.name,
      grip: fastening.grip,
      tipShort: toMillimetres(fastening.tipShort),
    },
  }
}

type Fastened = Extract<FastenedJoint, { drive: unknown }>
type Bare = Extract<FastenedJoint, { obstacle: unknown }>

/** What no fastener does for; glue needs none. */
function bareLine({ kind, joint, obstacle }: Bare, show: Show): string {
  const none = `no ${kind} for ${joint.part} on ${joint.onto}`
  // What would do in place of screws that have to come out again is said of the plan.
  if (joint.fixing === 'screwed' && kind === 'screw') return none
  const glue = joint.fixing === 'glued' ? '; else glue and clamps alone' : ''
  return `${none}: ${obstacleWords(obstacle, kind, show)}${glue}`
}

/** Joints that were to come apart and that are driven with what stays in, one line. */
function lastingLines(driven: readonly Fastened[]): readonly string[] {
  const [found] = driven.filter(({ joint, kind }) => joint.fixing === 'screwed' && kind !== 'screw')
  if (!found) return []
  return [`${found.kind}s stay in: corners held so do not come apart again`]
}

const hardwareWords = ({ name, count }: Hardware): string => `${count} ${name}${count === 1 ? '' : 's'}`

function fastenThePlan(input: Asked, context: Context): Reply {
  const { show, settled, reference, project } = context
  const { plan } = planned(project?.choices ?? {}, context)
  const { wood, notes } = chooseWood(input.wood, context)
  const joints = fastenPlan(plan, { kind: input.kind, wood, region: settled.region }, reference)
  const driven = joints.filter((joint): joint is Fastened => 'drive' in joint)
  const bare = joints.flatMap((each) => ('obstacle' in each ? [bareLine(each, show)] : []))
  const [main] = driven
  if (!main) throw new Refusal('invalid', bare[0] ?? 'nothing is fastened here')
  const bought = purchases(
    driven.map(({ joint, fastening }) => [fastening.size, joint.count * fastening.row.count]),
  )
  const brads = driven.filter(({ kind }) => kind === 'brad')
  return {
    answer: [purchaseAnswer(bought, show), ...plan.hardware.map(hardwareWords)].join(' + '),
    cautions: context.cautions(
      bradFacts(
        brads.map(({ fastening, drive }) => [fastening.size.length, plus(drive.held, drive.receiver)]),
      ),
    ),
    tables: [
      {
        title: `Joints: how many, in each, length (${show.unit})`,
        columns: ['No', 'Each', 'Long', 'Joint'],
        rows: driven.map(({ joint, fastening }): Cell[] => [
          joint.count,
          fastening.row.count,
          { length: fastening.size.length, fine: true },
          `${joint.part} on ${joint.onto}`,
        ]),
      },
    ],
    notes: [
      ...furtherPurchases(bought, show),
      ...bare,
      ...holdLines(plan, context),
      ...lastingLines(driven),
      ...throughLines(driven),
      ...fasteningNotes(main.fastening, main.drive.into, wood.name, show).slice(0, 1),
      ...drilledNotes(
        driven.map(({ fastening, drive: { into, receives } }) => ({ fastening, into, receives })),
        wood.name,
        show,
      ),
      ...notes,
      'a tenth to spare is in the boxes',
    ],
    figures: {
      ...fasteningFigures(main.fastening),
      count: driven.reduce((sum, { joint, fastening }) => sum + joint.count * fastening.row.count, 0),
      boxes: boxFigures(bought),
      hardware: plan.hardware.map((each) => ({ ...each })),
      joints: driven.map(({ joint, fastening, drive, kind }) => ({
        ...fasteningFigures(fastening),
        part: joint.part,
        onto: joint.onto,
        kind,
        name: fastening.size.name,
        count: joint.count * fastening.row.count,
        perJoint: fastening.row.count,
        tipShort: toMillimetres(fastening.tipShort),
        through: drive.through,
      })),
    },
  }
}

/** Where the driver stands, said once for all the joints that are driven alike. */
function throughLines(driven: readonly Fastened[]): readonly string[] {
  const ways = new Map<string, string[]>()
  for (const { joint, drive } of driven)
    ways.set(drive.through, [...(ways.get(drive.through) ?? []), joint.part])
  return [...ways].map(([way, parts]) => `${[...new Set(parts)].join(', ')}: through the ${way}`)
}

/** The brad that leaves the least behind its tip, of pairs of its length and all that it passes through; none without brads. */
function bradFacts(brads: readonly (readonly [brad: Length, stack: Length])[]): Facts {
  const [worst] = brads.toSorted(([a, under], [b, over]) => under - a - (over - b))
  if (!worst) return {}
  return { brads: true, bradLength: toMillimetres(worst[0]), stackThickness: toMillimetres(worst[1]) }
}
