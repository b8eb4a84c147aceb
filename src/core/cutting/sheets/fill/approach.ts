import { complete } from '../complete.ts'
import type { Descent } from '../descent.ts'
import { markPacking, restorePacking } from '../mark.ts'
import type { Packing } from '../packing.ts'
import { reachGoal } from '../search.ts'
import { cheapestPlan, costOf } from './plan.ts'
import { reachPlan, refillAll } from './reach.ts'

/** How far above the bound the first goal lies. */
const FIRST_GAP = 0.01

/** How far towards the bound a goal lies after one was reached; half as far after every miss. */
const FIRST_SHARE = 0.5

/** For how many descents without notable gain a goal is first sought; twice as many with every new round of goals. */
const FIRST_PATIENCE = 16

/** What sheets cost that have room for what is laid, for what it wastes, and for the parts without a place. */
export const nearestGoal = ({ job, left, opened }: Packing): number => {
  const waiting = job.parts.reduce((sum, part, index) => sum + part.area * left[index]!, 0)
  const open = job.sheets.reduce((sum, sheet, type) => sum + sheet.area * opened[type]!, 0)
  const plan = cheapestPlan(job.sheets, open + waiting)
  return plan === undefined ? Number.POSITIVE_INFINITY : costOf(job.sheets, plan)
}

/** Buys sheets for the parts without a place and keeps what comes of it if that is better; the packing stays as it is. */
const tryComplete = (descent: Descent): void => {
  const { packing, random, shouldStop } = descent
  const missed = markPacking(packing)
  complete(packing, random, shouldStop)
  descent.keep()
  restorePacking(packing, missed)
}

/**
 * Lowers the cost of a large job: the first goal lies close to the bound, the next ones further out, by as much as was
 * left without a place; sheets that are all but full stay. Once a goal is reached they close in again.
 */
export const lowerLarge = (descent: Descent): void => {
  const { packing, random, shouldStop } = descent
  const { coin } = packing.job
  if (descent.done) return
  refillAll(packing, random, shouldStop)
  tryComplete(descent)
  if (descent.met) return
  descent.learn()
  let goal = Math.floor(descent.bound * (1 + FIRST_GAP))
  let share = FIRST_SHARE
  let patience = FIRST_PATIENCE
  while (!descent.done) {
    const { best, bound } = descent
    if (best.leftCount > 0) {
      reachGoal(packing, Number.POSITIVE_INFINITY, random, descent.pause)
      descent.keep()
      continue
    }
    if (goal >= best.cost) {
      patience *= 2
      goal = best.cost - Math.max(coin, Math.floor((best.cost - bound) * share))
    }
    if (reachPlan(packing, goal, patience, random, descent.pause)) {
      descent.keep()
      share = FIRST_SHARE
    } else {
      share /= 2
      tryComplete(descent)
      goal = Math.max(nearestGoal(packing), goal + coin)
    }
  }
}
