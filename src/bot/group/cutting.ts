import { z } from 'zod'
import { groupParts as groupsOf, type ListedPart, type StockItem } from '../../core/cutting/job.ts'
import { kitLabel, type MergedPart, mergeParts } from '../../core/group/mergeParts.ts'
import { defineAction } from '../command.ts'
import type { Context } from '../context.ts'
import { asListed } from '../cutList.ts'
import { counted } from '../cutListReply.ts'
import { isSheets, type LaidJob } from '../laidJob.ts'
import { layoutFigures } from '../layoutFigures.ts'
import { layOutJob, searchTerms, type Terms } from '../layoutJob.ts'
import { jobNotes, layoutAnswer, takeTable } from '../layoutReply.ts'
import { layoutTables } from '../layoutTables.ts'
import { PartMisfit } from '../misfit.ts'
import { count, length } from '../option.ts'
import { Refusal } from '../refusal.ts'
import { cutOrderReply } from '../sawnJob.ts'
import { type ShopStock, sawTerms, shopStockSchema, usualStock } from '../shopStock.ts'
import { current, type Group, groupOf } from './group.ts'
import { groupFigures } from './groupReply.ts'
import { asCutList, kitsOf, mergedList, problemLines, type WorkedKit, workKits } from './kits.ts'
import { piecesFile } from './whosePieces.ts'

/** The stock of the channel with what members bring. */
export interface PooledStock {
  readonly items: readonly StockItem[]
  readonly saw: ReturnType<typeof sawTerms>
  readonly currency: string | undefined
  /** The stock list of the channel as it would be with what is brought. */
  readonly stock: ShopStock
}

/** The channel's own stock list, and under labels of their own what members bring, which costs nothing. */
export async function pooledStock(group: Group, context: Context): Promise<PooledStock> {
  const stock: ShopStock | undefined = await context.ofChannel('stock', shopStockSchema).read()
  const own = stock?.items ?? []
  const taken = new Set(own.map(({ label }) => label.toLowerCase()))
  const brought = group.brought.map(({ item }) =>
    taken.has(item.label.toLowerCase()) ? { ...item, label: `${item.label}*` } : item,
  )
  const items = [...own, ...brought]
  return { items, saw: sawTerms(stock, context), currency: stock?.currency, stock: { ...stock, items } }
}

/** A group worked out: who builds what, and the list of all. */
export interface GroupParts {
  readonly group: Group
  readonly worked: readonly WorkedKit[]
  readonly merged: readonly MergedPart[]
}

/** The group of the channel with its list. Throws a Refusal where there is nothing to cut. */
export async function groupParts(context: Context): Promise<GroupParts> {
  const group = current(await groupOf(context).read())
  const worked = workKits(group, context)
  const merged = mergedList(group, worked)
  if (merged.length === 0)
    throw new Refusal(
      'invalid',
      'nobody has joined with a kit that can be built, so there is nothing to cut yet',
    )
  return { group, worked, merged }
}

/** All kits on the pooled stock and what the shop sells. */
export async function layOutGroup(
  { group, merged }: GroupParts,
  { items, saw }: PooledStock,
  searching: { readonly context: Context; readonly seconds: number; readonly terms: Terms },
): Promise<LaidJob> {
  const list = listOf(group, merged)
  const listed = asListed(list.parts)
  const bought = groupsOf(listed, items, saw).flatMap((each) =>
    each.kind !== 'noStock' && each.stock.every(({ onHand }) => onHand !== undefined)
      ? usualStock(partsIn(each.problem.parts, listed), saw.kerf, searching.context)
      : [],
  )
  const taken = new Set(items.map(({ label }) => label))
  // What is brought or left over is seldom enough for everybody; the rest is bought as if there were none.
  const more = bought.filter(({ label }) => !taken.has(label))
  const job = await layOutJob({ list, items: [...items, ...more], saw }, searching)
  return { ...job, assumed: [...new Set([...job.assumed, ...more.map(({ label }) => label)])] }
}

const partsIn = (ids: readonly { readonly id: string }[], listed: readonly ListedPart[]) =>
  listed.filter(({ label }) => ids.some(({ id }) => id === label))

const listOf = (group: Group, merged: readonly MergedPart[]) => ({
  parts: [...asCutList(merged)],
  ...(group.units && { units: group.units }),
})

/** Many kits are worth two seconds more than one box, and still answer within five. */
const MORE_SECONDS = 2

/** Seconds that the layout of a group is searched for. */
export const searchSeconds = ({ settings }: Context): number => settings.search.seconds + MORE_SECONDS

/** Of the time for an answer, what one question of how many kits are complete may take, in seconds. */
const PROBE = 0.25

