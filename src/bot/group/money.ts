import { z } from 'zod'
import { kitLabel } from '../../core/group/mergeParts.ts'
import { shareCents } from '../../core/group/shareCents.ts'
import { showMoney } from '../../core/measure/money.ts'
import { defineAction } from '../command.ts'
import type { Context } from '../context.ts'
import type { LaidJob } from '../laidJob.ts'
import { searchTerms } from '../layoutJob.ts'
import { count, first, money as moneyOption } from '../option.ts'
import { Refusal } from '../refusal.ts'
import type { Cell, Reply } from '../reply.ts'
import { type GroupParts, groupParts, layOutGroup, pooledStock } from './cutting.ts'
import { current, type Group, groupOf, organisersOnly, withMember } from './group.ts'
import { groupFigures, namesOf } from './groupReply.ts'
import { kitsOf, problemLines } from './kits.ts'

/** What one kit costs, in whole cents. */
export interface KitCost {
  readonly kit: number
  readonly user: string
  /** Its part of the sheets and boards that are bought. */
  readonly wood: number
  /** Its part of what is bought for everybody. */
  readonly shared: number
  readonly paid: number
}

/** What all kits cost together, to the cent; and labels of stock that nobody has said a price of. */
export interface GroupCost {
  readonly kits: readonly KitCost[]
  readonly total: number
  readonly unpriced: readonly string[]
}

/**
 * Shares the cost of a layout: what each kind of stock costs by how much of it each kit has, and what is bought for all
 * evenly or by size. All kits together come to the total, to the cent; cents left over go as shareCents says, the lowest
 * kit number first. Spare parts and waste are paid by all in the same measure.
 */
export function shareCost({ group, worked, merged }: GroupParts, job: LaidJob): GroupCost {
  const kits = kitsOf(worked).map(({ number }) => number)
  const sizes = new Map(merged.map((part) => [part.label, part]))
  const areaIn = (labels: ReadonlySet<string>) => {
    const areas = new Map(kits.map((kit) => [kit, 0]))
    for (const label of labels)
      for (const { kit, count: many } of sizes.get(label)?.owners ?? []) {
        const { length = 0, width = 0 } = sizes.get(label) ?? {}
        areas.set(kit, (areas.get(kit) ?? 0) + (many * (length * width)) / 1e12)
      }
    return kits.map((kit) => areas.get(kit) ?? 0)
  }
  const labelsOf = (each: LaidJob['groups'][number]) => new Set(each.group.problem.parts.map(({ id }) => id))
  const priced = job.groups.filter((each) => each.group.priced)
  const wood = sumUp(
    priced.map((each) => shareCents(each.value, areaIn(labelsOf(each)))),
    kits.length,
  )
  const common = group.needs.reduce((sum, need) => sum + (need.cost ?? 0), 0)
  const size = areaIn(new Set(sizes.keys()))
  const shared =
    kits.length === 0 ? [] : shareCents(common, group.share === 'evenly' ? kits.map(() => 1) : size)
  const rows = kits.map((kit, index): KitCost => {
    const member = group.members.find((each) => each.kit === kit)
    return {
      kit,
      user: member?.user ?? '',
      wood: wood[index] ?? 0,
      shared: shared[index] ?? 0,
      paid: member?.paid ?? 0,
    }
  })
  return {
    kits: rows,
    total: rows.reduce((sum, row) => sum + row.wood + row.shared, 0),
    unpriced: job.groups
      .filter((each) => !each.group.priced)
      .flatMap((each) =>
        each.group.stock.filter(({ price }) => price === undefined).map(({ label }) => label),
      ),
  }
}

const sumUp = (lists: readonly (readonly number[])[], length: number): readonly number[] =>
  Array.from({ length }, (_, index) => lists.reduce((sum, list) => sum + (list[index] ?? 0), 0))

