import { z } from 'zod'
import { itemKey } from '../core/quantities/shoppingPrices.ts'
import type { Context } from './context.ts'
import type { Document } from './document.ts'

/** Rows that a channel may keep of prices, and of things on hand. */
export const MOST_KEPT = 300

const item = z.string().min(1).max(120)

/** What a channel keeps for its shopping: its own prices in cents, what is on hand, the spare, the currency. */
export const shoppingSchema = z.strictObject({
  prices: z.array(z.strictObject({ item, cents: z.int().nonnegative() })).max(MOST_KEPT),
  have: z.array(z.strictObject({ item, count: z.int().positive() })).max(MOST_KEPT),
  /** Percent bought over of sheets, boards and hardware. */
  spare: z.number().min(0).max(100).optional(),
  currency: z.string().max(3).optional(),
})
/** Prices, things on hand, spare and currency as they are kept. */
export type ShoppingKept = z.output<typeof shoppingSchema>

/** What holds where nothing was ever kept. */
export const NOTHING_KEPT: ShoppingKept = { prices: [], have: [] }

/** The channel's own document. */
export const shoppingOf = (context: Context): Document<ShoppingKept> =>
  context.ofChannel('shopping', shoppingSchema)

/** `rows` with the one of that name replaced by `row`, at the end; taken out where there is none. */
export function replaced<Row extends { readonly item: string }>(
  rows: readonly Row[],
  name: string,
  row: Row | undefined,
): Row[] {
  const key = itemKey(name)
  const others = rows.filter((each) => itemKey(each.item) !== key)
  return row ? [...others, row] : others
}
