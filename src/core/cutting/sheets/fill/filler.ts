import type { ShouldStop } from '../../problem.ts'
import type { Block } from '../block.ts'
import { type OpenSheet, openSheet, ownSheet, type Packing, refreshGaps, takePart } from '../packing.ts'
import { listPieces, putPattern } from '../pattern.ts'
import type { Random } from '../random.ts'
import { cheapFirst, PART_KEYS, recreate } from '../recreate.ts'
import { clearRow } from '../ruin.ts'
import { type Effort, fillPattern, fillRoom } from './roomFill.ts'
import { StackBooks } from './stackBook.ts'

/** How much more than its area a part as large as the largest counts, for large parts are hard to place later. */
const LARGE_BONUS = 0.05

/** Rough steps for a row of stacks. */
const ROW_STEPS = 20_000

const NEW_SHEET: Effort = { turns: 3, tries: 32 }
const OLD_SHEET: Effort = { turns: 3, tries: 24 }
const ONE_ROW: Effort = { turns: 1, tries: 3 }

/** By how much of a sheet a fuller one may pass for an emptier one where the emptiest are drawn. */
const FILL_NOISE = 0.01

const listRows = (block: Block, rows: Block[]): Block[] => {
  if (block.part >= 0) return rows
  if (block.children.length > 0) rows.push(block)
  for (const child of block.children) listRows(child, rows)
  return rows
}

/** Fills sheets, or rows of them, from the parts of a packing that are without a place. */
export class Filler {
  readonly packing: Packing
  readonly random: Random
  private readonly books: StackBooks
  private readonly worth: Float64Array

  constructor(packing: Packing, random: Random) {
    this.packing = packing
    this.random = random
    this.books = new StackBooks(packing.job)
    const { area } = packing.sizes
    const largest = area.reduce((one, other) => Math.max(one, other), 0)
    this.worth = area.map((size) => size * (1 + LARGE_BONUS * Math.sqrt(size / largest)))
  }

  /** Fills a bare row of an own sheet. */
  private fillBare(sheet: OpenSheet, row: Block, effort: Effort, shouldStop: ShouldStop): void {
    const { packing } = this
    const pool = { sizes: packing.sizes, left: packing.left, worth: this.worth }
    const fill = fillRoom(pool, row, this.books, effort, this.random, shouldStop)
    const pattern = fillPattern(fill)
    putPattern(row, pattern, packing.sizes)
    for (const index of listPieces(pattern)) takePart(packing, sheet, index >> 1)
    refreshGaps(packing.sizes, sheet)
    packing.effort += ROW_STEPS * fill.looks
  }

  /** The parts without a place go where there is a gap; no sheet is bought for them. */
  private fillGaps(): void {
    const { packing, random } = this
    const taste = { blink: 0, power: 0 as const }
    const key = PART_KEYS[random.below(PART_KEYS.length)]!
    recreate(packing, { key, noise: 0.1, taste, budget: packing.cost, choose: cheapFirst(0.3) }, random)
  }

  /** Opens sheets of these types one after another and fills each; stopped, it opens fewer. */
  openFilled(types: readonly number[], shouldStop: ShouldStop): void {
    for (const type of types) {
      if (shouldStop()) return
      const sheet = openSheet(this.packing, type)
      this.fillBare(sheet, sheet.root, NEW_SHEET, shouldStop)
    }
    this.fillGaps()
  }

  private fillOf(index: number): number {
    const sheet = this.packing.sheets[index]!
    return sheet.used / this.packing.job.sheets[sheet.type]!.area
  }

  /** The emptiest of a few sheets drawn at random. */
  private drawSheet(draws: number): number {
    const { sheets } = this.packing
    let drawn = this.random.below(sheets.length)
    for (let turn = 1; turn < draws; turn++) {
      const other = this.random.below(sheets.length)
      if (this.fillOf(other) < this.fillOf(drawn)) drawn = other
    }
    return drawn
  }

  /** Fills cleared rows one after another, small ones rather first. */
  private fillCleared(cleared: ReadonlyMap<OpenSheet, Block>, effort: Effort, shouldStop: ShouldStop): void {
    const ranked = [...cleared].map(([sheet, row]) => ({
      sheet,
      row,
      rank: row.length * row.width * (0.5 + this.random.next()),
    }))
    for (const { sheet, row } of ranked.sort((a, b) => a.rank - b.rank))
      this.fillBare(sheet, row, effort, shouldStop)
    this.fillGaps()
  }

  /** Clears a row, the whole sheet or a part of it, on each of a few sheets, and fills them anew from all their parts. */
  refillRows(count: number, shouldStop: ShouldStop): void {
    const { packing, random } = this
    const cleared = new Map<OpenSheet, Block>()
    for (let turn = 0; turn < count; turn++) {
      const sheet = ownSheet(packing, this.drawSheet(turn === 0 ? 5 : 2))
      const rows = listRows(sheet.root, [])
      // Rows are listed from the whole sheet inwards: large ones come up more often.
      const row = rows[random.below(1 + random.below(rows.length))]
      if (row === undefined || cleared.has(sheet)) continue
      clearRow(packing, sheet, row)
      cleared.set(sheet, row)
    }
    this.fillCleared(cleared, ONE_ROW, shouldStop)
  }

  /** Clears about the emptiest sheets and fills them anew from all their parts. */
  refillSheets(count: number, shouldStop: ShouldStop): void {
    const { packing, random } = this
    const ranked = packing.sheets.map((_, index) => ({
      index,
      rank: this.fillOf(index) + FILL_NOISE * random.next(),
    }))
    const cleared = new Map<OpenSheet, Block>()
    for (const { index } of ranked.sort((a, b) => a.rank - b.rank).slice(0, count)) {
      const sheet = ownSheet(packing, index)
      clearRow(packing, sheet, sheet.root)
      cleared.set(sheet, sheet.root)
    }
    this.fillCleared(cleared, OLD_SHEET, shouldStop)
  }
}
