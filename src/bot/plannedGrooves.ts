import type { Length } from '../core/measure/length.ts'
import type { Plan } from '../core/plan.ts'
import type { Face } from '../core/panelling/face.ts'
import { type GrooveObstacle, type Grooves, layGrooves } from '../core/panelling/grooves.ts'
import { Refusal } from './refusal.ts'

/** The grooves of both panels that show the same face, or why they cannot be cut. */
export interface GroovedPanel {
  readonly face: Face['name']
  readonly laid: Grooves | GrooveObstacle
}

/** What may be asked otherwise than the plan has it. */
export interface GrooveTerms {
  readonly count?: number | undefined
  readonly pitch?: Length | undefined
  readonly kerf: Length
  readonly thickness?: Length | undefined
  readonly stiles?: Length | undefined
}

/**
 * Grooves in the panels of a plan, side panels first: as many as each face has unless `count` or `pitch` says otherwise, none
 * where that is none; even over what shows between the stiles unless `stiles` does.
 */
export const panelGrooves = ({ faces, spec }: Plan, terms: GrooveTerms): readonly GroovedPanel[] => {
  const [end, ...sides] = faces
  return [...sides, end].flatMap((face) => {
    const count = terms.count ?? (terms.pitch === undefined ? face.grooves : undefined)
    if (count === 0) return []
    const laid = layGrooves({
      panel: face.panel,
      count,
      pitch: terms.pitch,
      kerf: terms.kerf,
      thickness: terms.thickness ?? spec.sheet,
      equalOver: 'between stiles',
      stile: terms.stiles ?? face.covered,
    })
    return [{ face: face.name, laid }]
  })
}

/** Throws a Refusal where the plan asks for more grooves than its panels take with this blade. */
export function refuseGrooves(plan: Plan, kerf: Length): void {
  for (const { face, laid } of panelGrooves(plan, { kerf })) {
    if (laid.status !== 'impossible') continue
    const grooves = plan.faces.find(({ name }) => name === face)?.grooves
    throw new Refusal('invalid', `${grooves} grooves in each ${face} panel: ${grooveSentence(laid)}`)
  }
}

/** Why there can be no such grooves, and what would do. */
export function grooveSentence(obstacle: GrooveObstacle): string {
  switch (obstacle.kind) {
    case 'meet':
      return `the grooves would run into each other or off the panel; ${obstacle.most} fit at most with this blade`
    case 'pitchTooWide':
      return 'not one groove fits at that pitch; make pitch= smaller, or give count=1'
    case 'notPositive':
      return 'the stiles leave nothing of the panel to groove; make stiles= smaller'
  }
}
