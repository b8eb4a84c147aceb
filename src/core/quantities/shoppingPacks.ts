/** A pack as sold: how much is in it, and what it costs in any unit. */
export interface Pack {
  readonly holds: number
  readonly cost: number
}

/** A shortfall of less than this is the rounding of the arithmetic. */
const ROUNDING = 0.01

/** So many of the pack that costs least for what it holds are looked at in every way; what lies beyond is of that pack. */
const SEARCHED = 24

/** A way to hold an amount: the pack taken last, and what that and the ones before cost. */
interface Way {
  readonly cost: number
  readonly left: number
  readonly packs: number
  readonly last: number
}

/**
 * How many of each pack, in their order, hold at least `amount` at the least cost, where each unit left over costs
 * `leftCosts`; of equal ones that with less left over, then with fewer packs. Exact; none for no amount. Throws where there
 * is no pack that holds anything.
 */
export function packFor(amount: number, packs: readonly Pack[], leftCosts = 0): readonly number[] {
  const counts = packs.map(() => 0)
  if (amount <= ROUNDING) return counts
  if (!(packs.length > 0 && packs.every(({ holds }) => holds > 0)))
    throw new RangeError('no containers to fill')
  const best = bestValue(packs, leftCosts)
  const far = Math.max(0, Math.floor(amount / (packs[best] as Pack).holds) - SEARCHED)
  counts[best] = far
  let rest = amount - far * (packs[best] as Pack).holds
  const ways = new Map<number, Way>()
  while (rest > ROUNDING) {
    const { last } = wayToHold(rest, packs, leftCosts, ways)
    counts[last] = (counts[last] ?? 0) + 1
    rest -= (packs[last] as Pack).holds
  }
  return counts
}

/** The pack that costs least for what it holds; where what is left over costs as well, the largest. */
function bestValue(packs: readonly Pack[], leftCosts: number): number {
  const values = packs.map(({ holds, cost }) => (leftCosts > 0 ? -holds : cost / holds))
  return values.indexOf(Math.min(...values))
}

/** The best way to hold `rest`, from those to hold less; `ways` remembers them to a thousandth. */
function wayToHold(rest: number, packs: readonly Pack[], leftCosts: number, ways: Map<number, Way>): Way {
  if (rest <= ROUNDING) return { cost: -rest * leftCosts, left: -rest, packs: 0, last: -1 }
  const key = Math.round(rest * 1000)
  const known = ways.get(key)
  if (known) return known
  let found: Way | undefined
  for (const [last, { holds, cost }] of packs.entries()) {
    const before = wayToHold(rest - holds, packs, leftCosts, ways)
    const way = { cost: before.cost + cost, left: before.left, packs: before.packs + 1, last }
    if (!found || isBetter(way, found)) found = way
  }
  ways.set(key, found as Way)
  return found as Way
}

function isBetter(one: Way, other: Way): boolean {
  if (Math.abs(one.cost - other.cost) > ROUNDING) return one.cost < other.cost
  if (Math.abs(one.left - other.left) > ROUNDING) return one.left < other.left
  return one.packs < other.packs
}
