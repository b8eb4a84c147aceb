import { type Group, groupParts, type ListedPart, type NoStock, SHARE } from '../core/cutting/job.ts'
import type { LengthLayout, SheetLayout } from '../core/cutting/problem.ts'
import type { Context } from './context.ts'
import { asListed, cutListSchema, type Listed, partsOfPlan } from './cutList.ts'
import { planned } from './plannedSurround.ts'
import { Refusal } from './refusal.ts'
import { type ShopStock, sawTerms, shopStockSchema, usualStock } from './shopStock.ts'

/** One group of parts, laid out. */
export type LaidGroup =
  | Laid<Extract<Group, { kind: 'sheet' }>, SheetLayout>
  | Laid<Exclude<Group, { kind: 'sheet' }>, LengthLayout>

interface Laid<G extends Group, Layout> {
  readonly group: G
  readonly layouts: readonly Layout[]
  /** Sheets or boards taken, those on hand among them. */
  readonly pieces: number
  /** No layout takes fewer, or costs less, than this; proven. In the unit of `value`. */
  readonly lowerBound: number
  /** What the search made least: cents where every price is known, else material. */
  readonly value: number
  readonly optimal: boolean
}

/** The channel's whole cut list, laid out. */
export interface LaidJob {
  readonly parts: readonly Listed[]
  readonly stock: ShopStock | undefined
  readonly groups: readonly LaidGroup[]
  /** Labels of stock that nobody listed: the usual sheets and boards of the region. */
  readonly assumed: readonly string[]
  readonly milliseconds: number
}

/** The parts to cut: the channel's list, else those of its plan. Throws a Refusal when there is neither. */
export async function partsToCut(context: Context): Promise<readonly Listed[]> {
  const list = await context.ofChannel('cutlist', cutListSchema).read()
  if (list && list.parts.length > 0) return list.parts
  if (context.project) return partsOfPlan(planned(context.project.choices, context).plan)
  throw new Refusal(
    'invalid',
    'there is nothing to cut yet; add parts with "cutlist add 24in x 12in count=4", or start a project',
  )
}

/** Lays out the channel's cut list on its stock. Throws a Refusal that names the part where one cannot be cut. */
export async function layOut(context: Context, seconds: number): Promise<LaidJob> {
  const parts = await partsToCut(context)
  const stock = await context.ofChannel('stock', shopStockSchema).read()
  const saw = sawTerms(stock, context)
  const listed = asListed(parts)
  const first = groupParts(listed, stock?.items ?? [], saw)
  const usual = first.flatMap((group) => (group.kind === 'noStock' ? usualFor(group, context) : []))
  const groups = groupParts(listed, [...(stock?.items ?? []), ...usual], saw)
  const each = Math.max(0.2, seconds / groups.length)
  const laid = await Promise.all(groups.map((group) => layGroup(group, context, each)))
  return {
    parts,
    stock,
    groups: laid.map(({ result }) => result),
    assumed: [...new Set(usual.map(({ label }) => label))],
    milliseconds: laid.reduce((sum, { milliseconds }) => sum + milliseconds, 0),
  }
}

function usualFor(group: NoStock, context: Context) {
  const usual = usualStock(group.parts, context)
  if (usual.length > 0) return usual
  const [first] = group.parts as readonly ListedPart[]
  const what = group.from === 'sheet' ? 'sheet' : 'board'
  throw new Refusal(
    'invalid',
    `no ${what} on the stock list suits part ${first?.label}; add one, such as: ${what === 'sheet' ? 'stock add 4ft x 8ft sheet=1/2 ply' : 'stock add 2x4x8'}`,
  )
}

async function layGroup(group: Group | NoStock, { search, request, signal }: Context, seconds: number) {
  if (group.kind === 'noStock') throw new RangeError('every group has stock by now')
  const { platform, workspace, channel } = request.place
  const terms = { channel: `${platform} ${workspace} ${channel}`, seconds, signal }
  if (group.kind === 'sheet') {
    const { outcome, milliseconds } = await search.cutSheets(group.problem, terms)
    if (outcome.status === 'impossible') throw new Refusal('invalid', outcome.reason)
    const { layouts, pieces, lowerBound, cost, status } = outcome
    return {
      milliseconds,
      result: { group, layouts, pieces, lowerBound, value: cost, optimal: status === 'optimal' },
    }
  }
  const { outcome, milliseconds } = await search.cutLengths(group.problem, terms)
  if (outcome.status === 'impossible') throw new Refusal('invalid', outcome.reason)
  const { layouts, lowerBound, cost, status } = outcome
  const unit = group.priced ? SHARE : 1
  const result = {
    group,
    layouts,
    pieces: boardsTaken(group, layouts),
    lowerBound: lowerBound / unit,
    value: cost / unit,
    optimal: status === 'optimal',
  }
  return { milliseconds, result }
}

/** Strips come out of whole boards. */
function boardsTaken(
  { perBoard }: Exclude<Group, { kind: 'sheet' }>,
  layouts: readonly LengthLayout[],
): number {
  const strips = new Map<string, number>()
  for (const { stock, count } of layouts) strips.set(stock, (strips.get(stock) ?? 0) + count)
  return [...strips].reduce((sum, [id, count]) => sum + Math.ceil(count / (perBoard.get(id) ?? 1)), 0)
}
