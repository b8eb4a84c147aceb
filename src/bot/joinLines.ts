import { type Length, ZERO } from '../core/measure/length.ts'
import type { Part, Plan } from '../core/plan.ts'
import { joinPanel, type PanelJoin, type SheetSize } from '../core/panelling/panelJoin.ts'
import type { Show } from './show.ts'

/** What is sold where the wood is bought. */
export interface Sold {
  readonly sheets: readonly SheetSize[]
  readonly longestBoard: Length
}

/** Parts that no sheet or board on sale gives in one piece, and where each is joined, one line each. */
export function joinLines(plan: Plan, { sheets, longestBoard }: Sold, show: Show): readonly string[] {
  return plan.parts.flatMap((part) => {
    const { label, name, material, length } = part
    if (material === 'strip')
      return length <= longestBoard
        ? []
        : [
            `${label} is larger than any board sold here: join each ${name} from two, with the joint on a batten`,
          ]
    const join = joinPanel({ ...part, ...coverOf(part, plan) }, sheets)
    if (join.status === 'whole') return []
    const large = `${label} is larger than any sheet sold here`
    return join.status !== 'joined'
      ? [`${large}, and than two of them: join each ${name} from more pieces, every joint on a batten`]
      : [`${large}: join each ${name} from two pieces, ${placeWords(join, show)}`]
  })
}

/** What the frame covers of a panel; lid and bottom have none. */
function coverOf({ name }: Part, { faces, spec }: Plan): { readonly stile: Length; readonly rail: Length } {
  const face = faces.find((each) => name === `${each.name} panel`)
  if (!face) return { stile: ZERO, rail: ZERO }
  // Past the slots of halved corners no strip lies over the join.
  const stile = spec.corner === 'halved' ? ZERO : (Math.min(face.covered, spec.width) as Length)
  return { stile, rail: spec.width }
}

function placeWords({ way, at, behind }: PanelJoin, show: Show): string {
  const where = way === 'level' ? `${show.length(at, 'mark')} up` : `${show.length(at, 'mark')} from one end`
  if (behind === 'rail') return `${where}, behind the middle of the top rail`
  if (behind === 'stile') return `${where}, behind the middle of a stile`
  return `${where}, on a batten added behind it, for no rail or stile is there`
}
