import type { StripProblem } from './stripProblem.ts'

/** A choice of boards: how many of each stock, in the order of the problem, and what they cost. */
export interface Purchase {
  readonly boards: readonly number[]
  readonly cost: number
}

/** Choices that are looked at at most; a job has few kinds of board. */
const MOST = 100_000

/** Length of parts and kerfs that one board of each stock can hold at most. */
const capacityOf = ({ stock, kerf, trim }: StripProblem): readonly number[] =>
  stock.map(({ length, strips }) => Math.max(0, length - trim + kerf) * strips)

/**
 * Every choice of boards that costs `least` or more but less than `below` and holds all parts by their length alone,
 * cheapest first. `complete` is false where there are too many to list. Free boards are all taken: they cost nothing.
 */
export function cheaperPurchases(
  problem: StripProblem,
  least: number,
  below: number,
): { readonly purchases: readonly Purchase[]; readonly complete: boolean } {
  const { stock, parts, kerf } = problem
  const needed = parts.reduce((sum, part) => sum + (part.length + kerf) * part.count, 0)
  const capacity = capacityOf(problem)
  const purchases: Purchase[] = []
  let looked = 0
  const visit = (index: number, boards: readonly number[], cost: number, held: number): void => {
    looked += 1
    if (looked > MOST) return
    const board = stock[index]
    if (board === undefined) {
      if (cost >= least && held >= needed) purchases.push({ boards, cost })
      return
    }
    const affordable = board.price === 0 ? (board.onHand ?? 0) : Math.floor((below - 1 - cost) / board.price)
    const most = Math.min(affordable, board.onHand ?? affordable)
    const fewest = board.price === 0 ? most : 0
    for (let count = fewest; count <= most && looked <= MOST; count += 1)
      visit(index + 1, [...boards, count], cost + count * board.price, held + count * (capacity[index] ?? 0))
  }
  visit(0, [], 0, 0)
  return { purchases: purchases.sort((a, b) => a.cost - b.cost), complete: looked <= MOST }
}
