import type { ShouldStop } from '../problem.ts'
import { type Batch, createBench } from './batch.ts'
import type { Lying, NextId } from './bench.ts'
import type { Saw } from './blank.ts'
import { createPlanner, type Planner, type PlanNode } from './node.ts'
import { planSettings } from './plan.ts'
import { planQuickly } from './quick.ts'

/** Settings of a job for which more are looked at side by side; a larger one takes too long for what it gains. */
const MOST_NEEDS = 600

/** How wide the search for few settings is: narrower for a larger job, so that it stays within about a second. */
const breadthFor = (needs: number): { width: number; most: number } => ({
  width: Math.max(2, Math.min(16, Math.floor(1200 / (1 + needs)))),
  most: 8,
})

/** Settings found quickly, or fewer where the search finds them before it is told to stop. */
function fewSettings(
  planner: Planner,
  nodes: readonly PlanNode[],
  shouldStop: ShouldStop,
): readonly string[] {
  const needs = new Set(nodes.flatMap((node) => [...node.needs])).size
  const quick = planQuickly(planner, nodes)
  if (needs > MOST_NEEDS) return quick
  const searched = planSettings(planner, nodes, breadthFor(needs), shouldStop)
  return searched !== undefined && searched.length <= quick.length ? searched : quick
}

/** Everything on the bench cut at one setting after another, with few settings; ids of new pieces from `nextId`. */
export function sequenceCuts(
  saw: Saw,
  start: readonly Lying[],
  nextId: NextId,
  shouldStop: ShouldStop,
): Batch[] {
  const planner = createPlanner(saw)
  const nodes = start.flatMap(({ blank }) => planner.nodeOf(blank) ?? [])
  const bench = createBench(saw, nextId, start)
  return fewSettings(planner, nodes, shouldStop).flatMap((setting) => bench.cutAt(setting) ?? [])
}
