import type { Solver } from '../linearProgram.ts'
import { forgetSolver, isBreakdown } from '../linearProgram.ts'
import type { ShouldStop } from '../problem.ts'
import { createRandom } from '../sheets/random.ts'
import { leastBars, leastFor } from './bounds.ts'
import { choose, findCandidates } from './choice.ts'
import type { Search } from './dive.ts'
import { complete, dive } from './dive.ts'
import { relax } from './generation.ts'
import { createIncumbent, priceOf } from './incumbent.ts'
import { createTable } from './knapsack.ts'
import { createMaster, everything } from './master.ts'
import type { Cut } from './pattern.ts'
import type { Certificate } from './pricing.ts'
import { createRounding } from './prices.ts'
import type { Task } from './task.ts'
import { exploreTree } from './tree.ts'

/** The best plan found and the price that no plan can go below, in the common unit of all prices. */
export interface Found {
  readonly cuts: readonly Cut[]
  readonly price: number
  readonly leastPrice: number
  /** Proven: no plan weighs less. */
  readonly leastWeight: number
}

type Progress = Pick<Search, 'task' | 'incumbent'>

/** Where a search stands: what is proven, and whether more search can help. */
interface Standing {
  leastPrice: number
  leastWeight: number
  /** The integer solver takes the best so far for the best there is. */
  settled: boolean
  certificate?: Certificate | undefined
}

/** Dives between two calls of the integer solver, and how long those may take. */
const DIVES = 6
const FIRST_NODES = 200
const SECONDS = [0.4, 0.8, 1]
/** Patterns above which a smaller number of bars at the same price is not looked for among them. */
const FEW_PATTERNS = 1000

const price = ({ task, incumbent }: Progress): number => priceOf(task, incumbent.plan().cuts)

/** The same price for every bar makes the number of bars all there is to save. */
const barPrice = (task: Task): number => task.bars[0]!.price

const weightsOf = (task: Task): Float64Array => Float64Array.from(task.bars, (bar) => bar.weight)

/** Bounds without a linear programme. */
function startStanding(task: Task): Standing {
  const bars = leastBars(task)
  const cheapest = task.bars.reduce((least, bar) => Math.min(least, bar.price), Infinity)
  const lightest = task.bars.reduce((least, bar) => Math.min(least, bar.weight), Infinity)
  const leastPrice = Math.max(
    bars * cheapest,
    leastFor(task, (bar) => bar.price),
  )
  const leastWeight = Math.max(
    bars * lightest,
    leastFor(task, (bar) => bar.weight),
  )
  return { leastPrice, leastWeight, settled: false }
}

const priceProven = (progress: Progress, standing: Standing): boolean =>
  price(progress) <= standing.leastPrice

const allProven = ({ incumbent }: Progress, standing: Standing): boolean =>
  incumbent.plan().weight <= standing.leastWeight

const asFarAsItGoes = (shouldStop: ShouldStop) => ({ rounds: Infinity, shouldStop, enough: () => false })

/** The bound on the price, from the relaxed problem with prices alone. */
function boundPrice(search: Search, standing: Standing): void {
  const { task, master, table, shouldStop } = search
  if (task.plain) return
  master.setCosts(Float64Array.from(task.bars, (bar) => bar.price))
  const relaxed = relax(task, master, table, everything(task), asFarAsItGoes(shouldStop))
  standing.leastPrice = Math.max(standing.leastPrice, Math.ceil(relaxed?.bound ?? 0))
  master.setCosts(weightsOf(task))
}

/** The bound on the weight, and what it says of the price. */
function boundWeight(search: Search, standing: Standing): void {
  const { task, master, table, shouldStop } = search
  const relaxed = relax(task, master, table, everything(task), asFarAsItGoes(shouldStop))
  standing.certificate = relaxed?.certificate
  standing.leastWeight = Math.max(standing.leastWeight, Math.ceil(relaxed?.bound ?? 0))
  if (task.plain) standing.leastPrice = Math.max(standing.leastPrice, standing.leastWeight * barPrice(task))
}

