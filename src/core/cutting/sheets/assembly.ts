import type { ShouldStop } from '../problem.ts'
import type { Axis } from './block.ts'
import { readCeiling } from './ceiling.ts'
import type { Job, SheetType } from './job.ts'
import { readOutside } from './outside.ts'
import type { Sizes } from './packing.ts'
import type { Pattern } from './pattern.ts'
import { RankedQueue } from './queue.ts'
import type { PatternTable } from './table.ts'

/** Two blocks side by side, or one part (`index` as in `Sizes`, `second` -1). */
interface Made {
  readonly length: number
  readonly width: number
  readonly value: number
  readonly rank: number
  readonly first: number
  readonly second: number
  readonly along: Axis
}

/**
 * The most valuable guillotine pattern of one sheet with limited copies, by building blocks bottom up, the most
 * promising first (Wang 1983; Viswanathan, Bagchi 1993): a block is promising by its value and the most that could be
 * made of the sheet around it. Weights must be whole numbers.
 */
export class Assembly {
  /** Parts of the best pattern found, and its value. */
  best = 0
  bestBlock = -1
  /** Proven: nothing is worth more than `best`. */
  done = false
  effort = 0
  private readonly job: Job
  private readonly sizes: Sizes
  private readonly sheet: SheetType
  private readonly table: PatternTable
  private readonly weights: ArrayLike<number>
  private readonly made: Made[] = []
  private counts: Uint16Array
  private readonly open = new RankedQueue()
  private readonly closed: number[] = []
  private readonly seen = new Map<string, number[]>()
  private outside: Float64Array | undefined

  /** `floor`: only patterns worth more are looked for. */
  constructor(
    job: Job,
    sizes: Sizes,
    sheet: SheetType,
    table: PatternTable,
    weights: ArrayLike<number>,
    floor: number,
  ) {
    this.job = job
    this.sizes = sizes
    this.sheet = sheet
    this.table = table
    this.weights = weights
    this.best = floor
    this.counts = new Uint16Array(job.parts.length * 1024)
  }

  /** Fills the tables and lays out the single parts; false when stopped before it was ready. */
  prepare(shouldStop: ShouldStop): boolean {
    const ceiling = readCeiling(this.job, this.table, this.weights)
    if (!this.table.fill(this.weights, shouldStop, ceiling)) return false
    this.outside = readOutside(this.table, shouldStop)
    if (this.outside === undefined) return false
    this.sizes.along.forEach((length, index) => {
      const width = this.sizes.across[index] as number
      const part = index >> 1
      if (length > this.sheet.length || width > this.sheet.width) return
      const id = this.offer(length, width, this.weights[part] as number, index, -1, 0)
      if (id >= 0) this.counts[id * this.job.parts.length + part] = 1
      if (id >= 0) this.accept(id)
    })
    return true
  }

  /** No pattern is worth more than this. */
  get bound(): number {
    return Math.max(this.best, this.open.highest)
  }

  /** How many blocks are kept. */
  get size(): number {
    return this.made.length
  }

  private offer(
    length: number,
    width: number,
    value: number,
    first: number,
    second: number,
    along: Axis,
  ): number {
    const cell = this.table.x.below(length) * this.table.y.at.length + this.table.y.below(width)
    const rank = value + ((this.outside as Float64Array)[cell] as number)
    if (rank <= this.best) return -1
    this.made.push({ length, width, value, rank, first, second, along })
    const size = this.job.parts.length
    if (this.made.length * size > this.counts.length) {
      const larger = new Uint16Array(this.counts.length * 2)
      larger.set(this.counts)
      this.counts = larger
    }
    return this.made.length - 1
  }

  private keyOf(id: number): string {
    const size = this.job.parts.length
    return String.fromCharCode(...this.counts.subarray(id * size, (id + 1) * size))
  }

  /** Queues a block unless another of the same parts is no larger. */
  private accept(id: number): void {
    const block = this.made[id] as Made
    const key = this.keyOf(id)
    const rivals = this.seen.get(key)
    for (const rival of rivals ?? []) {
      const other = this.made[rival] as Made
      if (other.length <= block.length && other.width <= block.width) {
        if (id === this.made.length - 1) this.made.pop()
        return
      }
    }
    if (rivals) rivals.push(id)
    else this.seen.set(key, [id])
    if (block.value > this.best) {
      this.best = block.value
      this.bestBlock = id
    }
    this.open.push(id, block.rank)
  }

  private sumCounts(first: number, second: number, to: number): boolean {
    const size = this.job.parts.length
    for (let part = 0; part < size; part++) {
      const sum = (this.counts[first * size + part] as number) + (this.counts[second * size + part] as number)
      if (sum > (this.job.parts[part]?.count as number)) return false
      this.counts[to * size + part] = sum
    }
    return true
  }

  private join(first: number, second: number, along: Axis): void {
    const a = this.made[first] as Made
    const b = this.made[second] as Made
    const length = along === 0 ? a.length + b.length : Math.max(a.length, b.length)
    const width = along === 1 ? a.width + b.width : Math.max(a.width, b.width)
    if (length > this.sheet.length || width > this.sheet.width) return
    const id = this.offer(length, width, a.value + b.value, first, second, along)
    if (id < 0) return
    if (this.sumCounts(first, second, id)) this.accept(id)
    else this.made.pop()
  }

  /** Builds on the most promising block; sets `done` when none is promising any more. */
  advance(): void {
    const id = this.open.highest > this.best ? this.open.pop() : undefined
    if (id === undefined) {
      this.done = true
      return
    }
    this.closed.push(id)
    this.effort += 40 * this.closed.length
    for (const other of this.closed) {
      this.join(id, other, 0)
      this.join(id, other, 1)
    }
  }

  /** The best pattern found above the floor, undefined when there is none. */
  pattern(id = this.bestBlock): Pattern | undefined {
    const made = this.made[id]
    if (made === undefined) return undefined
    const { first, second, along } = made
    if (second < 0) return { index: first }
    return { along, first: this.pattern(first), second: this.pattern(second) }
  }
}
