import { type Length, minus, plus, times } from '../measure/length.ts'
import type { Plan } from '../plan.ts'
import type { Into } from '../quantities/fastenerBite.ts'
import { areBracketsOnRails, BRACKET } from './hardware.ts'
import type { Joint } from './joints.ts'

/** One way to drive a fastener through a joint: which piece the head sits in, and what it meets behind. */
export interface Drive {
  /** In words, where the driver stands. */
  readonly through: string
  readonly held: Length
  /** How deep the piece behind is in the direction of driving. */
  readonly receiver: Length
  readonly into: Into
  /** What the piece behind is cut from. */
  readonly receives: 'sheet' | 'strip'
  /** Of the contact, across the fastener. */
  readonly width: Length
}

/**
 * The ways to drive a joint of a plan, the better-looking first: a strip on a panel is driven from behind, through the panel,
 * or else from its face. What meets an edge or an end is driven through the piece that lies over it.
 */
export function drives(joint: Joint, plan: Plan): readonly Drive[] {
  const { part, onto, width } = joint
  const { sheet, strip } = plan.spec
  const over = OVER[`${likeSide(part, plan)} on ${likeSide(onto, plan)}`]
  if (over) return [{ ...over(plan, joint), width }]
  return [
    { through: 'panel, from behind', held: sheet, receiver: strip, into: 'face', receives: 'strip', width },
    { through: 'strip, from its face', held: strip, receiver: sheet, into: 'face', receives: 'sheet', width },
  ]
}

/** A front is fastened as the side is. */
function likeSide(name: Joint['part'], { spec }: Plan): string {
  if (name === 'front block') return 'corner block'
  if (name === 'front stile') return spec.corner === 'captured' ? 'corner stile' : 'side stile'
  return name.replace(/^front /u, 'side ')
}

type EdgeDrive = Omit<Drive, 'width'>
type Over = (plan: Plan, joint: Joint) => EdgeDrive

/** A strip inside: the frame is on the other face of its panel. */
const fromInside =
  (what: string): Over =>
  ({ spec }) => ({
    through: `${what}, from inside`,
    held: spec.strip,
    receiver: spec.sheet,
    into: 'face',
    receives: 'sheet',
  })

/** Strips that stand on edge on the lid. */
const throughLid =
  (through: string): Over =>
  ({ spec }) => ({ through, held: spec.sheet, receiver: spec.width, into: 'face', receives: 'strip' })

/** Where brackets stand at the height of the rails, those are behind the panel. */
const throughBracket: Over = ({ spec }) => {
  const receiver = areBracketsOnRails(spec) ? plus(spec.sheet, spec.strip) : spec.sheet
  return { through: 'bracket, from inside', held: BRACKET, receiver, into: 'face', receives: 'sheet' }
}

/** Joints where one piece lies over the edge or the end of the other, and what is inside, with the frame behind its panel. */
const OVER: Readonly<Record<string, Over>> = {
  'corner stile on end panel': (plan) => throughStrip(plan, 'edge', plan.endPanelLength),
  'corner stile on end stile': (plan) => throughStrip(plan, 'face', plan.spec.width),
  'side rail on end panel': (plan) => throughStrip(plan, 'edge', plan.endPanelLength),
  'side stile on end panel': (plan) => throughStrip(plan, 'edge', plan.endPanelLength),
  'end rail on side rail': (plan) => throughStrip(plan, 'end', plan.sideRailLength),
  'end rail on side stile': (plan) => throughStrip(plan, 'face', plan.spec.width),
  'end stile on side stile': (plan) => throughStrip(plan, 'face', plan.spec.width),
  'end stile on side rail': (plan) => throughStrip(plan, 'end', plan.sideRailLength),
  'corner block on side panel': fromInside('block'),
  'side cleat on side panel': fromInside('cleat'),
  'end cleat on end panel': fromInside('cleat'),
  'side ledger on side panel': fromInside('ledger'),
  'end ledger on end panel': fromInside('ledger'),
  'lid rim on cover panel': throughLid('lid, from above'),
  'lid rim end on cover panel': throughLid('lid, from above'),
  'handle on lid panel': throughLid('lid, from below'),
  'handle on cover panel': throughLid('lid, from below'),
  'corner bracket on side panel': throughBracket,
  'corner bracket on end panel': throughBracket,
  'corner block on end panel': (plan) =>
    throughEnd(plan, times(plan.spec.strip, 0.5), 'face', plan.spec.width),
  'side panel on end panel': (plan) =>
    throughEnd(plan, times(plan.spec.sheet, -0.5), 'edge', plan.sidePanelLength),
}

const throughStrip = ({ spec }: Plan, into: Into, receiver: Length): EdgeDrive => ({
  through: 'strip that lies over',
  held: spec.strip,
  receiver,
  into,
  receives: into === 'edge' ? 'sheet' : 'strip',
})

/** Through the end panel, and through its stile where that covers the place, `inward` of the inside of the box. */
function throughEnd({ spec }: Plan, inward: Length, into: Into, receiver: Length): EdgeDrive {
  const { sheet, strip, width } = spec
  const receives = into === 'edge' ? 'sheet' : 'strip'
  return minus(width, plus(sheet, strip)) > inward
    ? { through: 'end stile and panel', held: plus(sheet, strip), receiver, into, receives }
    : { through: 'end panel', held: sheet, receiver, into, receives }
}
