import type { ShouldStop } from '../problem.ts'
import type { Block } from './block.ts'
import { coverCost } from './cover.ts'
import type { Job } from './job.ts'
import { type Column, Master } from './master.ts'
import type { OpenSheet, Sizes } from './packing.ts'
import { listPieces } from './pattern.ts'
import { PatternTable } from './table.ts'

/** Whole weights up to this per cent of the dearest sheet: sums of them are exact. */
const FINENESS = 1e7

/** The most rows that the linear programme takes on. */
const MOST_ROWS = 300

/**
 * A lower bound by column generation: weights for the parts are drawn from a linear programme over patterns, and what
 * a sheet can hold of them is worked out by the exact guillotine table. Any weights give a proven bound (Farley 1990);
 * the programme only finds good ones.
 */
export class ColumnBound {
  /** Cents; 0 until the first advance. */
  value = 0
  /** Nothing more can come of it. */
  done = false
  /** Rough steps spent so far. */
  effort = 0
  private readonly job: Job
  private readonly master: Master
  private readonly table: PatternTable
  private readonly known = new Set<string>()
  private centre: Float64Array
  private pull = 0.8

  constructor(job: Job, sizes: Sizes, most: number) {
    this.job = job
    this.table = new PatternTable(job, sizes, most, 'raster')
    const limited = job.sheets.filter((sheet) => Number.isFinite(sheet.limit))
    const demand = [...job.parts.map((part) => part.count), ...limited.map((sheet) => -sheet.limit)]
    this.master = new Master(demand, 4 * Math.max(1, ...job.sheets.map((sheet) => sheet.price)))
    this.centre = Float64Array.from(job.parts, (part) => part.area)
    this.done = !this.table.exact || demand.length > MOST_ROWS
  }

  private columnOf(type: number, counts: Map<number, number>): Column {
    const sheet = this.job.sheets[type] as Job['sheets'][number]
    const rows = [...counts.keys()]
    const amounts = [...counts.values()]
    if (Number.isFinite(sheet.limit)) {
      const before = this.job.sheets.slice(0, type).filter((other) => Number.isFinite(other.limit)).length
      rows.push(this.job.parts.length + before)
      amounts.push(-1)
    }
    return { cost: sheet.price, rows, amounts }
  }

  private add(type: number, parts: readonly number[]): boolean {
    const counts = new Map<number, number>()
    for (const part of parts) counts.set(part, (counts.get(part) ?? 0) + 1)
    const key = `${type}:${[...counts].sort((a, b) => a[0] - b[0]).join(';')}`
    if (this.known.has(key)) return false
    this.known.add(key)
    this.master.columns.push(this.columnOf(type, counts))
    return true
  }

  /** Learns the patterns of sheets that a search has filled. */
  learn(sheets: readonly OpenSheet[]): void {
    const read = (block: Block, parts: number[]): number[] => {
      if (block.part >= 0) parts.push(block.part)
      for (const child of block.children) read(child, parts)
      return parts
    }
    for (const sheet of sheets) this.add(sheet.type, read(sheet.root, []))
  }

  private bound(weights: Float64Array): number {
    const demand = this.job.parts.reduce(
      (sum, part, index) => sum + part.count * (weights[index] as number),
      0,
    )
    const capacity = this.job.sheets.map((sheet) => this.table.bestOf(sheet))
    return coverCost(this.job.sheets, capacity, demand, this.value)
  }

  private scaled(prices: ArrayLike<number>): Float64Array {
    let largest = 0
    for (let index = 0; index < this.centre.length; index++)
      largest = Math.max(largest, prices[index] as number)
    return this.centre.map((_, index) =>
      Math.floor(Math.max(0, ((prices[index] as number) / largest) * FINENESS)),
    )
  }

  /** One round: solve, price, add. Weights are drawn towards the best so far, which steadies them (Wentges 1997). */
  advance(shouldStop: ShouldStop): void {
    if (this.done) return
    this.master.solve(400)
    const target = this.scaled(this.master.prices)
    const near = this.scaled(this.centre)
    const mixed = target.map((value, index) =>
      Math.floor(this.pull * (near[index] as number) + (1 - this.pull) * value),
    )
    this.effort += this.table.effort + this.master.prices.length ** 2 * 20
    if (!this.table.fill(mixed, shouldStop)) return
    const bound = this.bound(mixed)
    if (bound > this.value || this.value === 0) {
      this.value = Math.max(this.value, bound)
      this.centre = mixed
    }
    let added = false
    this.job.sheets.forEach((sheet, type) => {
      const parts = listPieces(this.table.patternOf(sheet)).map((index) => index >> 1)
      if (parts.length > 0) added = this.add(type, parts) || added
    })
    if (added) return
    if (this.pull === 0) this.done = true
    this.pull = this.pull < 0.1 ? 0 : this.pull / 2
  }
}
