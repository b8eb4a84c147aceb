import type { Solver } from '../linearProgram.ts'
import type { ShouldStop } from '../problem.ts'
import { complete } from './complete.ts'
import { Descent } from './descent.ts'
import { lowerLarge } from './fill/approach.ts'
import { isLarge } from './fill/reach.ts'
import { restorePacking } from './mark.ts'
import type { Packing } from './packing.ts'
import { polish } from './polish.ts'
import type { Random } from './random.ts'
import { reachGoal } from './search.ts'

/** Steps for saw settings and offcuts once the cost is proven least: for every part, and at most. */
const LAST_POLISH = 2e5
const MOST_POLISH = 1e7

/** How far towards the bound the first goal lies. */
const FIRST_SHARE = 0.5

/** Steps that a first attempt at a far goal may take, for each sheet in use. */
const ATTEMPT = 2e6

/** Far goals first, as many parts waiting make for fuller sheets; a goal missed is put half as far. */
const lower = (descent: Descent): void => {
  const { packing, random, pause } = descent
  if (!descent.met) descent.learn()
  let share = FIRST_SHARE
  const attempt = ATTEMPT * descent.best.sheets.length
  while (!descent.done) {
    const { best } = descent
    if (best.leftCount > 0) {
      reachGoal(packing, Number.POSITIVE_INFINITY, random, pause)
    } else {
      const far = Math.floor((best.cost - descent.bound) * share)
      const end = far <= packing.job.coin ? Number.POSITIVE_INFINITY : packing.effort + attempt
      const goal = best.cost - Math.max(packing.job.coin, far)
      const reached = reachGoal(packing, goal, random, () => pause() || packing.effort > end)
      share = reached ? Math.min(FIRST_SHARE, share * 1.5) : share / 2
      if (!reached && !descent.shouldStop()) complete(packing, random, descent.shouldStop)
    }
    if (!descent.keep()) restorePacking(packing, descent.best)
  }
}

/** Lowers the cost goal by goal until it meets the bound or the search is stopped; gives the best bound. */
export const improve = (
  packing: Packing,
  scale: number,
  random: Random,
  shouldStop: ShouldStop,
  solver: Solver,
): number => {
  const descent = new Descent(packing, scale, random, shouldStop, solver)
  try {
    if (isLarge(packing.job)) lowerLarge(descent)
    else lower(descent)
  } finally {
    descent.dispose()
  }
  restorePacking(packing, descent.best)
  const parts = packing.job.parts.reduce((sum, part) => sum + part.count, 0)
  if (descent.met) polish(packing, Math.min(MOST_POLISH, LAST_POLISH * parts), random, shouldStop)
  return descent.bound
}
