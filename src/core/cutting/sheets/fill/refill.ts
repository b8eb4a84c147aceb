import type { ShouldStop } from '../../problem.ts'
import type { Block } from '../block.ts'
import { type OpenSheet, openSheet, ownSheet, type Packing, refreshGaps, takePart } from '../packing.ts'
import { listPieces, putPattern } from '../pattern.ts'
import type { Random } from '../random.ts'
import { cheapFirst, PART_KEYS, recreate } from '../recreate.ts'
import { clearRow } from '../ruin.ts'
import { type Effort, fillPattern, fillRoom } from './roomFill.ts'

/** How much more than its area a part as large as the largest counts, for large parts are hard to place later. */
const LARGE_BONUS = 0.05

/** Rough steps for a row of stacks. */
const ROW_STEPS = 20_000

const WHOLE_SHEET: Effort = { turns: 1, tries: 12 }
/** By how much of a sheet a fuller one may pass for an emptier one where the emptiest are drawn. */
const FILL_NOISE = 0.01

const ONE_ROW: Effort = { turns: 1, tries: 3 }

const worthsOf = (packing: Packing, random: Random): Float64Array => {
  const { area } = packing.sizes
  const largest = area.reduce((one, other) => Math.max(one, other), 0)
  const bonus = LARGE_BONUS * (0.5 + random.next())
  return area.map((size) => size * (1 + bonus * Math.sqrt(size / largest)))
}

/** Fills a bare row of an own sheet from the parts without a place. */
const fillBare = (
  packing: Packing,
  sheet: OpenSheet,
  row: Block,
  effort: Effort,
  random: Random,
  shouldStop: ShouldStop,
): void => {
  const pool = { sizes: packing.sizes, left: packing.left, worth: worthsOf(packing, random) }
  const fill = fillRoom(pool, row, effort, random, shouldStop)
  const pattern = fillPattern(fill)
  putPattern(row, pattern, packing.sizes)
  for (const index of listPieces(pattern)) takePart(packing, sheet, index >> 1)
  refreshGaps(packing.sizes, sheet)
  packing.effort += ROW_STEPS * fill.looks
}

/** The parts without a place go where there is a gap; no sheet is bought for them. */
const fillGaps = (packing: Packing, random: Random): void => {
  const taste = { blink: 0, power: 0 as const }
  const key = PART_KEYS[random.below(PART_KEYS.length)]!
  recreate(packing, { key, noise: 0.1, taste, budget: packing.cost, choose: cheapFirst(0.3) }, random)
}

/** Opens sheets of these types one after another and fills each from the parts without a place; stopped, it opens fewer. */
export const openFilled = (
  packing: Packing,
  types: readonly number[],
  random: Random,
  shouldStop: ShouldStop,
): void => {
  for (const type of types) {
    if (shouldStop()) return
    const sheet = openSheet(packing, type)
    fillBare(packing, sheet, sheet.root, WHOLE_SHEET, random, shouldStop)
  }
  fillGaps(packing, random)
}

const fillOf = (packing: Packing, index: number): number => {
  const sheet = packing.sheets[index]!
  return sheet.used / packing.job.sheets[sheet.type]!.area
}

/** The emptiest of a few sheets drawn at random. */
const drawSheet = (packing: Packing, draws: number, random: Random): number => {
  let drawn = random.below(packing.sheets.length)
  for (let turn = 1; turn < draws; turn++) {
    const other = random.below(packing.sheets.length)
    if (fillOf(packing, other) < fillOf(packing, drawn)) drawn = other
  }
  return drawn
}

const listRows = (block: Block, rows: Block[]): Block[] => {
  if (block.part >= 0) return rows
  if (block.children.length > 0) rows.push(block)
  for (const child of block.children) listRows(child, rows)
  return rows
}

/** Clears a row, the whole sheet or a part of it, on each of a few sheets, and fills them anew from all their parts. */
export const refillRows = (packing: Packing, count: number, random: Random, shouldStop: ShouldStop): void => {
  const cleared = new Map<OpenSheet, Block>()
  for (let turn = 0; turn < count; turn++) {
    const sheet = ownSheet(packing, drawSheet(packing, turn === 0 ? 5 : 2, random))
    const rows = listRows(sheet.root, [])
    // Rows are listed from the whole sheet inwards: large ones come up more often.
    const row = rows[random.below(1 + random.below(rows.length))]
    if (row === undefined || cleared.has(sheet)) continue
    clearRow(packing, sheet, row)
    cleared.set(sheet, row)
  }
  const ranked = [...cleared].map(([sheet, row]) => ({
    sheet,
    row,
    rank: row.length * row.width * (0.5 + random.next()),
  }))
  for (const { sheet, row } of ranked.sort((a, b) => a.rank - b.rank))
    fillBare(packing, sheet, row, ONE_ROW, random, shouldStop)
  fillGaps(packing, random)
}

/** Clears about the emptiest sheets and fills them anew from all their parts, one after another, small ones rather first. */
export const refillSheets = (
  packing: Packing,
  count: number,
  random: Random,
  shouldStop: ShouldStop,
): void => {
  const ranked = packing.sheets.map((_, index) => ({
    index,
    rank: fillOf(packing, index) + FILL_NOISE * random.next(),
  }))
  const cleared = ranked
    .sort((a, b) => a.rank - b.rank)
    .slice(0, count)
    .map(({ index }) => {
      const sheet = ownSheet(packing, index)
      clearRow(packing, sheet, sheet.root)
      return { sheet, rank: sheet.root.length * sheet.root.width * (0.5 + random.next()) }
    })
  for (const { sheet } of cleared.sort((a, b) => a.rank - b.rank))
    fillBare(packing, sheet, sheet.root, WHOLE_SHEET, random, shouldStop)
  fillGaps(packing, random)
}
