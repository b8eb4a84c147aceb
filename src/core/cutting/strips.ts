import type { LengthSearch } from './lengths.ts'
import { cutLengths } from './lengths.ts'
import type { LengthLayout, LengthProblem, Outcome, ShouldStop } from './problem.ts'
import { leastSum } from './strips/leastSum.ts'
import { cheaperPurchases, type Purchase } from './strips/purchases.ts'
import type { StockBoard, StripProblem } from './strips/stripProblem.ts'

export interface StripSearch extends LengthSearch {
  /** Time to turn from strips to boards, so that some is left for these; `shouldStop` when left out. */
  readonly halfway?: ShouldStop | undefined
}

type StripOutcome = Outcome<LengthLayout>
type Cut = Exclude<StripOutcome, { status: 'impossible' }>

/** Shares of a price are rounded down to this part of a cent, so that they never add up to more than the board. */
const SHARE = 1000

/** The same problem with every board split into its strips, each at its share of the price. */
export const asStrips = ({ stock, ...problem }: StripProblem): LengthProblem => ({
  ...problem,
  stock: stock.map(({ strips, onHand, price, ...rest }) => ({
    ...rest,
    price: Math.floor((price * SHARE) / strips),
    ...(onHand === undefined ? {} : { onHand: onHand * strips }),
  })),
})

/** Whole boards that `layouts` take of each stock: strips over what a board gives, rounded up. */
export function boardsTaken(
  stock: readonly Pick<StockBoard, 'id' | 'strips'>[],
  layouts: readonly LengthLayout[],
): ReadonlyMap<string, number> {
  const strips = new Map<string, number>()
  for (const { stock: id, count } of layouts) strips.set(id, (strips.get(id) ?? 0) + count)
  const taken = stock.filter(({ id }) => strips.has(id))
  return new Map(taken.map((board) => [board.id, Math.ceil((strips.get(board.id) ?? 0) / board.strips)]))
}

/**
 * Strips for all the parts out of whole boards at the least cost; a layout's `count` is strips, `cost` and `pieces` are of
 * boards. First the least strips are sought; then every cheaper choice of boards is tried, cheapest first, so that
 * `optimal` is said of boards alone.
 */
export async function cutStrips(problem: StripProblem, search: StripSearch): Promise<StripOutcome> {
  const { shouldStop, halfway = shouldStop } = search
  const found = await cutLengths(asStrips(problem), {
    ...search,
    shouldStop: () => shouldStop() || halfway(),
  })
  if (found.status === 'impossible') return found
  const prices = problem.stock.map(({ price }) => price)
  const lowerBound = leastSum(prices, Math.ceil(found.lowerBound / SHARE))
  return improve(problem, { layouts: found.layouts, lowerBound }, search)
}

/** Tries cheaper choices of boards until one does, none is left, or the time is up. */
async function improve(
  problem: StripProblem,
  { layouts, lowerBound }: Pick<Cut, 'layouts' | 'lowerBound'>,
  search: StripSearch,
): Promise<Cut> {
  const first = priced(problem, layouts)
  if (first.cost <= lowerBound) return { ...first, status: 'optimal', lowerBound: first.cost }
  const { purchases, complete } = cheaperPurchases(problem, lowerBound, first.cost)
  let proven = lowerBound
  let unproven = !complete
  for (const purchase of purchases) {
    if (search.shouldStop()) return { ...first, status: 'stopped', lowerBound: proven }
    if (!unproven) proven = Math.max(proven, purchase.cost)
    const tried = await cutFrom(problem, purchase, search)
    if (tried.layouts) {
      const best = priced(problem, tried.layouts)
      const status = best.cost <= proven ? 'optimal' : 'stopped'
      return { ...best, status, lowerBound: Math.min(proven, best.cost) }
    }
    unproven ||= !tried.proven
  }
  if (unproven) return { ...first, status: 'stopped', lowerBound: proven }
  return { ...first, status: 'optimal', lowerBound: first.cost }
}

function priced({ stock }: StripProblem, layouts: readonly LengthLayout[]) {
  const taken = boardsTaken(stock, layouts)
  const sum = (worth: (board: StockBoard) => number) =>
    stock.reduce((total, board) => total + worth(board) * (taken.get(board.id) ?? 0), 0)
  return { layouts, cost: sum(({ price }) => price), pieces: sum(() => 1) }
}

/** Stands for every strip that the boards at hand do not give; no person can type its name. */
const BEYOND = '\0beyond'

/** Whether the boards of `purchase` are enough; without layouts and not `proven` where the time was too short. */
async function cutFrom(
  problem: StripProblem,
  { boards }: Purchase,
  search: StripSearch,
): Promise<{ layouts?: readonly LengthLayout[]; proven: boolean }> {
  const longest = Math.max(...problem.stock.map(({ length }) => length))
  const atHand = problem.stock.flatMap(({ id, length, strips }, index) => {
    const onHand = (boards[index] ?? 0) * strips
    return onHand > 0 ? [{ id, length, price: 0, onHand }] : []
  })
  const stock = [...atHand, { id: BEYOND, length: longest, price: 1 }]
  const outcome = await cutLengths({ ...problem, stock }, search)
  if (outcome.status === 'impossible') return { proven: true }
  return outcome.cost === 0 ? { layouts: outcome.layouts, proven: true } : { proven: outcome.lowerBound >= 1 }
}
