import type { Bar, Task } from './task.ts'

/** Prefix sums over types, longest first: how many parts, and how long together, before each type. */
interface Sums {
  readonly parts: Float64Array
  readonly sizes: Float64Array
}

function sumUp(task: Task): Sums {
  const count = task.sizes.length
  const parts = new Float64Array(count + 1)
  const sizes = new Float64Array(count + 1)
  for (let type = 0; type < count; type++) {
    parts[type + 1] = parts[type]! + task.demand[type]!
    sizes[type + 1] = sizes[type]! + task.demand[type]! * task.sizes[type]!
  }
  return { parts, sizes }
}

/** How many types are longer than `size`. */
function longerThan(sizes: Float64Array, size: number): number {
  let low = 0
  let high = sizes.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (sizes[middle]! > size) low = middle + 1
    else high = middle
  }
  return low
}

/**
 * A number of bars that no plan can do without: the bound L2 of Martello and Toth (Knapsack Problems, 1990,
 * section 8.3), counting every bar as the longest.
 */
export function leastBars(task: Task): number {
  const capacity = task.bars.reduce((most, bar) => Math.max(most, bar.capacity), 0)
  const { parts, sizes } = sumUp(task)
  const half = longerThan(task.sizes, capacity / 2)
  let most = Math.ceil(task.total / capacity)
  for (let last = half; last <= task.sizes.length; last++) {
    // The parts of half a bar or less that count are those from `half` up to `last`.
    const short = last > half ? task.sizes[last - 1]! : capacity / 2
    const alone = longerThan(task.sizes, capacity - short)
    const paired = parts[half]! - parts[alone]!
    const room = paired * capacity - (sizes[half]! - sizes[alone]!)
    const rest = sizes[last]! - sizes[half]! - room
    most = Math.max(most, parts[half]! + Math.max(0, Math.ceil(rest / capacity)))
  }
  return most
}

/** What the parts cost at least, were they cut from the stock that is cheapest for its length without any waste. */
export function leastFor(task: Task, costOf: (bar: Bar) => number): number {
  const rates = task.bars
    .map((bar) => ({ bar, rate: costOf(bar) / bar.capacity }))
    .sort((a, b) => a.rate - b.rate)
  let left = task.total
  let cost = 0
  for (const { bar, rate } of rates) {
    const length = Math.min(left, bar.limit * bar.capacity)
    cost += length * rate
    left -= length
  }
  return Math.ceil(cost * (1 - 1e-12))
}
