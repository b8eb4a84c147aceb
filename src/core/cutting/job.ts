import type { Length } from '../measure/length.ts'
import { countStrips } from '../panelling/strips.ts'
import type { LengthProblem, SheetProblem, StockLength, StockSheet } from './problem.ts'

/** A part on the list. Without a width it is crosscut from a board; `strip` parts come out of boards ripped first. */
export interface ListedPart {
  readonly label: string
  readonly count: number
  readonly from: 'sheet' | 'board' | 'strip'
  readonly length: Length
  /** Of a sheet part its other side; of a strip its face; of a board its dressed width. */
  readonly width?: Length | undefined
  /** Of a sheet part the sheet's; of a strip what the fence sets; of a board its dressed thickness. */
  readonly thickness?: Length | undefined
  /** The grain runs along the length, so the part may not be turned. */
  readonly grain: boolean
  /** Cut to fit on the day, not ahead. */
  readonly later: boolean
}

/** Sheets or boards of one size: what the shop sells, or what is on hand. */
export interface StockItem {
  readonly label: string
  readonly kind: 'sheet' | 'board'
  readonly length: Length
  readonly width: Length
  readonly thickness: Length
  /** Cents for one; undefined where nobody has said. */
  readonly price?: number | undefined
  /** How many there are; undefined for as many as the shop has. */
  readonly onHand?: number | undefined
}

/** How the saw cuts, and what is worth keeping. */
export interface SawTerms {
  readonly kerf: Length
  /** Off every edge of a bought sheet. */
  readonly sheetTrim: Length
  /** Off one end of every board. */
  readonly boardTrim: Length
  readonly keepable: Length
}

/** Parts that are cut from the same material, and the problem they make. */
export type Group =
  | { readonly kind: 'sheet'; readonly thickness: Length; readonly priced: boolean; readonly problem: SheetProblem }
  | {
      readonly kind: 'board' | 'strip'
      readonly thickness: Length
      readonly width: Length
      readonly priced: boolean
      readonly problem: LengthProblem
      /** Strips that one board of each stock gives; 1 where boards are only crosscut. */
      readonly perBoard: ReadonlyMap<string, number>
    }

/** Parts for which nothing on the stock list will do. */
export interface NoStock {
  readonly kind: 'noStock'
  readonly parts: readonly ListedPart[]
  readonly from: ListedPart['from']
  readonly thickness: Length | undefined
}

/** Two thicknesses, or widths, as near as this are the same stock measured twice. */
const SAME = 500_000

const same = (a: Length, b: Length): boolean => Math.abs(a - b) <= SAME

/** Sorts parts by the material they come from, and sets each group's problem against the stock that suits it. */
export function groupParts(parts: readonly ListedPart[], stock: readonly StockItem[], saw: SawTerms): readonly (Group | NoStock)[] {
  const groups: ListedPart[][] = []
  for (const part of parts) {
    const group = groups.find(([first]) => first && alike(first, part))
    if (group) group.push(part)
    else groups.push([part])
  }
  return groups.map((group) => problemOf(group, stock, saw))
}

const alike = (a: ListedPart, b: ListedPart): boolean =>
  a.from === b.from && sameSize(a.thickness, b.thickness) && (a.from === 'sheet' || sameSize(a.width, b.width))

const sameSize = (a: Length | undefined, b: Length | undefined): boolean =>
  a === undefined || b === undefined ? a === b : same(a, b)

function problemOf(parts: readonly ListedPart[], stock: readonly StockItem[], saw: SawTerms): Group | NoStock {
  const [first] = parts
  if (!first) throw new RangeError('a group of parts is never empty')
  const suits = stock.filter((item) => suitable(item, first))
  if (suits.length === 0) return { kind: 'noStock', parts, from: first.from, thickness: first.thickness }
  const priced = suits.every(({ price, onHand }) => price !== undefined || onHand !== undefined)
  return first.from === 'sheet' ? sheetGroup(parts, suits, saw, priced) : boardGroup(parts, suits, saw, priced)
}

/** A strip's face is its board's thickness; a part that names no thickness is content with any sheet there is. */
function suitable(item: StockItem, { from, thickness, width }: ListedPart): boolean {
  if (from === 'sheet') return item.kind === 'sheet' && (thickness === undefined || same(item.thickness, thickness))
  if (item.kind !== 'board') return false
  if (from === 'strip') return width !== undefined && same(item.thickness, width)
  return (thickness === undefined || same(item.thickness, thickness)) && (width === undefined || same(item.width, width))
}

/** Without prices the cheapest is the least material: a price of one for every square millimetre. */
const sheetPrice = ({ price, onHand, length, width }: StockItem, priced: boolean): number =>
  priced || onHand !== undefined ? (price ?? 0) : Math.round((length / 1e6) * (width / 1e6))

function sheetGroup(parts: readonly ListedPart[], stock: readonly StockItem[], saw: SawTerms, priced: boolean): Group {
  const sheets = stock.map(
    (item): StockSheet => ({
      id: item.label,
      length: item.length,
      width: item.width,
      price: sheetPrice(item, priced),
      ...(item.onHand === undefined ? {} : { onHand: item.onHand, net: true }),
    }),
  )
  const problem: SheetProblem = {
    parts: parts.map(({ label, length, width, count, grain }) => ({ id: label, length, width: width ?? length, count, turnable: !grain })),
    stock: sheets,
    kerf: saw.kerf,
    trim: saw.sheetTrim,
    keepable: saw.keepable,
  }
  return { kind: 'sheet', thickness: stock[0]?.thickness ?? (0 as Length), priced, problem }
}

function boardGroup(parts: readonly ListedPart[], stock: readonly StockItem[], saw: SawTerms, priced: boolean): Group {
  const [first] = parts
  const strip = first?.from === 'strip' ? first.thickness : undefined
  const perBoard = new Map(stock.map((item) => [item.label, strip === undefined ? 1 : stripsOf(item, strip, saw.kerf)]))
  const usable = stock.filter(({ label }) => (perBoard.get(label) ?? 0) > 0)
  const problem: LengthProblem = {
    parts: parts.map(({ label, length, count }) => ({ id: label, length, count })),
    stock: usable.map((item) => stockLength(item, perBoard.get(item.label) ?? 1, priced)),
    kerf: saw.kerf,
    trim: saw.boardTrim,
    keepable: saw.keepable,
  }
  const [{ thickness, width } = { thickness: 0 as Length, width: 0 as Length }] = usable
  return strip === undefined
    ? { kind: 'board', thickness, width, priced, problem, perBoard }
    : { kind: 'strip', thickness: strip, width: thickness, priced, problem, perBoard }
}

/** A strip carries its share of the board's price, in ten-thousandths of a cent so that the shares add up well. */
function stockLength(item: StockItem, strips: number, priced: boolean): StockLength {
  const price = priced || item.onHand !== undefined ? (item.price ?? 0) * SHARE : Math.round(item.length / 1e3)
  const onHand = item.onHand === undefined ? {} : { onHand: item.onHand * strips }
  return { id: item.label, length: item.length, price: Math.round(price / strips), ...onHand }
}

/** Prices of boards and strips in a LengthProblem are this many times cents. */
export const SHARE = 10_000

const stripsOf = ({ width }: StockItem, strip: Length, kerf: Length): number => {
  const counted = countStrips({ board: width, strip, kerf })
  return counted.status === 'counted' ? Math.max(0, counted.safeCount) : 0
}
