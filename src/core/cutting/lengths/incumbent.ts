import type { Cut, Plan } from './pattern.ts'
import type { Task } from './task.ts'

/** The best plan so far. */
export interface Incumbent {
  readonly plan: () => Plan
  /** Takes the cuts when they weigh less than the best so far; whether they did. */
  readonly offer: (cuts: readonly Cut[] | undefined) => boolean
}

/** What the bars of these cuts weigh. */
export const weightOf = (task: Task, cuts: readonly Cut[]): number =>
  cuts.reduce((sum, cut) => sum + cut.times * task.bars[cut.pattern.bar]!.weight, 0)

/** What the bars of these cuts cost, in the common unit of all prices. */
export const priceOf = (task: Task, cuts: readonly Cut[]): number =>
  cuts.reduce((sum, cut) => sum + cut.times * task.bars[cut.pattern.bar]!.price, 0)

/** An incumbent without a plan yet. */
export function createIncumbent(task: Task): Incumbent {
  let best: Plan = { cuts: [], weight: Infinity }
  return {
    plan: () => best,
    offer: (cuts) => {
      if (cuts === undefined) return false
      const weight = weightOf(task, cuts)
      if (weight >= best.weight) return false
      best = { cuts, weight }
      return true
    },
  }
}
