import { z } from 'zod'
import { nanometres } from '../core/measure/length.ts'

/** Letters in a label: it has to fit a narrow table, and the end of a part. */
export const LONGEST_LABEL = 12

/** Rows that a stock list may have. */
export const MOST_ITEMS = 200

const stored = z.int().positive().transform(nanometres)
const allowed = z.int().nonnegative().transform(nanometres)

/** One row of what the shop sells or what is on hand. */
export const stockItemSchema = z.strictObject({
  label: z.string().min(1).max(LONGEST_LABEL),
  kind: z.enum(['sheet', 'board']),
  length: stored,
  width: stored,
  thickness: stored,
  /** Of a sheet: `plywood`, `MDF`. */
  material: z.string().max(40).optional(),
  price: z.int().nonnegative().optional(),
  onHand: z.int().positive().optional(),
  /** As it was typed: `2x4x8`, `1/2 ply 4x8`. */
  name: z.string().max(60).optional(),
})
export type Stocked = z.output<typeof stockItemSchema>

/** What a channel keeps of its stock, its saw and its shop. */
export const shopStockSchema = z.strictObject({
  items: z.array(stockItemSchema).max(MOST_ITEMS),
  sheetTrim: allowed.optional(),
  boardTrim: allowed.optional(),
  keepable: stored.optional(),
  currency: z.string().max(3).optional(),
  /** The units that it was written in, as far as they could be told. */
  units: z.enum(['inch', 'metric']).optional(),
})
export type ShopStock = z.output<typeof shopStockSchema>
