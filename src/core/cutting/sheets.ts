import { loadSolver, type Solver } from './linearProgram.ts'
import type { Outcome, SheetLayout, SheetProblem, ShouldStop } from './problem.ts'
import { scaleBound } from './sheets/bound.ts'
import { improve } from './sheets/improve.ts'
import { fitsSheet, type Job, type PartType, readJob } from './sheets/job.ts'
import { MostSearch, readMostJob } from './sheets/most.ts'
import { readLayouts } from './sheets/naming.ts'
import { emptyPacking, type Packing } from './sheets/packing.ts'
import { createRandom } from './sheets/random.ts'
import { startPacking } from './sheets/start.ts'

/** When to stop, and the seed of the search's random numbers (0 without one). */
export interface SheetSearch {
  readonly shouldStop: ShouldStop
  readonly seed?: number | undefined
}

/** `load` gives the solver of linear programmes; the one shared in this thread by default. */
type CostSearch = SheetSearch & { readonly load?: (() => Promise<Solver>) | undefined }

type Impossible = Extract<Outcome<SheetLayout>, { status: 'impossible' }>

const nameOf = (part: PartType | undefined): string => part?.sources[0]?.id ?? ''

const tooLarge = (job: Job): Impossible | undefined => {
  const part = job.parts.find((candidate) => !job.sheets.some((sheet) => fitsSheet(candidate, sheet)))
  if (part === undefined) return undefined
  const turning = part.turnable ? ', even turned' : ''
  const trimmed = job.sheets.some((sheet) => sheet.trim > 0) ? ' after trim' : ''
  const reason = job.sheets.length === 0 ? 'there is no sheet' : `larger than any sheet${trimmed}${turning}`
  return { status: 'impossible', part: nameOf(part), reason, proven: true }
}

const runsOut = (packing: Packing, proven: boolean): Impossible => {
  const part = packing.job.parts.find((_, index) => (packing.left[index] as number) > 0)
  const reason = proven
    ? 'the sheets on hand are too few for all parts'
    : 'the sheets on hand ran out: no layout with all parts was found'
  return { status: 'impossible', part: nameOf(part), reason, proven }
}

/**
 * Lays the parts on sheets by guillotine cuts at the least cost. Works until the cost is proven least or `shouldStop`
 * says so, and answers at once with the best so far; deterministic for a seed and a number of calls of `shouldStop`.
 * `impossible` names a part that is larger than any sheet, or that found no place on the stock on hand. Asynchronous
 * because the solver is loaded when first needed; from then on it runs through.
 */
export const cutSheets = async (problem: SheetProblem, search: CostSearch): Promise<Outcome<SheetLayout>> => {
  const job = readJob(problem)
  const large = tooLarge(job)
  if (large) return large
  if (job.parts.length === 0) return { status: 'optimal', layouts: [], cost: 0, pieces: 0, lowerBound: 0 }
  const random = createRandom(search.seed ?? 0)
  const packing = emptyPacking(job)
  startPacking(packing, random, search.shouldStop)
  const scale = scaleBound(job, 30, search.shouldStop)
  if (scale === Number.POSITIVE_INFINITY) return runsOut(packing, true)
  const solver = await (search.load ?? loadSolver)()
  const bound = improve(packing, scale, random, search.shouldStop, solver)
  if (packing.leftCount > 0) return runsOut(packing, false)
  // A sheet that costs nothing may stay open without a part; it is not taken.
  const layouts = readLayouts(job, packing.sheets)
  return {
    status: packing.cost <= bound ? 'optimal' : 'stopped',
    layouts,
    cost: packing.cost,
    pieces: layouts.reduce((sum, { count }) => sum + count, 0),
    lowerBound: bound,
  }
}

/** What the most comes to: `worth` laid, and `upperBound`, which no layout can pass; `optimal` when they meet. */
export interface MostFromSheets {
  readonly status: 'optimal' | 'stopped'
  readonly layouts: readonly SheetLayout[]
  readonly worth: number
  readonly upperBound: number
}

/**
 * The most worth of parts that one of each sheet yields (or `onHand` of them); a part's `count` is how many may be cut,
 * and may be huge. Parts that fit no sheet are passed over. Works until proven or until `shouldStop` says so.
 */
export const mostFromSheets = (problem: SheetProblem, search: SheetSearch): MostFromSheets => {
  const job = readMostJob(problem)
  if (job.parts.length === 0) return { status: 'optimal', layouts: [], worth: 0, upperBound: 0 }
  const most = new MostSearch(job, createRandom(search.seed ?? 0))
  most.run(search.shouldStop)
  const { worth } = most
  const upperBound = Math.max(worth, most.upperBound)
  return {
    status: worth >= upperBound ? 'optimal' : 'stopped',
    layouts: readLayouts(job, most.packing.sheets),
    worth,
    upperBound,
  }
}
