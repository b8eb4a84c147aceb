import { complete } from '../complete.ts'
import type { Descent } from '../descent.ts'
import type { Job } from '../job.ts'
import { markPacking, restorePacking } from '../mark.ts'
import type { Packing } from '../packing.ts'
import { reachGoal } from '../search.ts'
import { Filler } from './filler.ts'
import { cheapestPlan, costOf, planWithin } from './plan.ts'
import { clearAll, reachPlan, refillAll } from './reach.ts'

/** How far above the bound the first goal lies. */
const FIRST_GAP = 0.01

/** For how many descents without notable gain a goal is first sought; twice as many with every new round of goals. */
const FIRST_PATIENCE = 8

/** The most effort that goes into a goal at first, in fillings of all sheets; it grows with the patience. */
const MOST_EFFORT = 2.5

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

/** What the sheets with the most area within a budget cost; the budget itself when none within it have enough. */
const planCost = (job: Job, budget: number): number => {
  const plan = planWithin(job, budget)
  return plan === undefined ? budget : costOf(job.sheets, plan)
}

/** The goals of a large job: what was reached and missed, and with how much patience. */
class Goals {
  patience = FIRST_PATIENCE
  private readonly descent: Descent
  private missed: number

  constructor(descent: Descent) {
    this.descent = descent
    this.missed = this.least
  }

  private get least(): number {
    return this.descent.bound - this.descent.packing.job.coin
  }

  miss(goal: number): void {
    this.missed = Math.max(this.missed, goal)
  }

  /** Half way between what was missed and the best, or all but the best. */
  private between(): number {
    const { best, packing } = this.descent
    const half = planCost(packing.job, Math.floor((this.missed + best.cost) / 2))
    return half > this.missed ? half : planCost(packing.job, best.cost - packing.job.coin)
  }

  /**
   * The goal to seek next; with twice the patience once every goal below the best was missed, and `afresh` when it is
   * the only one, for what led to no place for all will not lead there from where it ended.
   */
  next(): { goal: number; afresh: boolean } {
    const goal = this.between()
    if (goal > this.missed) return { goal, afresh: false }
    const { missed } = this
    this.patience *= 2
    this.missed = this.least
    const again = this.between()
    return { goal: again, afresh: again === missed }
  }
}

/**
 * Lowers the cost of a large job: the first goal lies close to the bound. A goal that was missed is put further out, by
 * as much as was left without a place, until one is reached; sheets that are all but full stay. From then on goals lie
 * between what was missed and what was reached.
 */
export const lowerLarge = (descent: Descent): void => {
  const { packing, random, shouldStop } = descent
  const { job } = packing
  if (descent.done) return
  const filler = new Filler(packing, random)
  const before = packing.effort
  refillAll(filler, shouldStop)
  // Nothing is filled where the stock on hand has hardly more room than the parts take: then time alone limits a goal.
  const most = packing.effort > before ? MOST_EFFORT * (packing.effort - before) : Number.POSITIVE_INFINITY
  tryComplete(descent)
  if (descent.met) return
  descent.learn()
  const goals = new Goals(descent)
  let goal = planCost(job, Math.floor(descent.bound * (1 + FIRST_GAP)))
  while (!descent.done) {
    if (descent.best.leftCount > 0) {
      reachGoal(packing, Number.POSITIVE_INFINITY, random, descent.pause)
      descent.keep()
      continue
    }
    if (goal >= descent.best.cost) {
      const next = goals.next()
      if (next.afresh) clearAll(filler)
      goal = next.goal
    }
    const end = packing.effort + (most * goals.patience) / FIRST_PATIENCE
    if (reachPlan(filler, goal, goals.patience, () => packing.effort > end || descent.pause())) {
      descent.keep()
      goal = descent.best.cost
    } else {
      goals.miss(goal)
      tryComplete(descent)
      goal = Math.max(nearestGoal(packing), goal + job.coin)
    }
  }
}
