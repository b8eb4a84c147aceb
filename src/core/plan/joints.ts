import { type Length, minus } from '../measure/length.ts'
import type { Face } from '../panelling/face.ts'
import type { PartName, Plan } from '../plan.ts'
import type { Hardware } from './hardware.ts'
import { blockFoot } from './interior.ts'

/** Places where `part` lies on `onto` for good or by screws, `count` in the whole box, each `length` by `width`. */
export interface Joint {
  readonly part: PartName | Hardware['name']
  readonly onto: PartName
  readonly count: number
  readonly length: Length
  readonly width: Length
  /** Glued and nailed for good, or screwed so that it comes apart. */
  readonly fixing: 'glued' | 'screwed'
  /** Screws in each where it comes with holes; else as many as the length asks for. */
  readonly holes?: number
}

/**
 * Every joint of a plan with its contact area: frames and braces on their panels, what closes the corners, and the strips of lid
 * and bottom. Left out are the ends of stiles against rails, end grain that holds little, and whatever lies loose so that the
 * box comes apart.
 */
export function layJoints(plan: Plan): readonly Joint[] {
  return [
    ...frameJoints(plan),
    ...CORNERS[plan.spec.corner](plan),
    ...plan.faces.flatMap((face) => braceJoints(plan, face)),
    ...lidJoints(plan),
    ...bottomJoints(plan),
  ].filter(({ count }) => count > 0)
}

/** The sides and, where it differs, the front: in pairs of stiles and rails. */
const sidesOf = ({ faces: [, ...sides] }: Plan): readonly Face[] => sides

const isFront = ({ name }: Face): boolean => name === 'front'

/** How much of a stile or a rail lies on its own panel: a captured or overhanging one in part, a halved one all over. */
const held = ({ spec }: Plan, { covered }: Face): Length => Math.min(covered, spec.width) as Length

const railLength = (face: Face): Length => Math.min(face.panel, face.shows) as Length

function frameJoints(plan: Plan): readonly Joint[] {
  const { spec, endStileLength, faces } = plan
  return [
    glued('end rail', 'end panel', 4, railLength(faces[0]), spec.width),
    ...sidesOf(plan).map((face) =>
      glued(railOf(face), panelOf(face), 2 * face.count, railLength(face), spec.width),
    ),
    glued('end stile', 'end panel', 4, endStileLength, held(plan, faces[0])),
  ]
}

const CORNERS: Readonly<Record<Plan['spec']['corner'], (plan: Plan) => readonly Joint[]>> = {
  /** The corner stile is fixed to the edge of the end panel and to the edge of its frame, flush with it. */
  captured: (plan) =>
    sidesOf(plan).flatMap((face) => [
      glued(stileOf(plan, face), 'end panel', 2 * face.count, stileLength(plan, face), plan.spec.sheet),
      glued(stileOf(plan, face), 'end stile', 2 * face.count, stileLength(plan, face), plan.spec.strip),
    ]),
  cleated: (plan) => [
    ...sideStiles(plan),
    ...sidesOf(plan).flatMap((face) => [
      glued(blockOf(face), panelOf(face), 2 * face.count, blockLength(plan, face), plan.spec.width),
      screwed(blockOf(face), 'end panel', 2 * face.count, blockLength(plan, face), plan.spec.strip),
    ]),
  ],
  butted: (plan) => [...sideStiles(plan), ...sidesOf(plan).flatMap((face) => buttedJoints(plan, face))],
  halved: sideStiles,
  /** Two brackets in each corner, a leg of each on either panel, two screws in a leg; no wider than the rail behind. */
  bracketed: (plan) => [
    ...sideStiles(plan),
    ...sidesOf(plan).flatMap((face) =>
      [panelOf(face), 'end panel' as const].map((on) => ({
        ...screwed('corner bracket', on, 4 * face.count, plan.spec.width, plan.spec.width),
        holes: 2,
      })),
    ),
  ],
}

function sideStiles(plan: Plan): readonly Joint[] {
  return sidesOf(plan).map((face) =>
    glued(stileOf(plan, face), panelOf(face), 2 * face.count, stileLength(plan, face), held(plan, face)),
  )
}

/** All that meets where a side is glued between the ends for good. */
function buttedJoints(plan: Plan, face: Face): readonly Joint[] {
  const { spec } = plan
  const [panel, rail, stile] = [panelOf(face), railOf(face), stileOf(plan, face)]
  return [
    glued(panel, 'end panel', 2 * face.count, face.height, spec.sheet),
    glued(rail, 'end panel', 4 * face.count, spec.width, spec.sheet),
    glued(stile, 'end panel', 2 * face.count, stileLength(plan, face), spec.sheet),
    // The end frame runs past the side frame: its rails meet level ones, above a lower front they meet nothing.
    ...endRailsOn(plan, face),
    ...endStileOn(plan, face),
  ]
}

/** Where two spans of height lie side by side, and for how long. */
const beside = (a: readonly [number, number], b: readonly [number, number]): Length =>
  Math.max(0, Math.min(a[1], b[1]) - Math.max(a[0], b[0])) as Length

