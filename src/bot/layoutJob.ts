import { type Group, groupParts, type SawTerms, type StockItem } from '../core/cutting/job.ts'
import type { Context } from './context.ts'
import { asListed, type CutList, cutListOf, partsOfPlan } from './cutList.ts'
import type { LaidGroup, LaidJob } from './laidJob.ts'
import { misfitSentence, noStockSentence, PartMisfit } from './misfit.ts'
import { leaveOnHand, type OnHand, takeFrom } from './onHand.ts'
import type { PlanChoices } from './planChoices.ts'
import { planned } from './plannedSurround.ts'
import { Refusal } from './refusal.ts'
import { sawTerms, shopStockSchema, usualStock } from './shopStock.ts'
import type { Show } from './show.ts'
import { showKept } from './showKept.ts'

/** The parts to cut: the channel's list, else those of its plan. Throws a Refusal when there is neither. */
export async function partsToCut(context: Context): Promise<CutList> {
  const list = await cutListOf(context).read()
  if (list && list.parts.length > 0) return list
  if (context.project && !list) return planList(context.project.choices, context)
  throw new Refusal(
    'invalid',
    context.project
      ? 'the cut list is empty; add parts with "cutlist add 24in x 12in count=4", or take those of the plan with "cutlist plan"'
      : 'there is nothing to cut yet; add parts with "cutlist add 4x 24in x 12in", or start a project',
  )
}

/** The parts of a plan as a cut list, panels that no sheet gives whole as the pieces that they are joined from. */
export const planList = (choices: PlanChoices, context: Context): CutList => ({
  parts: [...partsOfPlan({ parts: planned(choices, context).cut })],
})

/** Seconds that are kept for the reply, of those that a command may take. */
const FOR_THE_REPLY = 1

/** What every layout and cut order of this request is asked for with; the time ends before the command's does. */
export const searchTerms = ({ request, signal, settings }: Context) => {
  const { platform, workspace, channel } = request.place
  const milliseconds = Math.max(100, (settings.commandSeconds - FOR_THE_REPLY) * 1000)
  return {
    channel: JSON.stringify([platform, workspace, channel]),
    signal: AbortSignal.any([signal, AbortSignal.timeout(milliseconds)]),
  }
}
export type Terms = ReturnType<typeof searchTerms>

/** A layout is not worth asking for with less. */
const LEAST_SECONDS = 0.2

/** Parts to lay out, and what they may be cut from. */
interface Job {
  readonly list: CutList
  readonly items: readonly StockItem[]
  readonly saw: SawTerms
  /** Cut from these items and nothing else, whatever the shop sells. */
  readonly only?: boolean
}

/**
 * Lays out the channel's cut list on its stock, one group of parts after the other, in `seconds` altogether. Throws a
 * Refusal that names the part where one cannot be cut.
 */
export async function layOut(context: Context, seconds: number, terms: Terms): Promise<LaidJob> {
  return layOutOnStock(await partsToCut(context), { context, seconds, terms })
}

/** Lays out `list` on the channel's stock. */
export async function layOutOnStock(list: CutList, searching: Searching): Promise<LaidJob> {
  const { context } = searching
  const stock = await context.ofChannel('stock', shopStockSchema).read()
  return layOutJob({ list, items: stock?.items ?? [], saw: sawTerms(stock, context) }, searching)
}

interface Searching {
  readonly context: Context
  readonly seconds: number
  readonly terms: Terms
  /** Boards and strips alone, laid out just as they are with the sheets. */
  readonly withoutSheets?: boolean
}

