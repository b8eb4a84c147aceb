import type { Solver } from '../linearProgram.ts'
import type { ShouldStop } from '../problem.ts'
import { ColumnBound } from './columnBound.ts'
import { isLarge } from './fill/reach.ts'
import { type Mark, markPacking } from './mark.ts'
import type { Packing } from './packing.ts'
import { polish } from './polish.ts'
import type { Random } from './random.ts'

/** Share of the search's effort that goes into the bound by column generation, and into saw settings and offcuts. */
const BOUND_SHARE = 0.5
const POLISH_SHARE = 0.1

/** The same of polishing for large jobs, whose steps of filling are counted larger than they are. */
const LARGE_POLISH_SHARE = 0.002

/** What both ways of lowering the cost share: the best packing so far and the bound. */
export class Descent {
  readonly packing: Packing
  readonly random: Random
  readonly shouldStop: ShouldStop
  best: Mark
  private readonly scale: number
  private readonly columns: ColumnBound
  private readonly polishShare: number
  private polished = 0

  constructor(packing: Packing, scale: number, random: Random, shouldStop: ShouldStop, solver: Solver) {
    this.packing = packing
    this.scale = scale
    this.random = random
    this.shouldStop = shouldStop
    this.best = markPacking(packing)
    this.polishShare = isLarge(packing.job) ? LARGE_POLISH_SHARE : POLISH_SHARE
    this.columns = new ColumnBound(packing.job, packing.sizes, 700, solver)
  }

  /** No layout costs less (cents). */
  get bound(): number {
    return Math.max(this.scale, this.columns.value)
  }

  /** Proven: nothing costs less than the best. */
  get met(): boolean {
    return this.best.leftCount === 0 && this.best.cost <= this.bound
  }

  /** Whether there is nothing left to do, or no time. */
  get done(): boolean {
    return this.met || this.shouldStop()
  }

  /** Gives the bound its share of the time; whether to stop. */
  readonly pause = (): boolean => {
    if (this.columns.effort <= this.packing.effort * BOUND_SHARE) this.columns.advance(this.shouldStop)
    return this.done
  }

  /** Tells the bound of the sheets of the best packing. */
  learn(): void {
    this.columns.learn(this.best.sheets)
  }

  /** Keeps the packing when it is better than the best, and tells whether it was. */
  keep(): boolean {
    const { packing, best } = this
    if (packing.leftCount > 0 || (best.leftCount === 0 && packing.cost >= best.cost)) return false
    this.columns.learn(packing.sheets)
    const before = packing.effort
    polish(packing, before * this.polishShare - this.polished, this.random, this.shouldStop)
    this.polished += packing.effort - before
    this.best = markPacking(packing)
    return true
  }

  /** Frees the solver's memory. */
  dispose(): void {
    this.columns.dispose()
  }
}
