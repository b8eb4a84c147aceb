import type { SawStep } from '../core/cutting/order/cutOrder.ts'
import type { Length } from '../core/measure/length.ts'
import type { Plan } from '../core/plan.ts'
import type { FinishedParts, SheetSetting } from '../core/steps/sheetSteps.ts'
import type { Context } from './context.ts'
import { cutListOf, type Listed, partsOfPlan } from './cutList.ts'
import type { CutPart } from './joinLines.ts'
import { isSheets, type LaidJob } from './laidJob.ts'
import { layOut, searchTerms } from './layoutJob.ts'
import type { Planned } from './plannedSurround.ts'
import { Refusal } from './refusal.ts'
import { orderOf } from './sawnJob.ts'

/** How the panels of the channel's plan come out of their sheets. */
export interface PlanSheets {
  /** The saw settings in order, as `cutorder` has them; undefined where there are none for these panels alone. */
  readonly settings: readonly SheetSetting[] | undefined
  /** Why there are none, a line; undefined where there are. */
  readonly instead: string | undefined
}

/**
 * The saw settings of the plan's panels, so that who follows the steps needs no more sheets than were bought. `laid` is
 * the layout of the channel's cut list where it is at hand.
 */
export async function sheetsOfPlan(
  { cut, plan }: Planned,
  context: Context,
  laid?: LaidJob,
): Promise<PlanSheets> {
  const own = await cutListOf(context).read()
  const listed = own && panelsOf(own.parts)
  if (listed && !panelsOf(partsOfPlan({ parts: cut })).every((panel) => listed.includes(panel)))
    return without('the cut list of this channel has other panels: cut its sheets as "cutorder" says')
  const terms = searchTerms(context)
  try {
    const job = laid ?? (await layOut(context, context.settings.search.seconds, terms))
    const orders = await Promise.all(
      job.groups.filter(isSheets).map((group) => orderOf(group, job, context, terms)),
    )
    const steps = orders.flatMap((order) => order.steps)
    return { settings: steps.map((step) => settingOf(step, plan, cut)), instead: undefined }
  } catch (error) {
    // Parts that nothing gives are no reason not to say the rest; a search that is busy is, for it would say otherwise.
    if (!(error instanceof Refusal && error.kind === 'invalid')) throw error
    return without(`"layout" lays out no sheets for this plan yet (${error.message})`)
  }
}

const without = (instead: string): PlanSheets => ({ settings: undefined, instead })

/** The panels of a list, each as a text. */
const panelsOf = (parts: readonly Listed[]): readonly string[] =>
  parts
    .filter(({ from }) => from === 'sheet')
    .map(({ label, count, length, width, thickness }) =>
      JSON.stringify([label, count, length, width, thickness]),
    )

function settingOf({ kind, setting, cuts }: SawStep, plan: Plan, cut: readonly CutPart[]): SheetSetting {
  const finished = new Map<string, number>()
  for (const label of cuts.flatMap(({ parts }) => parts)) finished.set(label, (finished.get(label) ?? 0) + 1)
  return {
    kind,
    length: setting as Length,
    cuts: cuts.length,
    parts: [...finished].map(
      ([label, count]): FinishedParts => ({ label, count, whole: wholeOf(label, plan, cut) }),
    ),
    narrow: cuts.some(({ narrow }) => narrow !== undefined),
  }
}

/** The pieces of a part that is joined from two bear its label and a letter; what else the list holds is no part of the plan. */
const wholeOf = (label: string, { parts }: Plan, cut: readonly CutPart[]): string =>
  cut.some((piece) => piece.label === label) && !parts.some((part) => part.label === label)
    ? label.slice(0, -1)
    : label
