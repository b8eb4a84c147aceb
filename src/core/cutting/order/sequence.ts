import type { Batch, Lying, NextId } from './bench.ts'
import { cutAtSetting } from './bench.ts'
import type { Saw } from './blank.ts'
import { createPlanner } from './node.ts'
import { planSettings } from './plan.ts'

/** How wide the search for few settings is: narrower for a large job, so that it stays within about a second. */
const breadthFor = (needs: number): { width: number; most: number } => ({
  width: Math.max(2, Math.min(16, Math.floor(1200 / (1 + needs)))),
  most: 8,
})

/** Everything on the bench cut at one setting after another, with few settings; ids of new pieces from `nextId`. */
export function sequenceCuts(saw: Saw, start: readonly Lying[], nextId: NextId): Batch[] {
  const planner = createPlanner(saw)
  const nodes = start.flatMap(({ blank }) => planner.nodeOf(blank) ?? [])
  const needs = new Set(nodes.flatMap((node) => [...node.needs])).size
  const batches: Batch[] = []
  let bench = start.filter(({ piece }) => piece.becomes === 'piece')
  for (const setting of planSettings(planner, nodes, breadthFor(needs))) {
    const batch = cutAtSetting(saw, nextId, bench, setting)
    if (batch === undefined) continue
    batches.push(batch)
    bench = [...batch.bench]
  }
  return batches
}
