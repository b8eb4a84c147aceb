import { relax } from './lengths/generation.ts'
import { createIncumbent, priceOf } from './lengths/incumbent.ts'
import type { Search } from './lengths/dive.ts'
import { complete, dive, roundWeight } from './lengths/dive.ts'
import { createTable } from './lengths/knapsack.ts'
import { layoutsOf } from './lengths/layouts.ts'
import { createMaster, everything } from './lengths/master.ts'
import type { Cut } from './lengths/pattern.ts'
import { takeFrom, trimPattern } from './lengths/pattern.ts'
import type { Task } from './lengths/task.ts'
import { findTooLong, reduceProblem } from './lengths/task.ts'
import { loadSolver } from './linearProgram.ts'
import type { LengthLayout, LengthProblem, Outcome, ShouldStop } from './problem.ts'
import { createRandom } from './sheets/random.ts'

export interface LengthSearch {
  readonly shouldStop: ShouldStop
  readonly seed?: number | undefined
}

function exactly(task: Task, cuts: readonly Cut[]): Cut[] {
  const demand = task.demand.slice()
  const exact: Cut[] = []
  for (const { pattern, times } of cuts)
    for (let turn = 0; turn < times; turn++) {
      const trimmed = trimPattern(pattern, demand)
      if (trimmed === undefined) continue
      takeFrom(demand, trimmed, 1)
      exact.push({ pattern: trimmed, times: 1 })
    }
  return exact
}

export async function cutLengths(
  problem: LengthProblem,
  { shouldStop, seed = 1 }: LengthSearch,
): Promise<Outcome<LengthLayout>> {
  const tooLong = findTooLong(problem)
  if (tooLong !== undefined)
    return { status: 'impossible', part: tooLong.id, reason: 'longer than any stock' }
  const task = reduceProblem(problem)
  const solver = await loadSolver()
  const costs = Float64Array.from(task.bars, (bar) => (task.plain ? 1 : bar.price))
  const master = createMaster(solver, task, costs)
  const incumbent = createIncumbent(task)
  const capacity = Math.max(...task.bars.map((bar) => bar.capacity))
  const search: Search = {
    task,
    master,
    table: createTable(task.sizes.length, capacity),
    incumbent,
    random: createRandom(seed),
    shouldStop,
  }
  complete(search, { remainder: everything(task), cuts: [] })
  master.add(incumbent.plan().cuts.map((cut) => cut.pattern))
  const root = relax(task, master, search.table, everything(task), {
    rounds: Infinity,
    shouldStop,
    enough: (bound, value) => Math.ceil(bound) >= roundWeight(value) && false,
  })
  let lower = root === undefined ? 0 : Math.ceil(root.bound)
  const best = () => {
    const c = incumbent.plan().cuts
    return task.plain ? incumbent.plan().weight : priceOf(task, c)
  }
  if (!task.plain) {
    master.setCosts(Float64Array.from(task.bars, (bar) => bar.weight))
    relax(task, master, search.table, everything(task), { rounds: Infinity, shouldStop, enough: () => false })
  }
  let dives = 0
  while (!shouldStop() && best() > lower) {
    dive(search, dives++ === 0 ? 0 : 0.3)
  }
  master.dispose()
  const cuts = exactly(task, incumbent.plan().cuts)
  const unit = task.plain ? problem.stock[0]!.price : task.cent
  const layouts = layoutsOf(problem, task, cuts)
  return {
    status: best() <= lower ? 'optimal' : 'stopped',
    layouts,
    cost: best() * unit,
    pieces: layouts.reduce((s, l) => s + l.count, 0),
    lowerBound: lower * unit,
    ...{ dives, root: root?.value },
  }
}
