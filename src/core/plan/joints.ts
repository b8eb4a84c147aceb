import type { Length } from '../measure/length.ts'
import type { Face } from '../panelling/face.ts'
import type { PartName, Plan } from '../plan.ts'

/** Places where `part` lies on `onto` for good or by screws, `count` in the whole box, each `length` by `width`. */
export interface Joint {
  readonly part: PartName
  readonly onto: PartName
  readonly count: number
  readonly length: Length
  readonly width: Length
  /** Glued and nailed for good, or screwed so that it comes apart. */
  readonly fixing: 'glued' | 'screwed'
}

/**
 * Every joint of a plan with its contact area: frames and braces on their panels, and what closes the corners. Left out are
 * the ends of stiles against rails, end grain that holds little, and whatever lies loose so that the box comes apart.
 */
export function layJoints(plan: Plan): readonly Joint[] {
  return [
    ...frameJoints(plan),
    ...CORNERS[plan.spec.corner](plan),
    ...plan.faces.flatMap((face) => braceJoints(plan, face)),
  ]
}

function frameJoints({
  spec,
  endPanelLength,
  sidePanelLength,
  endStileLength,
  faces: [end],
}: Plan): readonly Joint[] {
  return [
    glued('end rail', 'end panel', 4, endPanelLength, spec.width),
    glued('side rail', 'side panel', 4, sidePanelLength, spec.width),
    glued('end stile', 'end panel', 4, endStileLength, end.covered),
  ]
}

const CORNERS: Readonly<Record<Plan['spec']['corner'], (plan: Plan) => readonly Joint[]>> = {
  /** The corner stile is fixed to the edge of the end panel and to the edge of its frame, flush with it. */
  captured: ({ spec, cornerStileLength }) => [
    glued('corner stile', 'end panel', 4, cornerStileLength, spec.sheet),
    glued('corner stile', 'end stile', 4, cornerStileLength, spec.strip),
  ],
  cleated: ({ spec, endStileLength, cornerStileLength, faces: [, side] }) => [
    glued('side stile', 'side panel', 4, cornerStileLength, side.covered),
    glued('corner block', 'side panel', 4, endStileLength, spec.width),
    { ...glued('corner block', 'end panel', 4, endStileLength, spec.strip), fixing: 'screwed' },
  ],
  butted: ({ spec, panelHeight, cornerStileLength, endStileLength, faces: [, side] }) => [
    glued('side stile', 'side panel', 4, cornerStileLength, side.covered),
    glued('side panel', 'end panel', 4, panelHeight, spec.sheet),
    glued('side rail', 'end panel', 8, spec.width, spec.sheet),
    glued('side stile', 'end panel', 4, cornerStileLength, spec.sheet),
    glued('end rail', 'side rail', 8, spec.width, spec.strip),
    glued('end stile', 'side stile', 4, endStileLength, spec.strip),
  ],
}

/** The area under a brace is its long edge by its width, whatever its ends. */
const braceJoints = ({ spec }: Plan, { name, brace }: Face): readonly Joint[] =>
  brace ? [glued(`${name} brace`, `${name} panel`, 2, brace.edge, spec.width)] : []

const glued = (part: PartName, onto: PartName, count: number, length: Length, width: Length): Joint => ({
  part,
  onto,
  count,
  length,
  width,
  fixing: 'glued',
})
