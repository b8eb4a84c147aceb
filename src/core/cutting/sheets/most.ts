import type { SheetProblem, ShouldStop } from '../problem.ts'
import { Assembly } from './assembly.ts'
import { harvest } from './harvest.ts'
import { fitsSheet, type Job, readJob } from './job.ts'
import { markPacking, restorePacking } from './mark.ts'
import { emptyPacking, type OpenSheet, openSheet, type Packing, refreshGaps } from './packing.ts'
import { drawPattern, listPieces, type Pattern } from './pattern.ts'
import type { Random } from './random.ts'
import { PatternTable } from './table.ts'

/** Most points along one axis for which exact tables are made: for whole sheets, and for what surrounds a block. */
const POINTS = 2500
const OUTSIDE_POINTS = 1000

/** Steps that the first look takes. */
const QUICK = 2e7

/** How many blocks are kept before the building of blocks is given up. */
const BLOCKS = 400_000

/** The job of a question for the most: one of each sheet unless told otherwise, no more parts than could ever be laid. */
export const readMostJob = (problem: SheetProblem): Job => {
  const stock = problem.stock.map((sheet) => ({ ...sheet, onHand: sheet.onHand ?? 1 }))
  const job = readJob({ ...problem, stock })
  const room = job.sheets.reduce((sum, sheet) => sum + sheet.area * sheet.limit, 0)
  const parts = job.parts
    .filter((part) => job.sheets.some((sheet) => fitsSheet(part, sheet)))
    .map((part) => ({ ...part, count: Math.min(part.count, Math.floor(room / part.area)) }))
  return { ...job, parts }
}

const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b))

/** One unit of weight in worth, so that weights are whole and every sum of them is exact. */
const weightUnit = (job: Job): number => {
  const divisor = job.parts.map((part) => part.worth).reduce(commonDivisor, 0) || 1
  const total = job.parts.reduce((sum, part) => sum + part.count * (part.worth / divisor), 0)
  return divisor * Math.max(1, 2 ** Math.ceil(Math.log2(total / 2 ** 50)))
}

/** What is being found: the packing, the weights, and what is proven. */
export class MostSearch {
  readonly packing: Packing
  /** Worth that no layout can pass. */
  upperBound = Number.POSITIVE_INFINITY
  private readonly job: Job
  private readonly unit: number
  /** Whole; rounded up where the worth is not a whole multiple of the unit. */
  private readonly weights: Float64Array
  private readonly table: PatternTable
  private readonly random: Random
  private bestWorth = -1

  constructor(job: Job, random: Random) {
    this.job = job
    this.random = random
    this.unit = weightUnit(job)
    this.weights = Float64Array.from(job.parts, (part) => Math.ceil(part.worth / this.unit))
    const dearest = Math.max(...job.parts.map((part) => part.worth / part.area))
    const largest = Math.max(...job.sheets.map((sheet) => sheet.area))
    this.packing = emptyPacking(
      job,
      Float64Array.from(job.parts, (part) => part.worth / dearest / largest),
    )
    this.table = new PatternTable(job, this.packing.sizes, POINTS, 'raster')
    this.lower(this.areaBound())
  }

  private areaBound(): number {
    const room = this.job.sheets.reduce((sum, sheet) => sum + sheet.area * sheet.limit, 0)
    const dense = [...this.job.parts].sort((a, b) => b.worth / b.area - a.worth / a.area)
    let left = room
    let worth = 0
    for (const part of dense) {
      const share = Math.min(1, left / (part.area * part.count))
      worth += share * part.worth * part.count
      left -= share * part.area * part.count
    }
    return worth * (1 + 1e-12)
  }

  /** Worth of what is laid. */
  get worth(): number {
    return this.job.parts.reduce(
      (sum, part, index) => sum + part.worth * (part.count - (this.packing.left[index] as number)),
      0,
    )
  }

  private get proven(): boolean {
    return this.bestWorth >= this.upperBound
  }

  private lower(bound: number): void {
    this.upperBound = Math.min(this.upperBound, Math.floor(bound / this.unit) * this.unit)
  }

