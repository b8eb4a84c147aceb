import { z } from 'zod'
import { kitLabel } from '../../core/group/mergeParts.ts'
import { type Money, readMoney, showMoney } from '../../core/measure/money.ts'
import { defineAction } from '../command.ts'
import type { Context } from '../context.ts'
import { counted } from '../cutListReply.ts'
import { searchTerms } from '../layoutJob.ts'
import { first, money as moneyOption, words } from '../option.ts'
import { exampleNote, priceBook } from '../prices.ts'
import { Refusal } from '../refusal.ts'
import type { Cell, Reply, Table } from '../reply.ts'
import { groupParts, layOutGroup, pooledStock, searchSeconds } from './cutting.ts'
import { current, type Group, groupOf, organisersOnly, withMember } from './group.ts'
import { type GroupCost, shareCost } from './groupCost.ts'
import { groupFigures, kitNames, namesOf } from './groupReply.ts'
import { builderOf, kitNumber } from './kitNumber.ts'
import { mergedList, problemLines, workKits } from './kits.ts'
import { centsOf } from './sameMoney.ts'
import { woodCosts } from './woodCost.ts'

export const money = defineAction({
  summary: 'What it costs in all and each, who has paid, and what is still due',
  options: z.strictObject({}),
  run: async (_input, context) => moneyReply(context),
})

export const paid = defineAction({
  summary: 'Mark what a member has paid, in all',
  options: z.strictObject({
    kit: first(words('the kit', 'K07')),
    amount: moneyOption('paid so far, in all', '20').optional(),
  }),
  run: async ({ kit: typed, amount }, context) => {
    await organisersOnly(context, 'marks what is paid')
    const { kit, sum } = payment(typed, amount)
    const cents = await centsOf(sum, context)
    const { after } = await groupOf(context).change((kept) => {
      const group = current(kept)
      builderOf(group, kit)
      return withMember(group, kit, (member) => ({ ...member, paid: cents }))
    })
    const worked = workKits(after, context)
    const book = await priceBook(context)
    return {
      answer: `${kitLabel(kit)} has paid ${book.show(cents)} in all`,
      notes: depositLines(after, book.show),
      buttons: [{ label: 'What it costs', line: 'group money' }],
      figures: { ...groupFigures(after, worked, mergedList(after, worked)), kit, paid: cents / 100 },
    }
  },
})

/** Which kit and how much, where the amount stands behind the kit as well: `K07 20`. */
function payment(typed: string, amount: Money | undefined): { readonly kit: number; readonly sum: Money } {
  if (amount) return { kit: kitNumber(typed), sum: amount }
  const [, kit = typed, rest = ''] = /^\s*((?:kit\s*)?k?\d{1,5})\s+(.*)$/iu.exec(typed) ?? []
  const sum = readMoney(rest)
  if (sum) return { kit: kitNumber(kit), sum }
  throw new Refusal('invalid', 'how much has been paid, in all? Add it, such as: group paid K07 amount=20')
}

async function moneyReply(context: Context): Promise<Reply> {
  const parts = await groupParts(context)
  const pooled = await pooledStock(parts.group, context)
  const seconds = searchSeconds(context)
  const job = await layOutGroup(parts, pooled, { context, seconds, terms: searchTerms(context) })
  const book = await priceBook(context)
  const cost = shareCost(parts, woodCosts(job, pooled.stock, book, context))
  const names = await namesOf(
    cost.kits.map(({ user }) => user),
    context,
  )
  const paidInAll = parts.group.members.reduce((sum, member) => sum + member.paid, 0)
  return {
    answer: `${cost.unpriced.length > 0 ? 'Not all prices are known; so far ' : ''}${book.show(cost.total)} for ${counted(cost.kits.length, 'kit')}, ${book.show(paidInAll)} of it paid`,
    tables: [kitTable(cost, book.currency)],
    notes: [
      ...exampleNote(book, cost.example),
      ...(cost.unpriced.length > 0
        ? [`no price for ${cost.unpriced.join(', ')}: give one with "stock add", price=`]
        : []),
      'wood is shared by how much each kit has of it, waste and spares with it; what is on hand or brought costs nothing',
      shareLine(parts.group, book.show),
      ...problemLines(parts.worked),
      ...dueLines(cost, names),
      ...depositLines(parts.group, book.show),
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
      unpriced: [...cost.unpriced],
      example: cost.example,
      currency: book.currency ?? null,
    },
  }
}

const kitTable = ({ kits }: GroupCost, currency: string | undefined): Table => ({
  title: `Each kit${currency === undefined ? '' : ` (${currency})`}`,
  columns: ['Kit', 'Wood', 'Rest', 'Due'],
  rows: kits.map((row): Cell[] => [
    kitLabel(row.kit),
    showMoney(row.wood),
    showMoney(row.shared),
    showMoney(row.wood + row.shared - row.paid),
  ]),
})

/** Who has a place and has not paid the deposit. */
function depositLines({ members, deposit }: Group, shown: (cents: number) => string): readonly string[] {
  const late = members.filter(({ waiting, paid: so }) => !waiting && so < deposit).map(({ kit }) => kit)
  return late.length === 0 ? [] : [`the deposit of ${shown(deposit)} is not paid for ${kitNames(late)}`]
}

const shareLine = ({ needs, share, deposit }: Group, shown: (cents: number) => string): string => {
  const common = needs.reduce((sum, need) => sum + (need.cost ?? 0), 0)
  const ahead = deposit > 0 ? `; deposit ${shown(deposit)} a head` : ''
  return `the rest is what is bought for all, ${shown(common)}, shared ${share}${ahead}`
}

/** Names beyond these are in the table, by their kits. */
const MOST_NAMED = 12

function dueLines({ kits }: GroupCost, names: ReadonlyMap<string, string>): readonly string[] {
  const due = kits.filter((row) => row.wood + row.shared > row.paid)
  if (due.length === 0) return []
  const named = due.slice(0, MOST_NAMED).map((row) => `${kitLabel(row.kit)} ${names.get(row.user)}`)
  const more = due.length - named.length
  return [`still due from ${named.join(', ')}${more > 0 ? ` and ${more} more` : ''}`]
}
