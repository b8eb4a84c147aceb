import type { Length } from '../core/measure/length.ts'
import type { Plan } from '../core/plan.ts'
import type { RippedBoards } from '../core/steps/strips.ts'
import type { Context } from './context.ts'
import { cutListOf, partsOfPlan } from './cutList.ts'
import { isSheets, type LaidJob } from './laidJob.ts'
import { layOutOnStock, searchTerms } from './layoutJob.ts'
import { isNear } from './plannedStrips.ts'
import { Refusal } from './refusal.ts'
import { type Rips, ripsOf } from './ripTable.ts'

/** The boards that the strips of the channel's plan are ripped from. */
export interface PlanBoards {
  /** Each kind of board with its fence settings, as a layout takes them; none where there is no layout. */
  readonly rips: readonly Rips[]
  /** Why there is no layout; undefined where there is one. */
  readonly refused: string | undefined
}

/**
 * What everybody asks who names a board or a rip fence of the channel's plan, so that who buys by one command and rips by
 * another cuts right: the boards that `layout` takes, from the very search. Those of the plan's own strips where the
 * channel's cut list has none like them. `laid` is that layout where it is at hand.
 */
export async function boardsOfPlan(plan: Plan, context: Context, laid?: LaidJob): Promise<PlanBoards> {
  const known = laid ? ripsOfPlan(plan, laid, context.settled.kerf) : []
  if (known.length > 0) return { rips: known, refused: undefined }
  const searching = {
    context,
    seconds: context.settings.search.seconds,
    terms: searchTerms(context),
    withoutSheets: true,
  }
  const own = await cutListOf(context).read()
  const lists = [...(own && own.parts.length > 0 ? [own] : []), { parts: [...partsOfPlan(plan)] }]
  let refused: string | undefined
  for (const list of lists) {
    try {
      const rips = ripsOfPlan(plan, await layOutOnStock(list, searching), context.settled.kerf)
      if (rips.length > 0) return { rips, refused: undefined }
    } catch (error) {
      // Parts that no board gives are no reason not to say the rest; a search that is busy is, for it would say otherwise.
      if (!(error instanceof Refusal && error.kind === 'invalid')) throw error
      refused = error.message
    }
  }
  return { rips: [], refused }
}

/** The rips of those groups of a layout that are strips like those of the plan. */
const ripsOfPlan = ({ spec }: Plan, { groups }: LaidJob, kerf: Length): readonly Rips[] =>
  groups
    .filter(
      (laid) =>
        !isSheets(laid) && isNear(laid.group.thickness, spec.strip) && isNear(laid.group.width, spec.width),
    )
    .flatMap((laid) => ripsOf(laid, kerf))

/** The fences of each kind of board, as the steps of a build set them. */
export const fencesOf = ({ rips }: PlanBoards): readonly RippedBoards[] | undefined =>
  rips.length === 0
    ? undefined
    : rips.map(({ label, steps }) => ({ label, fences: steps.map(({ setting }) => setting) }))

/** `2 of 2x6 8 ft and 1 of S3`: boards by what the layout calls them. */
export const boardWords = (rips: readonly Rips[]): string =>
  rips.map(({ label, boards }) => `${boards} of ${label}`).join(' and ')
