import type { Facts } from '../core/checks/cautionFacts.ts'
import { type Plan, planSurround } from '../core/plan.ts'
import type { CornerWarning } from '../core/panelling/cornerWarning.ts'
import type { SurroundObstacle } from '../core/panelling/surroundObstacle.ts'
import { completePlan } from './completePlan.ts'
import type { Context } from './context.ts'
import type { PlanChoices } from './planChoices.ts'
import { Refusal } from './refusal.ts'
import type { Show } from './show.ts'

/** A surround worked out, with everything to say about it in one line each. */
export interface Planned {
  readonly plan: Plan
  readonly notes: readonly string[]
}

/** Works out the surround that was chosen. Throws a Refusal that says what would do where it cannot be built. */
export function planned(choices: PlanChoices, context: Context): Planned {
  // A request that must not be answered with numbers is turned away before anything else is asked of the person.
  context.cautions(objectFacts(choices))
  const { spec, assumptions } = completePlan(choices, context)
  const plan = planSurround(spec)
  if (plan.status === 'impossible')
    throw new Refusal('invalid', obstacleSentence(plan.obstacle, context.show))
  return {
    plan,
    notes: [...plan.warnings.map((warning) => warningLine(warning, context.show)), ...assumptions],
  }
}

/** What is known of the thing inside before any number is worked out. */
export const objectFacts = (choices: PlanChoices): Facts => ({
  object: choices.objectWords?.join(' '),
  open: choices.open ?? 'none',
})

/** Why a surround cannot be built, and what would do. */
export function obstacleSentence(obstacle: SurroundObstacle, show: Show): string {
  switch (obstacle.kind) {
    case 'notPositive':
    case 'negative':
      return `the ${obstacle.what} comes out as ${typeof obstacle.value === 'number' && obstacle.value <= 0 ? 'nothing or less' : 'too small'}; give a larger one`
    case 'noLip': {
      const wider = `strips wider than ${show.length(obstacle.widthAbove, 'cover')} (width= or board=)`
      const thinner =
        obstacle.stripBelow > 0
          ? `strips thinner than ${show.length(obstacle.stripBelow, 'into')} (strip=), or `
          : ''
      return `no captured corner: the corner stile would not reach over the side panel (lip ${show.length(obstacle.lip)}). Use ${thinner}${wider}, or corner=cleated`
    }
    case 'noHold':
      return `the stiles of the ${obstacle.face} face would hang past their own panel; use strips wider than ${show.length(obstacle.widthAbove, 'cover')} (width= or board=)`
    case 'tooLow':
      return `height ${show.length(obstacle.height)} leaves no stile between the two rails; it takes more than ${show.length(obstacle.heightAbove, 'cover')}, or narrower strips (width=)`
    case 'tooNarrow':
      return `the ${obstacle.face} face shows ${show.length(obstacle.shows)}, and its two stiles take all of that; it takes more than ${show.length(obstacle.showsAbove, 'cover')}, or narrower strips (width=)`
    case 'noRoomForBlocks':
      return `two corner blocks would meet inside; the inside ${obstacle.along} has to be at least ${show.length(obstacle.inside, 'cover')}, or use corner=captured`
    case 'noRoomForBrace':
      return `no brace fits the ${obstacle.face} face: it takes strips narrower than ${show.length(obstacle.widthBelow, 'into')} (width=), or braces=none`
  }
}

function warningLine(warning: CornerWarning, show: Show): string {
  switch (warning.kind) {
    case 'lipSmall':
      return `lip only ${show.length(warning.lip, 'mark', true)}: under ${show.length(warning.least)} it soon splits; wider or thinner strips help`
    case 'noFit':
      return 'no gap at the corner stiles: after paint or in damp weather the sides will not go in; allow some (fit=)'
    case 'blockMeetsObject':
      return `the corner blocks stand where the object is; allow ${show.length(warning.clearanceAtLeast, 'cover')} on each side (clearance=)`
  }
}
