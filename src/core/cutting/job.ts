import type { Length } from '../measure/length.ts'
import { countStrips } from '../panelling/strips.ts'
import type { LengthProblem, SheetProblem, StockSheet } from './problem.ts'
import type { StripProblem } from './strips/stripProblem.ts'

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
  /** Of a sheet part: `plywood`, `MDF`; undefined where any will do. */
  readonly material?: string | undefined
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
  /** Of a sheet: `birch plywood`; undefined where nobody has said, and it suits every part so thick. */
  readonly material?: string | undefined
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

/** What is the same of every group: the stock that suits it, and whether every price is known. */
interface Grouped {
  readonly thickness: Length
  readonly stock: readonly StockItem[]
  readonly priced: boolean
}

export interface SheetGroup extends Grouped {
  readonly kind: 'sheet'
  readonly material: string | undefined
  readonly problem: SheetProblem
}

/** Parts that are crosscut from boards as they are. */
export interface BoardGroup extends Grouped {
  readonly kind: 'board'
  readonly width: Length
  readonly problem: LengthProblem
}

/** Parts that are crosscut from strips; `thickness` is what the fence sets, `width` the face. */
export interface StripGroup extends Grouped {
  readonly kind: 'strip'
  readonly width: Length
  readonly problem: StripProblem
}

/** Parts that are cut from the same material, and the problem they make. */
export type Group = SheetGroup | BoardGroup | StripGroup

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
export function groupParts(
  parts: readonly ListedPart[],
  stock: readonly StockItem[],
  saw: SawTerms,
): readonly (Group | NoStock)[] {
  const groups: ListedPart[][] = []
  for (const part of parts) {
    const group = groups.find((others) => joins(part, others))
    if (group) group.push(part)
    else groups.push([part])
  }
  return groups.map((group) => problemOf(group, stock, saw))
}

/** A part of no material in particular goes with the first that is as thick. */
const joins = (part: ListedPart, group: readonly ListedPart[]): boolean => {
  const material = materialOf(group)
  return (
    alike(part, group[0] ?? part) &&
    (part.material === undefined || material === undefined || part.material === material)
  )
}

const materialOf = (parts: readonly ListedPart[]): string | undefined =>
  parts.find(({ material }) => material !== undefined)?.material

const alike = (a: ListedPart, b: ListedPart): boolean =>
  a.from === b.from &&
  sameSize(a.thickness, b.thickness) &&
  (a.from === 'sheet' || sameSize(a.width, b.width))

const sameSize = (a: Length | undefined, b: Length | undefined): boolean =>
  a === undefined || b === undefined ? a === b : same(a, b)

function problemOf(
  parts: readonly ListedPart[],
  stock: readonly StockItem[],
  saw: SawTerms,
): Group | NoStock {
  const [first] = parts
  if (!first) throw new RangeError('a group of parts is never empty')
  const part = { ...first, material: materialOf(parts) }
  const suits = stock.filter((item) => suitable(item, part, saw))
  const { from } = first
  if (suits.length === 0) return { kind: 'noStock', parts, from, thickness: first.thickness }
  const priced = suits.every(({ price, onHand }) => price !== undefined || onHand !== undefined)
  if (from === 'sheet') return sheetGroup(parts, suits, saw, priced)
  return from === 'board' ? boardGroup(parts, suits, saw, priced) : stripGroup(parts, suits, saw, priced)
}

/** A strip's face is its board's thickness; a part that names no thickness is content with any sheet there is. */
function suitable(
  item: StockItem,
  { from, thickness, width, material }: ListedPart,
  { kerf }: SawTerms,
): boolean {
  if (from === 'sheet')
    return (
      item.kind === 'sheet' &&
      (thickness === undefined || same(item.thickness, thickness)) &&
      isMadeOf(item.material, material)
    )
  if (item.kind !== 'board') return false
  if (from === 'strip')
    return (
      width !== undefined &&
      thickness !== undefined &&
      same(item.thickness, width) &&
      stripsOf(item, thickness, kerf) > 0
    )
  return (
    (thickness === undefined || same(item.thickness, thickness)) &&
    (width === undefined || same(item.width, width))
  )
}

/** Plywood of no wood in particular may be any plywood. */
const isMadeOf = (stock: string | undefined, part: string | undefined): boolean =>
  stock === undefined ||
  part === undefined ||
  stock === part ||
  (part === 'plywood' && stock.endsWith(' plywood'))

/** Without prices the cheapest is the least material: a price of one for every square millimetre. */
const priceOf = ({ price, onHand, length, width }: StockItem, priced: boolean): number =>
  priced || onHand !== undefined ? (price ?? 0) : Math.round((length / 1e6) * (width / 1e6))

function sheetGroup(
  parts: readonly ListedPart[],
  stock: readonly StockItem[],
  saw: SawTerms,
  priced: boolean,
): SheetGroup {
  const sheets = stock.map(
    (item): StockSheet => ({
      id: item.label,
      length: item.length,
      width: item.width,
      price: priceOf(item, priced),
      ...(item.onHand === undefined ? {} : { onHand: item.onHand, net: true }),
    }),
  )
  const problem: SheetProblem = {
    parts: parts.map(({ label, length, width, count, grain }) => ({
      id: label,
      length,
      width: width ?? length,
      count,
      turnable: !grain,
    })),
    stock: sheets,
    kerf: saw.kerf,
    trim: saw.sheetTrim,
    keepable: saw.keepable,
  }
  const thickness = stock[0]?.thickness ?? (0 as Length)
  return { kind: 'sheet', thickness, material: materialOf(parts), stock, priced, problem }
}

function boardGroup(
  parts: readonly ListedPart[],
  stock: readonly StockItem[],
  saw: SawTerms,
  priced: boolean,
): BoardGroup {
  const [{ thickness, width } = NO_SECTION] = stock
  const problem = { ...crosscuts(parts, saw), stock: stock.map((item) => stockLength(item, priced)) }
  return { kind: 'board', thickness, width, stock, priced, problem }
}

function stripGroup(
  parts: readonly ListedPart[],
  stock: readonly StockItem[],
  saw: SawTerms,
  priced: boolean,
): StripGroup {
  const thickness = parts[0]?.thickness ?? (0 as Length)
  const [{ thickness: face } = NO_SECTION] = stock
  const boards = stock.map((item) => ({
    ...stockLength(item, priced),
    strips: stripsOf(item, thickness, saw.kerf),
  }))
  const problem = { ...crosscuts(parts, saw), stock: boards }
  return { kind: 'strip', thickness, width: face, stock, priced, problem }
}

const NO_SECTION = { thickness: 0 as Length, width: 0 as Length }

const crosscuts = (parts: readonly ListedPart[], { kerf, boardTrim, keepable }: SawTerms) => ({
  parts: parts.map(({ label, length, count }) => ({ id: label, length, count })),
  kerf,
  trim: boardTrim,
  keepable,
})

const stockLength = (item: StockItem, priced: boolean) => ({
  id: item.label,
  length: item.length,
  price: priceOf(item, priced),
  ...(item.onHand === undefined ? {} : { onHand: item.onHand }),
})

/** Strips that one board gives, by the count that leaves something spare. */
const stripsOf = ({ width }: StockItem, strip: Length, kerf: Length): number => {
  const counted = countStrips({ board: width, strip, kerf })
  return counted.status === 'counted' ? Math.max(0, counted.safeCount) : 0
}
