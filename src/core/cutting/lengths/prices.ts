import type { Task } from './task.ts'

/** Prices above which no table of them is kept. */
const MOST_PRICES = 400_000

/** Lets up to `limit` bars be added to what every price buys. */
function addBars(bought: Float64Array, price: number, capacity: number, limit: number): void {
  let left = Math.min(limit, Math.floor((bought.length - 1) / price))
  for (let bundle = 1; left > 0; bundle *= 2) {
    const bars = Math.min(bundle, left)
    for (let total = bought.length - 1; total >= bars * price; total--) {
      const length = bought[total - bars * price]! + bars * capacity
      if (length > bought[total]!) bought[total] = length
    }
    left -= bars
  }
}

/** The most length that each whole price buys, or -Infinity where no bars come to just that price. */
function buy(task: Task, most: number): Float64Array {
  const bought = new Float64Array(most + 1).fill(-Infinity)
  bought[0] = 0
  let free = 0
  for (const bar of task.bars) {
    if (bar.price === 0) free += bar.limit * bar.capacity
    else addBars(bought, bar.price, bar.capacity, bar.limit)
  }
  return bought.map((length) => length + free)
}

/**
 * Rounds a bound on the price up to what bars can come to at all while they are long enough together for the parts.
 * `most` is a price known to do: nothing above it is asked.
 */
export function createRounding(task: Task, most: number): (bound: number) => number {
  if (!(most <= MOST_PRICES)) return (bound) => Math.ceil(bound)
  const bought = buy(task, most)
  return (bound) => {
    for (let price = Math.ceil(bound); price < most; price++) if (bought[price]! >= task.total) return price
    return Math.max(most, Math.ceil(bound))
  }
}
