import type { Facts } from '../core/checks/cautionFacts.ts'
import { inches, MILLIMETRE, minus, nanometres, ZERO } from '../core/measure/length.ts'
import { type Part, type Plan, planSurround } from '../core/plan.ts'
import type { CornerWarning } from '../core/panelling/cornerWarning.ts'
import type { SurroundObstacle } from '../core/panelling/surroundObstacle.ts'
import type { Region } from '../core/stock/stock.ts'
import { completePlan } from './completePlan.ts'
import type { Context } from './context.ts'
import type { PlanChoices } from './planChoices.ts'
import { Refusal } from './refusal.ts'
import type { Show } from './show.ts'

/** A surround worked out, with what to say about it in one line each. */
export interface Planned {
  readonly plan: Plan
  /** What to look out for. */
  readonly warnings: readonly string[]
  /** What nobody said, and what was taken in its place. */
  readonly assumptions: readonly string[]
}

/** More room on each side than this is a slip of the unit: 1 m. */
const MOST_CLEARANCE = nanometres(1000 * MILLIMETRE)

/** Works out the surround that was chosen. Throws a Refusal that says what would do where it cannot be built. */
export function planned(choices: PlanChoices, context: Context): Planned {
  // A request that must not be answered with numbers is turned away before anything else is asked of the person.
  context.cautions(objectFacts(choices))
  const { spec, assumptions } = completePlan(choices, context)
  if (spec.clearance > MOST_CLEARANCE) {
    const { show } = context
    throw new Refusal(
      'invalid',
      `clearance ${show.length(spec.clearance)} on each side is no surround; give ${show.length(MOST_CLEARANCE, 'into')} or less, such as clearance=${show.units === 'inch' ? '1/2in' : '12mm'}`,
    )
  }
  const plan = planSurround(spec)
  if (plan.status === 'impossible')
    throw new Refusal('invalid', obstacleSentence(plan.obstacle, context.show))
  const warnings = plan.warnings.map((warning) => warningLine(warning, context.show))
  return {
    plan,
    warnings: [...openLines(choices), ...warnings, ...tooLongLines(plan, choices, context)],
    assumptions,
  }
}

/** Parts that no sheet or board on sale gives in one piece. */
function tooLongLines(plan: Plan, choices: PlanChoices, { reference, settled }: Context): readonly string[] {
  const { sizes, lengths } = reference.stock
  const sold = <Row extends { readonly region: Region }>(rows: readonly Row[]) =>
    rows.filter(({ region }) => region === (choices.region ?? settled.region))
  const longest = Math.max(...sold(lengths).map(({ length }) => length))
  const fits = ({ material, length, width }: Part): boolean =>
    material === 'strip'
      ? length <= longest
      : sold(sizes).some(
          (sheet) => Math.max(length, width) <= sheet.length && Math.min(length, width) <= sheet.width,
        )
  return plan.parts
    .filter((part) => !fits(part))
    .map(
      ({ label, name, material }) =>
        `${label} is larger than any ${material === 'sheet' ? 'sheet' : 'board'} sold here: join each ${name} from two, with the joint on a batten`,
    )
}

/** What stays open is said with every answer, for the parts are those of a closed box. */
const openLines = ({ open = 'none' }: PlanChoices): readonly string[] =>
  open === 'none' ? [] : [`${OPEN[open]} (open=${open})`]

const OPEN: Readonly<Record<'top' | 'sides' | 'both', string>> = {
  top: 'the top stays open: no lid',
  sides: 'the sides stay open: fill the frames with slats or a grille, not with solid panels',
  both: 'top and sides stay open: no lid, and slats or a grille in the frames, not solid panels',
}

/** What is known of the thing inside before any number is worked out. */
export const objectFacts = (choices: PlanChoices): Facts => ({
  object: choices.objectWords?.join(' '),
  open: choices.open ?? 'none',
})

/** A strip thinner than this is no frame, so it is never advised: 1/8 in. */
const THINNEST_STRIP = inches(1, 8)

/** Why a surround cannot be built, and what would do. */
export function obstacleSentence(obstacle: SurroundObstacle, show: Show): string {
  switch (obstacle.kind) {
    case 'notPositive':
    case 'negative':
      return `the ${obstacle.what} comes out as ${typeof obstacle.value === 'number' && obstacle.value <= 0 ? 'nothing or less' : 'too small'}; give a larger one`
    case 'noLip': {
      const wider = `strips wider than ${show.length(obstacle.widthAbove, 'cover', true)} (width= or board=)`
      const thinner =
        obstacle.stripBelow > THINNEST_STRIP
          ? `strips thinner than ${show.length(obstacle.stripBelow, 'into', true)} (strip=), or `
          : ''
      const short = minus(ZERO, obstacle.lip)
      const reach = short === 0 ? 'only just reach' : `end ${show.length(short, 'mark', true)} short of`
      return `no captured corner: the corner stiles would ${reach} the side panels. Use ${thinner}${wider}, or corner=cleated`
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
