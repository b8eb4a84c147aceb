import { z } from 'zod'
import type { ListedPart, SawTerms, StockItem } from '../core/cutting/job.ts'
import { FOOT, type Length, nanometres, times } from '../core/measure/length.ts'
import { countStrips } from '../core/panelling/strips.ts'
import { findBoard } from '../core/stock/boards.ts'
import type { Context } from './context.ts'
import { LONGEST_LABEL } from './cutList.ts'

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

/** A remainder shorter than this on any side is swept up (common practice: about a foot). */
const KEEPABLE = FOOT
const NO_TRIM = 0 as Length

export const sawTerms = (stock: ShopStock | undefined, { settled }: Context): SawTerms => ({
  kerf: settled.kerf,
  sheetTrim: stock?.sheetTrim ?? NO_TRIM,
  boardTrim: stock?.boardTrim ?? NO_TRIM,
  keepable: stock?.keepable ?? KEEPABLE,
})

/**
 * What the shop of the region sells for a group of parts that no stock of the channel suits: the full sheet, and boards of
 * eight feet, or of the shortest length that takes the longest part.
 */
export function usualStock(
  parts: readonly ListedPart[],
  kerf: Length,
  context: Context,
): readonly StockItem[] {
  const [first] = parts
  if (!first) return []
  return first.from === 'sheet' ? usualSheets(first, context) : usualBoards(first, parts, kerf, context)
}

function usualSheets({ thickness }: ListedPart, { reference, settled }: Context): readonly StockItem[] {
  const size = reference.stock.sizes.find(
    ({ region, aliasOf }) => region === settled.region && aliasOf === undefined,
  )
  if (!size || thickness === undefined) return []
  return [{ label: size.name, kind: 'sheet', length: size.length, width: size.width, thickness }]
}

function usualBoards(
  first: ListedPart,
  parts: readonly ListedPart[],
  kerf: Length,
  { reference, settled, project }: Context,
): readonly StockItem[] {
  const gives = (width: Length): boolean => {
    const counted = countStrips({ board: width, strip: first.thickness ?? (0 as Length), kerf })
    return counted.status === 'counted' && counted.safeCount > 0
  }
  const near = (a: Length, b: Length | undefined) => b !== undefined && Math.abs(a - b) <= 500_000
  const sections = reference.stock.boards.filter(
    ({ region, aliasOf, thickness, width }) =>
      region === settled.region &&
      aliasOf === undefined &&
      (first.from === 'strip'
        ? near(thickness, first.width) && gives(width)
        : near(thickness, first.thickness) && near(width, first.width)),
  )
  // The widest common board wastes least on kerf beside the fence, but a 2x6 is what a table saw takes with ease.
  // The board that the plan names goes before both.
  const named = findBoard(project?.choices.board ?? '', settled.region, reference.stock)
  const own = sections.find(({ thickness, width }) => thickness === named?.thickness && width === named.width)
  const section = own ?? sections.find(({ width }) => width >= times(FOOT, 0.4)) ?? sections.at(-1)
  if (!section) return []
  const longest = Math.max(...parts.map(({ length }) => length))
  const [enough] = reference.stock.lengths
    .filter(
      ({ region, length }) => region === settled.region && length >= Math.max(longest, times(FOOT, 7.5)),
    )
    .sort((a, b) => a.length - b.length)
  if (enough === undefined) return []
  return [
    {
      label: `${section.name} ${enough.name}`,
      kind: 'board',
      length: enough.length,
      width: section.width,
      thickness: section.thickness,
    },
  ]
}