  /** Puts a pattern on a fresh sheet of the packing. */
  private layPattern(type: number, pattern: Pattern | undefined): void {
    const sheet = openSheet(this.packing, type) as { -readonly [key in keyof OpenSheet]: OpenSheet[key] }
    sheet.root = drawPattern(pattern, this.job.sheets[type] as Job['sheets'][number], this.packing.sizes)
    refreshGaps(this.packing.sizes, sheet)
    for (const index of listPieces(pattern)) {
      const part = index >> 1
      sheet.used += this.packing.sizes.area[part] as number
      this.packing.left[part] = (this.packing.left[part] as number) - 1
      this.packing.leftCount--
      this.packing.leftWeight -= this.packing.weight[part] as number
    }
  }

  /** Every sheet at its unlimited best: the answer where there are parts enough, a bound in any case. */
  private tryUnlimited(shouldStop: ShouldStop): boolean {
    if (!this.table.fill(this.weights, shouldStop)) return false
    const bound = this.job.sheets.reduce((sum, sheet) => sum + sheet.limit * this.table.bestOf(sheet), 0)
    if (this.table.bounds) this.lower(bound * this.unit)
    if (!this.table.exact) return false
    const before = markPacking(this.packing)
    for (let type = this.packing.sheets.length; type > 0; type--) this.packing.sheets.pop()
    this.packing.opened.fill(0)
    this.packing.left.set(this.job.parts.map((part) => part.count))
    this.packing.leftCount = this.job.parts.reduce((sum, part) => sum + part.count, 0)
    this.packing.leftWeight = this.job.parts.reduce(
      (sum, part, index) => sum + part.count * (this.packing.weight[index] as number),
      0,
    )
    this.job.sheets.forEach((sheet, type) => {
      const pattern = this.table.patternOf(sheet)
      for (let turn = 0; turn < sheet.limit; turn++) this.layPattern(type, pattern)
    })
    if (this.packing.left.every((left) => left >= 0) && this.worth > this.bestWorth) {
      this.bestWorth = this.worth
      return true
    }
    restorePacking(this.packing, before)
    return false
  }

  /** Looks until proven or stopped. */
  run(shouldStop: ShouldStop): void {
    const cheap = this.table.effort < QUICK
    if (cheap && this.tryUnlimited(shouldStop)) return
    this.quickHarvest(shouldStop)
    if (this.proven || shouldStop() || (!cheap && this.tryUnlimited(shouldStop))) return
    const single = this.job.sheets.length === 1 && this.job.sheets[0]?.limit === 1
    const assembly = single ? this.assemble() : undefined
    const ready = assembly?.prepare(shouldStop) ?? false
    this.harvestBeside(ready ? assembly : undefined, shouldStop)
  }

  private assemble(): Assembly | undefined {
    const sheet = this.job.sheets[0] as Job['sheets'][number]
    const table = new PatternTable(this.job, this.packing.sizes, OUTSIDE_POINTS, 'sums')
    if (!table.exact) return undefined
    return new Assembly(this.job, this.packing.sizes, sheet, table, this.weights, this.bestWorth / this.unit)
  }

  private quickHarvest(shouldStop: ShouldStop): void {
    harvest(
      this.packing,
      this.random,
      () => this.proven || this.packing.effort > QUICK || shouldStop(),
      () => this.hear(),
    )
  }

  private hear(): void {
    this.bestWorth = Math.max(this.bestWorth, this.worth)
  }

  /** Ruin and recreate, and the building of blocks, by turns; each tells the other what it must beat. */
  private harvestBeside(assembly: Assembly | undefined, shouldStop: ShouldStop): void {
    let building = assembly
    const pause = (): boolean => {
      if (this.proven || shouldStop()) return true
      if (building === undefined) return false
      building.best = Math.max(building.best, this.bestWorth / this.unit)
      while (!building.done && building.effort < this.packing.effort * 2 && !shouldStop()) building.advance()
      this.lower(building.bound * this.unit)
      if (building.done || building.bound * this.unit <= this.bestWorth) return true
      if (building.size > BLOCKS) building = undefined
      return false
    }
    harvest(this.packing, this.random, pause, () => this.hear())
    this.take(assembly)
  }

  private take(assembly: Assembly | undefined): void {
    const pattern = assembly?.pattern()
    if (assembly === undefined || pattern === undefined || assembly.best * this.unit <= this.worth) return
    const all = emptyPacking(this.job, this.packing.weight)
    restorePacking(this.packing, markPacking(all))
    this.layPattern(0, pattern)
    this.bestWorth = this.worth
  }
}
