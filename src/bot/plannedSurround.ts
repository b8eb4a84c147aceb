import type { Facts } from '../core/checks/cautionFacts.ts'
import { type Length, MILLIMETRE, nanometres } from '../core/measure/length.ts'
import { type Plan, planSurround } from '../core/plan.ts'
import { completePlan } from './completePlan.ts'
import type { Context } from './context.ts'
import { holdLines } from './holdLines.ts'
import { idleChoices } from './idleChoices.ts'
import { type CutPart, joinParts, type Sold } from './joinLines.ts'
import { obstacleSentence, warningLine } from './obstacleWords.ts'
import type { PlanChoices } from './planChoices.ts'
import { Refusal } from './refusal.ts'
import { sheetsFor } from './shopStock.ts'

/** A surround worked out, with what to say about it in one line each. */
export interface Planned {
  readonly plan: Plan
  /** The parts to cut: those of the plan, and of a panel that no sheet gives whole its pieces. */
  readonly cut: readonly CutPart[]
  /** Parts that are joined, a line each; they stand among the warnings too. */
  readonly joins: readonly string[]
  /** What to look out for. */
  readonly warnings: readonly string[]
  /** What nobody said, and what was taken in its place. */
  readonly assumptions: readonly string[]
  /** Options that go for nothing, a line each; they stand among the assumptions too. */
  readonly idle: readonly string[]
}

/** More room on each side than this is a slip of the unit: 1 m. */
const MOST_CLEARANCE = nanometres(1000 * MILLIMETRE)

/** Works out the surround that was chosen. Throws a Refusal that says what would do where it cannot be built. */
export function planned(choices: PlanChoices, context: Context): Planned {
  // A request that must not be answered with numbers is turned away before anything else is asked of the person.
  context.cautions(objectFacts(choices))
  const { spec, assumptions } = completePlan(choices, context)
  if (spec.lid && (choices.open === 'top' || choices.open === 'both'))
    throw new Refusal(
      'invalid',
      `open=${choices.open} keeps the top open round what gets hot or breathes: leave the lid out (lid=none)`,
    )
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
  const idle = idleChoices(choices, spec)
  const joined = joinParts(plan, soldFor(plan, choices, context), context.show)
  return {
    plan,
    cut: joined.parts,
    joins: joined.lines,
    warnings: [...openLines(choices), ...warnings, ...joined.lines, ...holdLines(plan, context)],
    assumptions: [...assumptions, ...idle],
    idle,
  }
}

/** What the parts come out of: sheets as the layout takes them, and boards as they are sold in the region of the plan. */
function soldFor({ spec }: Plan, { region }: PlanChoices, context: Context): Sold {
  const { reference, settled } = context
  const lengths = reference.stock.lengths.filter((row) => row.region === (region ?? settled.region))
  return {
    sheets: sheetsFor(spec.sheet, context),
    longestBoard: Math.max(...lengths.map(({ length }) => length)) as Length,
  }
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