/** Lays out any list on any stock; what no item of it suits is cut from what the shop of the region usually sells. */
export async function layOutJob(
  { list, items, saw, only = false }: Job,
  { context, seconds, terms, withoutSheets = false }: Searching,
): Promise<LaidJob> {
  const { parts, units } = list
  const show = showKept(context, units)
  const assumed: string[] = []
  const found = groupParts(asListed(parts), items, saw)
  const wanted = withoutSheets ? found.filter((group) => !isOfSheets(group)) : found
  const groups = wanted.map((group): Group => {
    if (group.kind !== 'noStock') return group
    const usual = only ? [] : usualStock(group.parts, saw.kerf, context)
    const [again] = usual.length > 0 ? groupParts(group.parts, usual, saw) : []
    if (!again || again.kind === 'noStock')
      throw new PartMisfit({ part: group.parts[0]?.label ?? '', proven: true }, noStockSentence(group, show))
    assumed.push(...usual.map(({ label }) => label))
    return again
  })
  const laid = await layInTurn(groups, { seconds, shares: found.length }, { context, terms, show })
  const milliseconds = laid.reduce((sum, each) => sum + each.milliseconds, 0)
  return { parts, show, groups: laid, assumed: [...new Set(assumed)], milliseconds }
}

interface Asking {
  readonly context: Context
  readonly terms: Terms
  readonly show: Show
}

const isOfSheets = (group: ReturnType<typeof groupParts>[number]): boolean =>
  group.kind === 'sheet' || (group.kind === 'noStock' && group.from === 'sheet')

/** Time to lay groups out in, and by how many it is shared. */
interface Time {
  readonly seconds: number
  readonly shares: number
}

/**
 * What one group does not use of the time is the others'; so are the boards on hand that it leaves. Boards and strips come
 * before sheets, which have nothing in common with them and take the longest: so whoever asks for them alone asks for the
 * same in the same time, and is told the same.
 */
async function layInTurn(groups: readonly Group[], { seconds, shares }: Time, asking: Asking) {
  const laid = new Map<Group, LaidGroup>()
  const taken: OnHand = new Map()
  let left = seconds
  for (const group of groups.toSorted((a, b) => Number(isOfSheets(a)) - Number(isOfSheets(b)))) {
    const share = Math.max(LEAST_SECONDS, left / (shares - laid.size))
    const alone = await layGroup(group, share, asking)
    const remaining = leaveOnHand(alone, taken)
    const result = remaining ? await layOnRest(alone, remaining, share, asking) : alone
    takeFrom(result, taken)
    laid.set(group, result)
    left -= result.milliseconds / 1000
  }
  return groups.flatMap((group) => laid.get(group) ?? [])
}

/** The group on what earlier ones left on hand; what is proven is what holds with all of it. */
async function layOnRest(alone: LaidGroup, rest: Group, seconds: number, asking: Asking): Promise<LaidGroup> {
  const laid = await layGroup(rest, seconds, asking)
  const { lowerBound } = alone
  return {
    ...laid,
    lowerBound,
    optimal: laid.value <= lowerBound,
    milliseconds: alone.milliseconds + laid.milliseconds,
  }
}

async function layGroup(group: Group, seconds: number, { context, terms, show }: Asking): Promise<LaidGroup> {
  const timed = { ...terms, seconds }
  const { search } = context
  if (group.kind === 'sheet') {
    const { outcome, milliseconds } = await search.cutSheets(group.problem, timed)
    if (outcome.status === 'impossible') throw misfit(outcome, group, show)
    const { layouts, pieces, lowerBound, cost, status } = outcome
    return { group, layouts, pieces, lowerBound, value: cost, optimal: status === 'optimal', milliseconds }
  }
  const { outcome, milliseconds } =
    group.kind === 'strip'
      ? await search.cutStrips(group.problem, timed)
      : await search.cutLengths(group.problem, timed)
  if (outcome.status === 'impossible') throw misfit(outcome, group, show)
  const { layouts, pieces, lowerBound, cost, status } = outcome
  return { group, layouts, pieces, lowerBound, value: cost, optimal: status === 'optimal', milliseconds }
}

const misfit = (outcome: Parameters<typeof misfitSentence>[0], group: Group, show: Show): PartMisfit =>
  new PartMisfit(outcome, misfitSentence(outcome, group, show))