/** How many kits, first come first served, can be cut from what is on hand; and the part that the next one lacks. */
export interface Complete {
  readonly kits: number
  readonly limiting: MergedPart | undefined
  /** False where a longer search may find room for one more. */
  readonly proven: boolean
}

export async function completeKits(
  { group, worked, merged }: GroupParts,
  { items, saw }: PooledStock,
  context: Context,
  terms: Terms,
): Promise<Complete> {
  const kits = kitsOf(worked)
  const onHand = items.filter((item) => item.onHand !== undefined)
  const lacks = async (number: number): Promise<{ part: MergedPart; proven: boolean } | undefined> => {
    const first = mergeParts(kits.slice(0, number))
    try {
      await layOutJob(
        { list: listOf(group, first), items: onHand, saw, only: true },
        { context, seconds: PROBE, terms },
      )
      return undefined
    } catch (error) {
      if (!(error instanceof PartMisfit)) throw error
      const part = first.find(({ label }) => label === error.part)
      if (!part) throw error
      return { part, proven: error.proven }
    }
  }
  let least = 0
  let most = kits.length
  let lacking: { part: MergedPart; proven: boolean } | undefined
  while (least < most) {
    const middle = Math.ceil((least + most) / 2)
    const found = await lacks(middle)
    if (found) {
      most = middle - 1
      lacking = found
    } else least = middle
  }
  // A list of the first kits has labels of its own; people look for the part in the list of all.
  const limiting = lacking && merged.find((part) => isSame(part, lacking.part))
  return { kits: least, limiting, proven: lacking?.proven ?? true }
}

export const layout = defineAction({
  summary: 'Sheets and boards for all kits together, and which kits are complete with what is on hand',
  options: z.strictObject({ seconds: count('how long to look for better', 1, 6).optional() }),
  run: async ({ seconds }, context) => {
    const parts = await groupParts(context)
    const stock = await pooledStock(parts.group, context)
    const terms = searchTerms(context)
    const searching = { context, seconds: seconds ?? searchSeconds(context), terms }
    const job = await layOutGroup(parts, stock, searching)
    const complete = await completeKits(parts, stock, context, terms)
    return {
      answer: layoutAnswer(job, stock.currency),
      cautions: context.cautions({ sheetCut: job.groups.some(isSheets), crosscut: true }),
      tables: [...takeTable(job), ...layoutTables(job)],
      notes: [
        completeLine(complete, parts),
        ...problemLines(parts.worked),
        ...jobNotes(job),
        'whose each piece of a sheet or board is stands in the file',
      ],
      files: [piecesFile(job, parts.merged)],
      buttons: [
        { label: 'Cut order', line: 'group order' },
        { label: 'Cost', line: 'group money' },
      ],
      figures: {
        ...layoutFigures(job),
        ...groupFigures(parts.group, parts.worked, parts.merged),
        completeKits: complete.kits,
        limitingPart: complete.limiting?.label ?? null,
      },
      audience: 'channel' as const,
    }
  },
})

export const order = defineAction({
  summary: 'The saw settings for all kits, each used once for every part that shares it',
  options: z.strictObject({
    safe: length('narrowest piece you leave between blade and fence', '2in').optional(),
  }),
  run: async ({ safe }, context) => {
    const parts = await groupParts(context)
    const stock = await pooledStock(parts.group, context)
    const terms = searchTerms(context)
    const job = await layOutGroup(parts, stock, { context, seconds: searchSeconds(context), terms })
    const reply = await cutOrderReply(job, context, terms, safe)
    return {
      ...reply,
      notes: [...problemLines(parts.worked), ...(reply.notes ?? [])],
      figures: { ...groupFigures(parts.group, parts.worked, parts.merged), ...reply.figures },
      audience: 'channel' as const,
    }
  },
})

function completeLine({ kits, limiting, proven }: Complete, { worked }: GroupParts): string {
  const all = worked.filter((kit) => kit.worked)
  const next = all[kits]
  if (!next) return 'what is on hand is enough for every kit'
  const lacks = limiting ? `${limiting.names.join(', ')} (${limiting.label})` : 'some part'
  return `complete with what is on hand, first come first served: ${kits === 0 ? 'no kit' : counted(kits, 'kit')}${proven ? '' : ' at least'}; ${kitLabel(next.member.kit)} lacks ${lacks}`
}

const isSame = (a: MergedPart, b: MergedPart): boolean =>
  a.from === b.from &&
  a.length === b.length &&
  a.width === b.width &&
  a.thickness === b.thickness &&
  a.material === b.material &&
  a.later === b.later
