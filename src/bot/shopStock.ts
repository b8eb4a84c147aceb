import { groupParts, type ListedPart, type SawTerms, type StockItem } from '../core/cutting/job.ts'
import { FOOT, type Length, minus, times } from '../core/measure/length.ts'
import { countStrips } from '../core/panelling/strips.ts'
import { findBoard } from '../core/stock/boards.ts'
import type { Region } from '../core/stock/stock.ts'
import type { Context } from './context.ts'
import type { ShopStock } from './stockKept.ts'

export {
  MOST_ITEMS,
  type ShopStock,
  shopStockSchema,
  type Stocked,
  stockItemSchema,
} from './stockKept.ts'

/** A remainder shorter than this on any side is swept up (common practice: about a foot). */
const KEEPABLE = FOOT
const NO_TRIM = 0 as Length

export const sawTerms = (stock: ShopStock | undefined, { settled }: Context): SawTerms => ({
  kerf: settled.kerf,
  sheetTrim: stock?.sheetTrim ?? NO_TRIM,
  boardTrim: stock?.boardTrim ?? NO_TRIM,
  keepable: stock?.keepable ?? KEEPABLE,
})

/** Where the wood is bought: where the plan was kept, whoever asks. */
const regionOf = ({ project, settled }: Context): Region => project?.choices.region ?? settled.region

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

/**
 * The sheets that panels so thick come out of, by the length and width that the saw may use of them: those of the channel's
 * stock, else what is assumed for want of any. Whoever says that a panel is too large asks here, as the layout does.
 */
export function sheetsFor(thickness: Length, context: Context): readonly StockItem[] {
  const saw = sawTerms(context.stock, context)
  const panel: ListedPart = {
    label: '',
    count: 1,
    from: 'sheet',
    length: thickness,
    width: thickness,
    thickness,
    grain: false,
    later: false,
  }
  const [group] = groupParts([panel], context.stock?.items ?? [], saw)
  const found = group && group.kind !== 'noStock' ? group.stock : usualStock([panel], saw.kerf, context)
  return found.map((item) => {
    const off = item.onHand === undefined ? times(saw.sheetTrim, 2) : NO_TRIM
    return { ...item, length: minus(item.length, off), width: minus(item.width, off) }
  })
}

/** The full sheet as it is sold where the wood is bought. */
export const usualSheet = (context: Context) =>
  context.reference.stock.sizes.find(
    ({ region, aliasOf }) => region === regionOf(context) && aliasOf === undefined,
  )

function usualSheets({ thickness }: ListedPart, context: Context): readonly StockItem[] {
  const size = usualSheet(context)
  if (!size || thickness === undefined) return []
  return [{ label: size.name, kind: 'sheet', length: size.length, width: size.width, thickness }]
}

function usualBoards(
  first: ListedPart,
  parts: readonly ListedPart[],
  kerf: Length,
  context: Context,
): readonly StockItem[] {
  const { reference, project } = context
  const place = regionOf(context)
  const gives = (width: Length): boolean => {
    const counted = countStrips({ board: width, strip: first.thickness ?? (0 as Length), kerf })
    return counted.status === 'counted' && counted.safeCount > 0
  }
  const near = (a: Length, b: Length | undefined) => b !== undefined && Math.abs(a - b) <= 500_000
  const sections = reference.stock.boards.filter(
    ({ region, aliasOf, thickness, width }) =>
      region === place &&
      aliasOf === undefined &&
      (first.from === 'strip'
        ? near(thickness, first.width) && gives(width)
        : near(thickness, first.thickness) && near(width, first.width)),
  )
  // The widest common board wastes least on kerf beside the fence, but a 2x6 is what a table saw takes with ease.
  // The board that the plan names goes before both.
  const named = findBoard(project?.choices.board ?? '', place, reference.stock)
  const own = sections.find(({ thickness, width }) => thickness === named?.thickness && width === named.width)
  const section = own ?? sections.find(({ width }) => width >= times(FOOT, 0.4)) ?? sections.at(-1)
  if (!section) return []
  const longest = Math.max(...parts.map(({ length }) => length))
  const [enough] = reference.stock.lengths
    .filter(({ region, length }) => region === place && length >= Math.max(longest, times(FOOT, 7.5)))
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