export const money = defineAction({
  summary: 'What it costs in all and each, who has paid, and what is still due',
  options: z.strictObject({}),
  run: async (_input, context) => moneyReply(context, ''),
})

export const paid = defineAction({
  summary: 'Mark what a member has paid, in all',
  options: z.strictObject({
    kit: first(count('the number of the kit', 1, 100_000)),
    amount: moneyOption('paid so far, in all', '20'),
  }),
  run: async ({ kit, amount }, context) => {
    await organisersOnly(context, 'marks what is paid')
    await groupOf(context).change((kept) => {
      const group = current(kept)
      if (!group.members.some((member) => member.kit === kit))
        throw new Refusal('invalid', `there is no ${kitLabel(kit)} in this group`)
      return withMember(group, kit, (member) => ({ ...member, paid: amount.cents }))
    })
    return moneyReply(context, `${kitLabel(kit)} has paid ${showMoney(amount.cents, amount.currency)}`)
  },
})

async function moneyReply(context: Context, said: string): Promise<Reply> {
  const parts = await groupParts(context)
  const stock = await pooledStock(parts.group, context)
  const job = await layOutGroup(parts, stock, {
    context,
    seconds: context.settings.search.seconds,
    terms: searchTerms(context),
  })
  const cost = shareCost(parts, job)
  const names = await namesOf(
    cost.kits.map(({ user }) => user),
    context,
  )
  const shown = (cents: number) => showMoney(cents, stock.currency)
  const bare = (cents: number) => showMoney(cents)
  const paidInAll = parts.group.members.reduce((sum, member) => sum + member.paid, 0)
  return {
    answer: `${said === '' ? '' : `${said}. `}${cost.unpriced.length > 0 ? 'Not all prices are known; so far ' : ''}${shown(cost.total)} for ${cost.kits.length} kits, ${shown(paidInAll)} of it paid`,
    tables: [
      {
        title: `Each kit${stock.currency ? ` (${stock.currency})` : ''}`,
        columns: ['Kit', 'Wood', 'All', 'Due'],
        rows: cost.kits.map((row): Cell[] => [
          kitLabel(row.kit),
          bare(row.wood),
          bare(row.shared),
          bare(row.wood + row.shared - row.paid),
        ]),
      },
    ],
    notes: [
      ...(cost.unpriced.length > 0
        ? [`no price for ${[...new Set(cost.unpriced)].join(', ')}: give one with "stock add", price=`]
        : []),
      'wood is shared by how much each kit has of it, waste and spares with it; what is on hand or brought costs nothing',
      shareLine(parts.group, shown),
      ...problemLines(parts.worked),
      ...dueLines(cost, names),
    ],
    buttons: [{ label: 'Sheets and boards', line: 'group layout' }],
    figures: {
      ...groupFigures(parts.group, parts.worked, parts.merged),
      cost: cost.unpriced.length > 0 ? null : cost.total / 100,
      perKit: cost.kits.map((row) => ({
        kit: row.kit,
        wood: row.wood / 100,
        shared: row.shared / 100,
        paid: row.paid / 100,
        due: (row.wood + row.shared - row.paid) / 100,
      })),
      unpriced: [...new Set(cost.unpriced)],
      currency: stock.currency ?? null,
    },
  }
}

const shareLine = ({ needs, share, deposit }: Group, shown: (cents: number) => string): string => {
  const common = needs.reduce((sum, need) => sum + (need.cost ?? 0), 0)
  const ahead = deposit > 0 ? `; deposit ${shown(deposit)} a head` : ''
  return `what is bought for all, ${shown(common)}, is shared ${share}${ahead}`
}

function dueLines({ kits }: GroupCost, names: ReadonlyMap<string, string>): readonly string[] {
  const due = kits.filter((row) => row.wood + row.shared > row.paid)
  return due.length === 0
    ? []
    : [`still due from ${due.map((row) => `${kitLabel(row.kit)} ${names.get(row.user)}`).join(', ')}`]
}
