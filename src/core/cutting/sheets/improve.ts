import type { ShouldStop } from '../problem.ts'
import { ColumnBound } from './columnBound.ts'
import { isLarge, reachPlan, refillAll } from './fill/reach.ts'
import { type Mark, markPacking, restorePacking } from './mark.ts'
import type { Packing } from './packing.ts'
import { polish } from './polish.ts'
import type { Random } from './random.ts'
import { cheapFirst, leastPrice, PART_KEYS, recreate } from './recreate.ts'
import { reachGoal } from './search.ts'

/** Share of the search's effort that goes into the bound by column generation, and into saw settings and offcuts. */
const BOUND_SHARE = 0.5
const POLISH_SHARE = 0.1

/** Steps for saw settings and offcuts once the cost is proven least: for every part, and at most. */
const LAST_POLISH = 2e5
const MOST_POLISH = 1e7

/** How far towards the bound the first goal lies, and the same for large jobs, whose first layout is nearer to it. */
const FIRST_SHARE = 0.5
const LARGE_FIRST_SHARE = 0.35

/** Steps that a first attempt at a far goal may take, for each sheet in use. */
const ATTEMPT = 2e6

/** The same for large jobs, whose steps do more. */
const LARGE_ATTEMPT = 1.2e7

/** Gives the parts without a place more sheets, whatever they cost, in a few ways; leaves the cheapest. */
const complete = (packing: Packing, random: Random, shouldStop: ShouldStop): void => {
  const start = markPacking(packing)
  let best: Mark | undefined
  for (const [index, key] of PART_KEYS.entries()) {
    if (best && shouldStop()) break
    restorePacking(packing, start)
    const taste = { blink: 0.02, power: 0 as const }
    const budget = Number.POSITIVE_INFINITY
    const choose = index % 2 === 0 ? cheapFirst(0.1) : leastPrice
    recreate(packing, { key, noise: 0.1, taste, budget, choose }, random)
    if (best && (packing.leftCount - best.leftCount || packing.cost - best.cost) >= 0) continue
    best = markPacking(packing)
  }
  restorePacking(packing, best ?? start)
}

/**
 * Lowers the cost goal by goal until it meets the bound or the search is stopped; gives the best bound. The first goals
 * lie far below the best so far, as many parts waiting make for fuller sheets; a goal missed is put half as far.
 */
export const improve = (packing: Packing, scale: number, random: Random, shouldStop: ShouldStop): number => {
  let best = markPacking(packing)
  const columns = new ColumnBound(packing.job, packing.sizes, 700)
  const bound = (): number => Math.max(scale, columns.value)
  const meets = (): boolean => best.leftCount === 0 && best.cost <= bound()
  const pause = (): boolean => {
    if (columns.effort <= packing.effort * BOUND_SHARE) columns.advance(shouldStop)
    return shouldStop() || meets()
  }
  let polished = 0
  const keep = (): void => {
    columns.learn(packing.sheets)
    const before = packing.effort
    polish(packing, packing.effort * POLISH_SHARE - polished, random, shouldStop)
    polished += packing.effort - before
    best = markPacking(packing)
  }
  const large = isLarge(packing.job)
  const reach = large ? reachPlan : reachGoal
  if (large && !meets() && !shouldStop()) {
    refillAll(packing, random, shouldStop)
    if (packing.leftCount > 0 && !shouldStop()) complete(packing, random, shouldStop)
    if (packing.leftCount === 0 && (best.leftCount > 0 || packing.cost < best.cost))
      best = markPacking(packing)
    else restorePacking(packing, best)
  }
  if (!meets()) columns.learn(best.sheets)
  let share = large ? LARGE_FIRST_SHARE : FIRST_SHARE
  const attempt = (large ? LARGE_ATTEMPT : ATTEMPT) * best.sheets.length
  while (!meets() && !shouldStop()) {
    if (best.leftCount > 0) {
      reachGoal(packing, Number.POSITIVE_INFINITY, random, pause)
    } else {
      const far = Math.floor((best.cost - bound()) * share)
      const end = far <= packing.job.coin ? Number.POSITIVE_INFINITY : packing.effort + attempt
      const goal = best.cost - Math.max(packing.job.coin, far)
      const reached = reach(packing, goal, random, () => pause() || packing.effort > end)
      share = reached ? Math.min(FIRST_SHARE, share * 1.5) : share / 2
      const missed = large && !reached ? markPacking(packing) : undefined
      if (!reached && !shouldStop()) complete(packing, random, shouldStop)
      if (missed !== undefined && packing.cost >= best.cost) {
        // Sheets that are all but full are worth keeping for the next, nearer goal.
        restorePacking(packing, missed)
        continue
      }
    }
    if (packing.leftCount === 0 && (best.leftCount > 0 || packing.cost < best.cost)) keep()
    else restorePacking(packing, best)
  }
  restorePacking(packing, best)
  const parts = packing.job.parts.reduce((sum, part) => sum + part.count, 0)
  if (meets()) polish(packing, Math.min(MOST_POLISH, LAST_POLISH * parts), random, shouldStop)
  return bound()
}
