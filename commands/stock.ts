import { z } from 'zod'
import { defineAction, defineVerbs } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { count, first, length, money, sheet, words } from '../src/bot/option.ts'
import { quoted, Refusal } from '../src/bot/refusal.ts'
import type { Cell, Reply } from '../src/bot/reply.ts'
import { type ShopStock, type Stocked, shopStockSchema } from '../src/bot/shopStock.ts'
import { readStockPiece } from '../src/bot/stockPiece.ts'
import { didYouMean } from '../src/bot/suggest.ts'
import { toMillimetres } from '../src/core/measure/length.ts'
import { showMoney } from '../src/core/measure/money.ts'

const EMPTY: ShopStock = { items: [] }
const kept = (context: Context) => context.ofChannel('stock', shopStockSchema)

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
    const piece = readStockPiece(input.piece, input.sheet, context)
    const { after } = await kept(context).change((stock = EMPTY) => {
      const label = input.label ?? freeLabel(piece.kind, stock.items)
      if (stock.items.some((item) => item.label === label))
        throw new Refusal(
          'invalid',
          `${quoted(label)} is taken; give it another label, or remove that one first`,
        )
      const item: Stocked = {
        ...piece,
        label,
        ...(input.price && { price: input.price.cents }),
        ...(input.count && { onHand: input.count }),
      }
      return { ...stock, items: [...stock.items, item], currency: input.price?.currency ?? stock.currency }
    })
    return listing(after, context, `Added ${after.items.at(-1)?.label}`)
  },
})

const remove = defineAction({
  summary: 'Take one off the list',
  options: z.strictObject({ label: first(words('its label', 'S1')) }),
  run: async ({ label }, context) => {
    const { after } = await kept(context).change((stock = EMPTY) => {
      const labels = stock.items.map((item) => item.label)
      if (!labels.includes(label))
        throw new Refusal(
          'invalid',
          `nothing on the stock list is called ${quoted(label)}.${didYouMean(label, labels)}`,
        )
      return { ...stock, items: stock.items.filter((item) => item.label !== label) }
    })
    return listing(after, context, `Removed ${label}`)
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

const undo = defineAction({
  summary: 'Take the last change of the list back',
  options: z.strictObject({}),
  run: async (_input, context) => {
    const moved = await kept(context).undo()
    if (!moved) throw new Refusal('invalid', 'there is nothing to undo in this stock list')
    return listing(moved.body ?? EMPTY, context, `Undone: "${moved.revision.command}"`)
  },
})

const freeLabel = (kind: Stocked['kind'], items: readonly Stocked[]): string => {
  const letter = kind === 'sheet' ? 'S' : 'L'
  const taken = new Set(items.map(({ label }) => label))
  let number = 1
  while (taken.has(`${letter}${number}`)) number += 1
  return `${letter}${number}`
}

function listing(stock: ShopStock, context: Context, said: string): Reply {
  const { show } = context
  const rows = stock.items.map(({ label, length: long, width, onHand, price }): Cell[] => [
    label,
    onHand ?? 'shop',
    `${show.mark(long)} x ${show.mark(width)}`,
    price === undefined ? '-' : showMoney(price, stock.currency),
  ])
  return {
    answer: `${said}: ${stock.items.length} ${stock.items.length === 1 ? 'row' : 'rows'}`,
    tables:
      rows.length === 0
        ? []
        : [{ title: `Stock (${show.unit})`, columns: ['', 'No', 'Size', 'Price'], rows }],
    notes: [
      ...stock.items.map(
        ({ label, name, thickness }) =>
          `${label}: ${name ?? 'stock'}, ${show.length(thickness, 'mark', true)} thick`,
      ),
      ...(stock.sheetTrim ? [`${show.length(stock.sheetTrim)} off every edge of a bought sheet`] : []),
      ...(stock.boardTrim ? [`${show.length(stock.boardTrim)} off one end of every board`] : []),
    ],
    figures: {
      items: stock.items.map((item) => ({
        label: item.label,
        kind: item.kind,
        length: toMillimetres(item.length),
        width: toMillimetres(item.width),
        thickness: toMillimetres(item.thickness),
        price: item.price === undefined ? null : item.price / 100,
        onHand: item.onHand ?? null,
      })),
    },
  }
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
  verbs: { list, add, remove, set, undo },
  fallback: 'list',
})
