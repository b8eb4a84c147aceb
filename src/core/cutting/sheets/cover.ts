import type { SheetType } from './job.ts'

const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b))

/** Shrinks a bound by more than floating point can have added to it, so that rounding up afterwards stays proven. */
const SAFETY = 1e-9

/** How many branches a whole-number answer may take before the fractional one must do. */
const BRANCHES = 300

interface Choice {
  readonly price: number
  readonly holds: number
  readonly limit: number
}

/** Sheets taken in fractions, the best value first. */
const fractionalCost = (choices: readonly Choice[], from: number, demand: number): number => {
  let rest = demand
  let cost = 0
  for (let index = from; index < choices.length && rest > 0; index++) {
    const { price, holds, limit } = choices[index] as Choice
    const enough = rest / holds <= limit
    cost += price * (enough ? rest / holds : limit)
    rest = enough ? 0 : rest - limit * holds
  }
  return rest > 0 ? Number.POSITIVE_INFINITY : cost
}

/** Sheets taken whole: depth first over how many of each; undefined when it takes too many branches. */
const wholeCost = (choices: readonly Choice[], demand: number, coin: number): number | undefined => {
  let branches = 0
  let best = Number.POSITIVE_INFINITY
  const branch = (index: number, rest: number, cost: number): void => {
    if (rest <= 0) best = Math.min(best, cost)
    const choice = choices[index]
    if (rest <= 0 || choice === undefined || ++branches > BRANCHES) return
    const most = Math.min(choice.limit, Math.ceil(rest / choice.holds))
    for (let used = most; used >= 0; used--) {
      const spent = cost + used * choice.price
      const left = rest - used * choice.holds
      const least = spent + (left > 0 ? fractionalCost(choices, index + 1, left) : 0)
      if (Math.ceil(least / coin - SAFETY) * coin >= best) {
        if (left > 0) break
        continue
      }
      branch(index + 1, left, spent)
    }
  }
  branch(0, demand, 0)
  return branches > BRANCHES ? undefined : best
}

/**
 * The least cost of sheets that hold `demand` in all when a sheet of type t holds `capacity[t]`, when it is more than
 * `floor` (else something not more than it). `Infinity` when all there are hold too little.
 */
export const coverCost = (
  sheets: readonly SheetType[],
  capacity: readonly number[],
  demand: number,
  floor: number,
): number => {
  const safeDemand = demand * (1 - SAFETY)
  const choices = sheets
    .map((sheet, index) => ({ price: sheet.price, limit: sheet.limit, holds: capacity[index] as number }))
    .filter(({ holds }) => holds > 0)
    .sort((a, b) => a.price / a.holds - b.price / b.holds)
  const fraction = fractionalCost(choices, 0, safeDemand)
  if (fraction === Number.POSITIVE_INFINITY) return fraction
  const coin = choices.map(({ price }) => price).reduce(commonDivisor, 0) || 1
  const rounded = Math.ceil((fraction * (1 - SAFETY)) / coin - SAFETY) * coin
  const dearest = Math.max(0, ...choices.map(({ price }) => price))
  if (choices.length < 2 || rounded + dearest <= floor) return rounded
  return Math.max(rounded, wholeCost(choices, safeDemand, coin) ?? 0)
}
