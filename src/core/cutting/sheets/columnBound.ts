import type { Solver } from '../linearProgram.ts'
import type { ShouldStop } from '../problem.ts'
import type { Block } from './block.ts'
import { coverCost } from './cover.ts'
import type { Job } from './job.ts'
import { Master } from './master.ts'
import type { OpenSheet, Sizes } from './packing.ts'
import { listPieces } from './pattern.ts'
import { PatternTable } from './table.ts'

/** Whole weights up to this for the dearest part: sums of them are exact. */
const FINENESS = 1e7

/** The most rows that the linear programme takes on. */
const MOST_ROWS = 300

/**
 * A lower bound by column generation: weights for the parts are drawn from a linear programme over patterns, and what
 * a sheet can hold of them is worked out by the exact guillotine table. Any weights give a proven bound (Farley 1990);
 * the programme only finds good ones, so its rounding errors cannot make the bound wrong.
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
  /** Rough number of steps that one round takes. */
  private readonly round: number
  private centre: Float64Array
  private pull = 0.8

  constructor(job: Job, sizes: Sizes, most: number, solver: Solver) {
    this.job = job
    this.table = new PatternTable(job, sizes, most, 'raster')
    this.master = new Master(solver, job)
    this.centre = Float64Array.from(job.parts, (part) => part.area)
    const rows = job.parts.length + job.sheets.length
    this.round = this.table.effort + rows ** 2 * 20
    this.done = !this.table.exact || rows > MOST_ROWS
  }

  /** Learns the patterns of sheets that a search has filled. */
  learn(sheets: readonly OpenSheet[]): void {
    const read = (block: Block, parts: number[]): number[] => {
      if (block.part >= 0) parts.push(block.part)
      for (const child of block.children) read(child, parts)
      return parts
    }
    for (const sheet of sheets) this.master.add(sheet.type, read(sheet.root, []))
  }

  private bound(weights: Float64Array): number {
    const demand = this.job.parts.reduce(
      (sum, part, index) => sum + part.count * (weights[index] as number),
      0,
    )
    const capacity = this.job.sheets.map((sheet) => this.table.bestOf(sheet))
    return coverCost(this.job.sheets, capacity, demand, this.value)
  }

  private scaled(prices: Float64Array): Float64Array {
    // All are 0 where sheets that cost nothing hold every part.
    const largest = prices.reduce((most, price) => Math.max(most, price), 0) || 1
    return prices.map((price) => Math.floor(Math.max(0, (price / largest) * FINENESS)))
  }

  /** One round: solve, price, add. Weights are drawn towards the best so far, which steadies them (Wentges 1997). */
  advance(shouldStop: ShouldStop): void {
    if (this.done) return
    const prices = this.master.prices()
    this.done = prices === undefined
    if (prices === undefined) return
    const target = this.scaled(prices)
    const near = this.scaled(this.centre)
    const mixed = target.map((value, index) =>
      Math.floor(this.pull * (near[index] as number) + (1 - this.pull) * value),
    )
    this.effort += this.round
    if (!this.table.fill(mixed, shouldStop)) return
    const bound = this.bound(mixed)
    if (bound > this.value || this.value === 0) {
      this.value = Math.max(this.value, bound)
      this.centre = mixed
    }
    let added = false
    this.job.sheets.forEach((sheet, type) => {
      const parts = listPieces(this.table.patternOf(sheet)).map((index) => index >> 1)
      if (parts.length > 0) added = this.master.add(type, parts) || added
    })
    if (added) return
    if (this.pull === 0) this.done = true
    this.pull = this.pull < 0.1 ? 0 : this.pull / 2
  }

  /** Frees the solver's memory. */
  dispose(): void {
    this.master.dispose()
  }
}
