import type { Axis } from '../block.ts'
import type { Job } from '../job.ts'
import { listStacks, type Stack } from './stack.ts'
import { listTiles, type Pool, readTiles, type Tile, type TileList } from './tile.ts'

/** How much narrower than its row a stack may be. */
const SLACK = 0.05

/** Into how many pages the widths of rows are divided: rows of about the same width share their stacks. */
const PAGES = 250

/** A book serves until its pool has come down to this share of its parts; then the stacks of what is left are listed. */
const LEAST_SHARE = 0.5

/** The stacks of a pool by the width of the row, listed when first asked for. */
export class StackBook {
  private readonly list: TileList
  private readonly page: number
  private readonly pages = new Map<number, readonly Stack[]>()
  /** Those that are one part long, the narrowest first. */
  readonly single: readonly Tile[]

  constructor(pool: Pool, job: Job, axis: Axis) {
    const long = Math.max(...job.sheets.map((sheet) => sheet.length))
    const wide = Math.max(...job.sheets.map((sheet) => sheet.width))
    const room = axis === 0 ? { length: long, width: wide } : { length: wide, width: long }
    const tiles = listTiles(pool, room, axis)
    this.list = readTiles(tiles)
    this.page = room.width / PAGES
    this.single = tiles.filter((tile) => tile.columns === 1)
  }

  /** How many tiles its stacks are made of. */
  get size(): number {
    return this.list.tiles.length
  }

  /** The densest stacks for a row of some width, the densest first; some are a little wider than the row. */
  near(width: number): readonly Stack[] {
    const number = Math.floor(width / this.page)
    const known = this.pages.get(number)
    if (known !== undefined) return known
    // A little more than the page, lest an error of floating point lose the stacks of just this width.
    const most = (number + 1) * this.page + 1e-6
    const stacks = listStacks(this.list, number * this.page * (1 - SLACK), most)
    this.pages.set(number, stacks)
    return stacks
  }
}

const countAll = (left: Int32Array): number => left.reduce((sum, count) => sum + count, 0)

/** The books of a job, one for rows along either axis, made anew when a pool has other parts or far fewer. */
export class StackBooks {
  private readonly job: Job
  private books: (StackBook | undefined)[] = []
  private left = new Int32Array(0)
  private count = 0

  constructor(job: Job) {
    this.job = job
  }

  private serves({ left }: Pool): boolean {
    return (
      countAll(left) >= LEAST_SHARE * this.count && left.every((count, part) => count <= this.left[part]!)
    )
  }

  /** The book for a pool and rows along an axis. Pools must be of one job, and must count its parts alike. */
  open(pool: Pool, axis: Axis): StackBook {
    if (!this.serves(pool)) {
      this.books = []
      this.left = pool.left.slice()
      this.count = countAll(pool.left)
    }
    const book = this.books[axis] ?? new StackBook({ ...pool, left: this.left }, this.job, axis)
    this.books[axis] = book
    return book
  }
}
