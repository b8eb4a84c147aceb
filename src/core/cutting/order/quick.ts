import type { Planner, PlanNode } from './node.ts'
import { createTallies, largestOf, type Tallies, type Tally } from './tally.ts'

/** Settings of either sort that are looked at one step ahead. */
const MOST = 4

/** The first few of `list` by `order`, without sorting all of it. */
function firstFew<Item>(list: readonly Item[], order: (a: Item, b: Item) => number): readonly Item[] {
  const few: Item[] = []
  for (const item of list) {
    if (few.length === MOST && order(item, few[MOST - 1]!) >= 0) continue
    few.push(item)
    few.sort(order)
    few.length = Math.min(few.length, MOST)
  }
  return few
}

const lockedOf = ({ ready, needing }: Tally): number => 1 - ready.size / needing

/** The settings worth trying now: one alone where it is used up at once. */
function choose({ settings }: Tallies): readonly Tally[] {
  let sure: Tally | undefined
  const spared: Tally[] = []
  const others: Tally[] = []
  for (const tally of settings.values()) {
    if (tally.ready.size === 0) continue
    if (tally.again > 0) others.push(tally)
    else if (tally.fixed === 0) spared.push(tally)
    else if (sure === undefined || largestOf(tally) > largestOf(sure)) sure = tally
  }
  if (sure) return [sure]
  const bySize = (a: Tally, b: Tally) => largestOf(b) - largestOf(a)
  return [
    ...firstFew(others, (a, b) => lockedOf(a) - lockedOf(b) || bySize(a, b)),
    ...firstFew(spared, bySize),
  ]
}

interface Step {
  readonly leaving: readonly PlanNode[]
  readonly arriving: ReadonlySet<PlanNode>
}

function stepAt(planner: Planner, { kinds }: Tallies, { setting, ready }: Tally): Step {
  const leaving = [...ready.keys()]
  const left = leaving.flatMap((node) => planner.cutAt(node, setting))
  return { leaving, arriving: new Set(left.filter((node) => !kinds.has(node))) }
}

/** How many settings more are needed after a step than before, then how many more kinds need one: the lower the better. */
function judge({ settings }: Tallies, { leaving, arriving }: Step): number {
  const changes = new Map<string, number>()
  const add = (nodes: Iterable<PlanNode>, by: number): void => {
    for (const node of nodes) for (const need of node.needs) changes.set(need, (changes.get(need) ?? 0) + by)
  }
  add(leaving, -1)
  add(arriving, 1)
  let [needed, scattered] = [0, 0]
  for (const [setting, change] of changes) {
    const before = settings.get(setting)?.needing ?? 0
    needed += Number(before + change > 0) - Number(before > 0)
    scattered += change
  }
  // A kind more or less never outweighs a setting.
  return needed + scattered / (1 + 2 * Math.abs(scattered))
}

/**
 * The settings to use one after another so that everything is cut, looking one step ahead: not always the fewest, but
 * found in about the time that it takes to read the job.
 */
export function planQuickly(planner: Planner, start: readonly PlanNode[]): string[] {
  const tallies = createTallies()
  for (const node of start) tallies.add(node)
  const settings: string[] = []
  while (tallies.kinds.size > 0) {
    let best: { readonly step: Step; readonly setting: string; readonly score: number } | undefined
    const chosen = choose(tallies)
    for (const tally of chosen) {
      const step = stepAt(planner, tallies, tally)
      const score = chosen.length === 1 ? 0 : judge(tallies, step)
      if (best === undefined || score < best.score) best = { step, setting: tally.setting, score }
    }
    // Every kind on the bench has a cut to come that it is ready for.
    if (best === undefined) return settings
    best.step.leaving.forEach(tallies.remove)
    best.step.arriving.forEach(tallies.add)
    settings.push(best.setting)
  }
  return settings
}
