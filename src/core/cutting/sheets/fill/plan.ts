import type { Job, SheetType } from '../job.ts'

/** How many sheets of every type; in the order of the job's sheets. */
export type Plan = readonly number[]

interface Choice {
  readonly type: number
  readonly area: number
  readonly price: number
  readonly limit: number
}

/** How many branches are looked at. */
const BRANCHES = 4000

const costOfRest = (choices: readonly Choice[], from: number, need: number): number => {
  let rest = need
  let cost = 0
  for (let index = from; index < choices.length && rest > 0; index++) {
    const { area, price, limit } = choices[index]!
    const taken = Math.min(limit, rest / area)
    cost += taken * price
    rest -= taken * area
  }
  return rest > 1e-6 * need ? Number.POSITIVE_INFINITY : cost
}

/**
 * The cheapest sheets with so much area in all, the larger area among equals, by depth-first search with a limit;
 * undefined when all there are have less.
 */
export const cheapestPlan = (sheets: readonly SheetType[], area: number): Plan | undefined => {
  const choices = sheets
    .map((sheet, type) => ({ type, area: sheet.area, price: sheet.price, limit: sheet.limit }))
    .sort((a, b) => a.price / a.area - b.price / b.area)
  const counts = choices.map(() => 0)
  let best: { cost: number; spare: number; counts: number[] } | undefined
  let branches = 0
  const branch = (index: number, need: number, cost: number): void => {
    const choice = choices[index]
    if (need <= 0) {
      const better = best === undefined || cost < best.cost || (cost === best.cost && -need > best.spare)
      if (better) best = { cost, spare: -need, counts: counts.slice() }
      return
    }
    if (choice === undefined || ++branches > BRANCHES) return
    const most = Math.min(choice.limit, Math.ceil(need / choice.area))
    for (let used = most; used >= 0; used--) {
      const spent = cost + used * choice.price
      const rest = need - used * choice.area
      if (best !== undefined && spent + costOfRest(choices, index + 1, rest) > best.cost) {
        if (rest > 0) break
        continue
      }
      counts[index] = used
      branch(index + 1, rest, spent)
    }
    counts[index] = 0
  }
  branch(0, area, 0)
  if (best === undefined) return undefined
  const plan = sheets.map(() => 0)
  for (const [index, count] of best.counts.entries()) plan[choices[index]!.type] = count
  return plan
}

/** What the sheets of a plan cost. */
export const costOf = (sheets: readonly SheetType[], plan: Plan): number =>
  sheets.reduce((sum, sheet, type) => sum + sheet.price * (plan[type] ?? 0), 0)

/** Least share of the area of the sheets that the parts take up, and the steps in which it is tried. */
const LEAST_SHARE = 0.5
const SHARE_STEPS = 1024

/** The area of all parts, in units of the job. */
export const needOf = (job: Job): number => job.parts.reduce((sum, part) => sum + part.area * part.count, 0)

/** The sheets with about the most area that a budget buys, if they have room for all parts of a job. */
export const planWithin = (job: Job, budget: number): Plan | undefined => {
  const need = needOf(job)
  let found: Plan | undefined
  let low = 0
  let high = SHARE_STEPS
  while (low < high) {
    const middle = (low + high) >> 1
    const share = 1 - (1 - LEAST_SHARE) * (middle / SHARE_STEPS)
    const plan = cheapestPlan(job.sheets, need / share)
    if (plan !== undefined && costOf(job.sheets, plan) <= budget) {
      found = plan
      low = middle + 1
    } else high = middle
  }
  return found
}