function roundPrice(progress: Progress, standing: Standing): void {
  if (progress.task.plain) return
  standing.leastPrice = createRounding(progress.task, price(progress))(standing.leastPrice)
}

/** Both ways to choose among the patterns of all better plans, when they are few. */
function chooseFor(solver: Solver, search: Search, standing: Standing, round: number): void {
  if (standing.certificate === undefined) return
  const patterns = findCandidates(search, standing.certificate)
  const forBars = priceProven(search, standing)
  if (patterns === undefined || (forBars && patterns.length > FEW_PATTERNS)) return
  const { task, incumbent, shouldStop } = search
  const nodes = FIRST_NODES * 4 ** round
  if (exploreTree(solver, task, incumbent, patterns, nodes, shouldStop)) {
    standing.leastWeight = incumbent.plan().weight
    return
  }
  if (shouldStop() || standing.settled || forBars) return
  const seconds = SECONDS[Math.min(round, SECONDS.length - 1)]!
  standing.settled = choose(solver, search, patterns, { seconds, seed: round, shouldStop })
}

/** Rounds in which a proof is tried after the integer solver has settled on a plan. */
const ROUNDS_FOR_PROOF = 4

function improve(solver: Solver, search: Search, standing: Standing): void {
  const done = (): boolean => search.shouldStop() || allProven(search, standing)
  for (let round = 0; !done(); round++) {
    if (priceProven(search, standing) && round > 0) return
    if (standing.settled && round >= ROUNDS_FOR_PROOF) return
    for (let turn = 0; turn < DIVES && !done() && !standing.settled; turn++)
      dive(search, round + turn === 0 ? 0 : NOISE)
    if (!done()) chooseFor(solver, search, standing, round)
    roundPrice(search, standing)
  }
}

const NOISE = 0.3

/** Searches with a solver until all is proven, nothing more is to be hoped for, or it is told to stop. */
function searchOn(solver: Solver, search: Search, standing: Standing): void {
  search.master.add(search.incumbent.plan().cuts.map((cut) => cut.pattern))
  boundPrice(search, standing)
  roundPrice(search, standing)
  boundWeight(search, standing)
  improve(solver, search, standing)
}

/** The same with a master problem of its own. A solver that breaks down is let go; what was found by then stands. */
function searchWith(solver: Solver, progress: Omit<Search, 'master' | 'table'>, standing: Standing): void {
  const { task } = progress
  const capacity = task.bars.reduce((most, bar) => Math.max(most, bar.capacity), 0)
  try {
    const master = createMaster(solver, task, weightsOf(task))
    try {
      searchOn(solver, { ...progress, master, table: createTable(task.sizes.length, capacity) }, standing)
    } finally {
      master.dispose()
    }
  } catch (error) {
    if (!isBreakdown(error)) throw error
    forgetSolver()
  }
}

const report = (progress: Progress, standing: Standing): Found => {
  const cost = price(progress)
  // The least weight has the least price: the weight puts the price first.
  const leastPrice = allProven(progress, standing) ? cost : Math.min(cost, standing.leastPrice)
  return { cuts: progress.incumbent.plan().cuts, price: cost, leastPrice, leastWeight: standing.leastWeight }
}

/** The best plan for a task that asks for something. `load` is called only when a solver is needed. */
export async function findPlan(
  task: Task,
  load: () => Promise<Solver>,
  shouldStop: ShouldStop,
  seed: number,
): Promise<Found> {
  const progress: Progress = { task, incumbent: createIncumbent(task) }
  const standing = startStanding(task)
  complete(progress, { remainder: everything(task), cuts: [] }, shouldStop)
  roundPrice(progress, standing)
  if (allProven(progress, standing) || shouldStop()) return report(progress, standing)
  const solver = await load()
  searchWith(solver, { ...progress, random: createRandom(seed), shouldStop }, standing)
  return report(progress, standing)
}
