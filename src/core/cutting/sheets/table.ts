import type { ShouldStop } from '../problem.ts'
import type { Job, SheetType } from './job.ts'
import type { Sizes } from './packing.ts'
import type { Pattern } from './pattern.ts'
import { type PointKind, type Points, readPoints } from './points.ts'

/** A part as laid, at the points it takes; `index` as in `Sizes`. */
interface Piece {
  readonly index: number
  readonly x: number
  readonly y: number
}

/** Steps of the grid that stands in for too many points: coarse, as it only bounds. */
const GRID = 400

/**
 * The most that guillotine cuts can make of a rectangle of every size when every part may be made again and again
 * (Gilmore, Gomory 1966; Beasley 1985): exact where the points are, otherwise never too little.
 */
export class PatternTable {
  readonly x: Points
  readonly y: Points
  readonly exact: boolean
  /** Whether values are never too little: not so when a grid is too coarse to see a part at all. */
  readonly bounds: boolean
  /** Rough number of steps that one `fill` takes. */
  readonly effort: number
  /** Value of the rectangle up to every pair of points, the y index running fastest. */
  readonly values: Float64Array
  private readonly pieces: Piece[] = []
  private weights: ArrayLike<number> = []
  private most: Float64Array | undefined

  constructor(job: Job, sizes: Sizes, most: number, kind: PointKind, grid = GRID) {
    const longest = Math.max(...job.sheets.map((sheet) => sheet.length))
    const widest = Math.max(...job.sheets.map((sheet) => sheet.width))
    const lengths = job.sheets.map((sheet) => sheet.length)
    const widths = job.sheets.map((sheet) => sheet.width)
    this.x = readPoints([...sizes.along].filter(Number.isFinite), lengths, most, kind, grid)
    this.y = readPoints([...sizes.across].filter(Number.isFinite), widths, most, kind, grid)
    this.exact = this.x.exact && this.y.exact
    this.values = new Float64Array(this.x.at.length * this.y.at.length)
    this.effort = (this.values.length * (this.x.at.length + this.y.at.length)) / 4
    sizes.along.forEach((length, index) => {
      const width = sizes.across[index] as number
      if (length > longest || width > widest) return
      this.pieces.push({ index, x: this.pointOf(this.x, length), y: this.pointOf(this.y, width) })
    })
    this.bounds = this.pieces.every((piece) => piece.x > 0 && piece.y > 0)
  }

  /** The first point that is large enough for a size. */
  private pointOf(points: Points, size: number): number {
    const measure = points.measure(size)
    const below = points.below(measure)
    return (points.at[below] as number) < measure ? below + 1 : below
  }

  /**
   * Works out all values for the weights of the part types; false when it was stopped on the way. `most` holds what no
   * rectangle can pass for other reasons: with it the values stay bounds, but patterns cannot be read any more.
   */
  fill(weights: ArrayLike<number>, shouldStop: ShouldStop, most?: Float64Array): boolean {
    this.weights = weights
    this.most = most
    this.values.fill(0)
    const columns = this.y.at.length
    for (const { index, x, y } of this.pieces) {
      const cell = x * columns + y
      this.values[cell] = Math.max(this.values[cell] as number, weights[index >> 1] as number)
    }
    for (let row = 0; row < this.x.at.length; row++) {
      if (shouldStop()) return false
      if (row > 0) this.cutUpright(row)
      this.cutLevel(row)
    }
    return true
  }

  /** Cuts across x: two earlier rows side by side. */
  private cutUpright(row: number): void {
    const columns = this.y.at.length
    const values = this.values
    const to = row * columns
    for (let column = 0; column < columns; column++) {
      const before = values[to - columns + column] as number
      if (before > (values[to + column] as number)) values[to + column] = before
    }
    const rests = this.x.rest[row] as Int32Array
    for (let cut = 1; cut < rests.length; cut++) {
      const first = cut * columns
      const second = (rests[cut] as number) * columns
      for (let column = 0; column < columns; column++) {
        const value = (values[first + column] as number) + (values[second + column] as number)
        if (value > (values[to + column] as number)) values[to + column] = value
      }
    }
  }

  /** Cuts across y, within one row. */
  private cutLevel(row: number): void {
    const columns = this.y.at.length
    const values = this.values
    const to = row * columns
    for (let column = 1; column < columns; column++) {
      let best = Math.max(values[to + column] as number, values[to + column - 1] as number)
      const rests = this.y.rest[column] as Int32Array
      for (let cut = 1; cut < rests.length; cut++) {
        const value = (values[to + cut] as number) + (values[to + (rests[cut] as number)] as number)
        if (value > best) best = value
      }
      values[to + column] = this.most === undefined ? best : Math.min(best, this.most[to + column] as number)
    }
  }

  /** The most that a sheet can hold, by the last `fill`. */
  bestOf(sheet: SheetType): number {
    const x = this.x.below(this.x.measure(sheet.length))
    const y = this.y.below(this.y.measure(sheet.width))
    return this.values[x * this.y.at.length + y] as number
  }

  /** A best pattern of a sheet, undefined when nothing of any weight fits. Only from exact points without `most`. */
  patternOf(sheet: SheetType): Pattern | undefined {
    const x = this.x.below(this.x.measure(sheet.length))
    return this.trace(x, this.y.below(this.y.measure(sheet.width)))
  }

  private trace(x: number, y: number): Pattern | undefined {
    const value = this.values[x * this.y.at.length + y] as number
    if (value === 0) return undefined
    const piece = this.pieces.find(
      (candidate) => candidate.x <= x && candidate.y <= y && this.weights[candidate.index >> 1] === value,
    )
    if (piece) return { index: piece.index }
    const [one, two] = this.splitOf(x, y, value)
    const first = one && this.trace(one[0], one[1])
    if (two === undefined) return first
    return { along: one?.[1] === y ? 0 : 1, first, second: this.trace(two[0], two[1]) }
  }

  /** The two rectangles (or the one smaller) that have the value together. */
  private splitOf(x: number, y: number, value: number): [number, number][] {
    const columns = this.y.at.length
    const at = (row: number, column: number): number => this.values[row * columns + column] as number
    if (x > 0 && at(x - 1, y) === value) return [[x - 1, y]]
    if (y > 0 && at(x, y - 1) === value) return [[x, y - 1]]
    const restsX = this.x.rest[x] as Int32Array
    for (let cut = 1; cut < restsX.length; cut++)
      if (at(cut, y) + at(restsX[cut] as number, y) === value)
        return [
          [cut, y],
          [restsX[cut] as number, y],
        ]
    const restsY = this.y.rest[y] as Int32Array
    for (let cut = 1; cut < restsY.length; cut++)
      if (at(x, cut) + at(x, restsY[cut] as number) === value)
        return [
          [x, cut],
          [x, restsY[cut] as number],
        ]
    return []
  }
}
