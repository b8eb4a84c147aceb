/** Above this many steps a table of sums costs more than it tells. */
const MOST_STEPS = 1_000_000

const divisorOf = (a: number, b: number): number => (b === 0 ? a : divisorOf(b, a % b))

/**
 * The least sum of `prices`, each taken as often as one likes, that is `atLeast` or more: whole boards cost nothing in
 * between. Prices are whole numbers, 0 or more. Where the sums are too many to list it is the next multiple of what divides
 * all prices; `atLeast` itself when nothing costs anything.
 */
export function leastSum(prices: readonly number[], atLeast: number): number {
  const unit = prices.reduce(divisorOf, 0)
  if (unit === 0 || atLeast <= 0) return Math.max(0, atLeast)
  const wanted = Math.ceil(atLeast / unit)
  const steps = [...new Set(prices.filter((price) => price > 0).map((price) => price / unit))]
  const most = wanted + Math.min(...steps)
  if (most > MOST_STEPS) return wanted * unit
  const reached = new Uint8Array(most + 1)
  reached[0] = 1
  for (let sum = 1; sum <= most; sum += 1) {
    if (steps.some((step) => step <= sum && reached[sum - step] === 1)) reached[sum] = 1
    if (sum >= wanted && reached[sum] === 1) return sum * unit
  }
  return wanted * unit
}