interface Spans {
  readonly rails: readonly (readonly [number, number])[]
  readonly stile: readonly [number, number]
}

/** The heights of the rails and of the stile between them. */
const spansOf = (height: Length, { width }: Plan['spec']): Spans => ({
  rails: [
    [0, width],
    [height - width, height],
  ],
  stile: [width, height - width],
})

function endRailsOn(plan: Plan, face: Face): readonly Joint[] {
  const { spec } = plan
  const [end, side] = [spansOf(spec.height, spec), spansOf(face.height, spec)]
  return end.rails
    .flatMap((rail) => [
      ...side.rails.map((other) => onto('end rail', railOf(face), beside(rail, other), face, spec.strip)),
      onto('end rail', stileOf(plan, face), beside(rail, side.stile), face, spec.strip),
    ])
    .reduce(merge, [])
    .filter(({ length }) => length > 0)
}

function endStileOn(plan: Plan, face: Face): readonly Joint[] {
  const { spec } = plan
  const [end, side] = [spansOf(spec.height, spec), spansOf(face.height, spec)]
  return [
    onto('end stile', stileOf(plan, face), beside(end.stile, side.stile), face, spec.strip),
    ...side.rails.map((rail) => onto('end stile', railOf(face), beside(end.stile, rail), face, spec.strip)),
  ].filter(({ length }) => length > 0)
}

const onto = (part: PartName, other: PartName, length: Length, face: Face, width: Length): Joint =>
  glued(part, other, 2 * face.count, length, width)

/** Like joints are counted together. */
function merge(joints: readonly Joint[], joint: Joint): readonly Joint[] {
  const same = joints.find((each) => each.onto === joint.onto && each.length === joint.length)
  return same
    ? joints.map((each) => (each === same ? { ...each, count: each.count + joint.count } : each))
    : [...joints, joint]
}

/** The area under a brace is its long edge by its width, whatever its ends. */
const braceJoints = ({ spec }: Plan, { name, count, brace }: Face): readonly Joint[] =>
  brace ? [glued(`${name} brace`, `${name} panel`, count, brace.edge, spec.width)] : []

/** Ledgers on the walls; a rim and a handle by their edges under and on the lid. */
function lidJoints(plan: Plan): readonly Joint[] {
  const { spec, lid } = plan
  if (!lid) return []
  const { ledgers, rim, handle } = lid
  return [
    ...(ledgers
      ? [
          ...sidesOf(plan).map((face) =>
            glued(
              isFront(face) ? 'front ledger' : 'side ledger',
              panelOf(face),
              face.count,
              ledgers.side,
              spec.width,
            ),
          ),
          glued('end ledger', 'end panel', 2, ledgers.end, spec.width),
        ]
      : []),
    ...(rim
      ? [
          glued('lid rim', 'cover panel', 2, rim.long, spec.strip),
          glued('lid rim end', 'cover panel', 2, rim.short, spec.strip),
        ]
      : []),
    ...(handle === undefined
      ? []
      : [glued('handle', rim ? 'cover panel' : 'lid panel', 1, handle, spec.strip)]),
  ]
}

/** Cleats on the walls, or feet under the bottom, which itself lies loose. */
function bottomJoints(plan: Plan): readonly Joint[] {
  const { spec, bottom } = plan
  if (bottom?.cleats) {
    const { side, end } = bottom.cleats
    return [
      ...sidesOf(plan).map((face) =>
        glued(isFront(face) ? 'front cleat' : 'side cleat', panelOf(face), face.count, side, spec.width),
      ),
      glued('end cleat', 'end panel', 2, end, spec.width),
    ]
  }
  if (!bottom?.feet) return []
  return [glued('foot', 'bottom panel', bottom.feet.starts.length, bottom.feet.length, spec.width)]
}

const panelOf = ({ name }: Face): PartName => `${name} panel`
const railOf = ({ name }: Face): PartName => `${name} rail`
const blockOf = (face: Face): PartName => (isFront(face) ? 'front block' : 'corner block')

const stileOf = ({ spec }: Plan, face: Face): PartName => {
  if (isFront(face)) return 'front stile'
  return spec.corner === 'captured' ? 'corner stile' : 'side stile'
}

/** Rails, fits and blocks take the same off a lower front as off the box. */
const stileLength = ({ cornerStileLength, panelHeight }: Plan, face: Face): Length =>
  minus(cornerStileLength, minus(panelHeight, face.height))

const blockLength = ({ spec }: Plan, face: Face): Length => minus(face.height, spec.width, blockFoot(spec))

const glued = (part: PartName, on: PartName, count: number, length: Length, width: Length): Joint => ({
  part,
  onto: on,
  count,
  length,
  width,
  fixing: 'glued',
})

const screwed = (part: Joint['part'], on: PartName, count: number, length: Length, width: Length): Joint => ({
  part,
  onto: on,
  count,
  length,
  width,
  fixing: 'screwed',
})
