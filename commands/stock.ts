import { z } from 'zod'
import { defineAction, defineVerbs } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { LONGEST_LABEL } from '../src/bot/cutList.ts'
import { count, first, length, money, sheet, words } from '../src/bot/option.ts'
import { stockMoney } from '../src/bot/prices.ts'
import { quoted, Refusal } from '../src/bot/refusal.ts'
import type { Reply } from '../src/bot/reply.ts'
import { MOST_ITEMS, type ShopStock, type Stocked, shopStockSchema } from '../src/bot/shopStock.ts'
import { showKept, unitsWritten } from '../src/bot/showKept.ts'
import { readStockPiece } from '../src/bot/stockPiece.ts'
import { stockReply } from '../src/bot/stockReply.ts'
import { didYouMean } from '../src/bot/suggest.ts'
import { undoVerbs } from '../src/bot/undoVerbs.ts'
import type { Money } from '../src/core/measure/money.ts'

const EMPTY: ShopStock = { items: [] }
const kept = (context: Context) => context.ofChannel('stock', shopStockSchema)

const listing = async (stock: ShopStock, context: Context, said: string): Promise<Reply> =>
  stockReply(stock, said, showKept(context, stock.units), await stockMoney(context))

const add = defineAction({
  summary: 'Add sheets or boards: what the shop sells, or what is on hand',
  options: z.strictObject({
    piece: first(words('a board such as 2x4x8, or a sheet such as 4ft x 8ft', '4ft x 8ft')),
    sheet: sheet('what the sheet is, for its thickness').optional(),
    price: money('price of one').optional(),
    count: count('how many are on hand; leave it out for what the shop sells', 1, 1000).optional(),
    label: words('a short name to call it by', 'S1').optional(),
  }),
  run: async (input, context) => {
    const { piece, note } = readStockPiece(input.piece, input.sheet, context)
    if (piece.onHand !== undefined && input.count !== undefined && piece.onHand !== input.count)
      throw new Refusal(
        'invalid',
        `how many are on hand? ${quoted(input.piece)} says ${piece.onHand}, count= says ${input.count}; keep one`,
      )
    const { after } = await kept(context).change((stock = EMPTY) => {
      const label = labelOf(input.label, piece.kind, stock.items)
      const item: Stocked = {
        ...piece,
        label,
        ...(input.price && { price: input.price.cents }),
        ...(input.count && { onHand: input.count }),
      }
      return {
        ...stock,
        items: [...stock.items, item],
        currency: currencyOf(input.price, stock),
        units: stock.units ?? unitsWritten(input.piece),
      }
    })
    const reply = await listing(after, context, `Added ${after.items.at(-1)?.label}`)
    return note ? { ...reply, notes: [note, ...(reply.notes ?? [])] } : reply
  },
})

/** The label asked for, or the next free one. Throws a Refusal for one that is taken, too long, or one too many. */
function labelOf(wanted: string | undefined, kind: Stocked['kind'], items: readonly Stocked[]): string {
  if (items.length >= MOST_ITEMS)
    throw new Refusal('invalid', `the stock list has ${MOST_ITEMS} rows, the most it takes; remove one first`)
  const label = wanted ?? freeLabel(kind, items)
  if (label.length > LONGEST_LABEL)
    throw new Refusal('invalid', `label ${quoted(label)} is too long; write ${LONGEST_LABEL} letters at most`)
  if (findItem(label, items))
    throw new Refusal('invalid', `${quoted(label)} is taken; give it another label, or remove that one first`)
  return label
}

const findItem = (label: string, items: readonly Stocked[]): Stocked | undefined =>
  items.find((item) => item.label.toLowerCase() === label.toLowerCase())

/** One list has one currency. Throws a Refusal where another is typed while prices stand in the first. */
function currencyOf(price: Money | undefined, { items, currency }: ShopStock): string | undefined {
  const typed = price?.currency
  if (typed === undefined || typed === currency) return currency
  const isPriced = items.some((item) => item.price !== undefined)
  if (currency !== undefined && isPriced)
    throw new Refusal(
      'invalid',
      `the prices of this list are in ${currency}, not ${typed}; write them all in one currency`,
    )
  return typed
}

const remove = defineAction({
  summary: 'Take one off the list',
  options: z.strictObject({ label: first(words('its label', 'S1')) }),
  run: async ({ label }, context) => {
    const { after } = await kept(context).change((stock = EMPTY) => {
      const found = findItem(label, stock.items)
      const labels = stock.items.map((item) => item.label)
      if (!found)
        throw new Refusal(
          'invalid',
          `nothing on the stock list is called ${quoted(label)}.${didYouMean(label, labels)}`,
        )
      return { ...stock, items: stock.items.filter((item) => item !== found) }
    })
    return listing(after, context, `Removed ${quoted(label)}`)
  },
})

const set = defineAction({
  summary: 'How much to trim off, and what is worth keeping',
  options: z.strictObject({
    sheettrim: length('off every edge of a bought sheet', '1/4in', { zero: true }).optional(),
    boardtrim: length('off one end of every board', '1/2in', { zero: true }).optional(),
    keep: length('shortest side of an offcut worth keeping', '12in').optional(),
  }),
  run: async ({ sheettrim, boardtrim, keep }, context) => {
    if (sheettrim === undefined && boardtrim === undefined && keep === undefined)
      throw new Refusal('invalid', 'what is to be set? Add sheettrim=1/4in, boardtrim=1/2in or keep=12in')
    const { after } = await kept(context).change((stock = EMPTY) => ({
      ...stock,
      sheetTrim: sheettrim ?? stock.sheetTrim,
      boardTrim: boardtrim ?? stock.boardTrim,
      keepable: keep ?? stock.keepable,
    }))
    return listing(after, context, 'Set')
  },
})

const list = defineAction({
  summary: 'What is on the list',
  options: z.strictObject({}),
  run: async (_input, context) => {
    const stock = (await kept(context).read()) ?? EMPTY
    return listing(
      stock,
      context,
      stock.items.length === 0
        ? 'Nothing listed; the usual sheets and boards of the region are used'
        : 'Stock',
    )
  },
})

const { undo, redo } = undoVerbs({
  name: 'stock list',
  open: kept,
  reply: (body, context, said) => listing(body ?? EMPTY, context, said),
})

const freeLabel = (kind: Stocked['kind'], items: readonly Stocked[]): string => {
  const letter = kind === 'sheet' ? 'S' : 'L'
  let number = 1
  while (findItem(`${letter}${number}`, items)) number += 1
  return `${letter}${number}`
}

export default defineVerbs({
  name: 'stock',
  summary: 'Sheets, boards and offcuts: what the shop sells, what is on hand, prices, trim',
  examples: [
    'stock add 4ft x 8ft sheet=1/2 ply price=42.50',
    'stock add 2x4x8 price=4.20',
    'stock add 22in x 40in sheet=1/2 ply count=1 label=OFF1',
    'stock set sheettrim=1/4in',
    'stock',
  ],
  verbs: { list, add, remove, set, undo, redo },
  fallback: 'list',
})
