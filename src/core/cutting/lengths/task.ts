import type { LengthPart, LengthProblem, StockLength } from '../problem.ts'

/** One kind of stock as the search sees it: kerf added once, trim taken off, in units of the task. */
export interface Bar {
  readonly id: string
  readonly capacity: number
  /** In the common unit of all prices. */
  readonly price: number
  /** What the search adds up: the price first, one for the bar itself after it. */
  readonly weight: number
  /** How many there are; `Infinity` when as many as are needed can be bought. */
  readonly limit: number
}

/**
 * A length problem made regular: the kerf is added to every part and once to every bar (so that n parts and n - 1
 * kerfs fit exactly when the n grown parts fit), sizes are divided by their common unit, equal lengths are one type.
 */
export interface Task {
  /** Longest first; distinct but for parts that differ in what they are worth. */
  readonly sizes: Float64Array
  /** How many of each size. */
  readonly demand: Int32Array
  readonly bars: readonly Bar[]
  /** How many parts there are. */
  readonly parts: number
  /** Their sizes added up. */
  readonly total: number
  /** The ids that share each size. */
  readonly sources: readonly (readonly LengthPart[])[]
  /** Cents in one unit of price. */
  readonly cent: number
  /** Whether a plan of the least weight has the least price too, whatever the number of bars. */
  readonly plain: boolean
  /** The bar that stands for "not cut at all", when the stock may run out; always the last. */
  readonly pretend: number | undefined
}

/** The greatest common divisor of two whole numbers, neither below 0. */
export const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b))

const usableOf = (problem: LengthProblem, stock: StockLength): number =>
  stock.length - problem.trim + problem.kerf

/** The part that is longer than any stock can give, if there is one. */
export function findTooLong(problem: LengthProblem): LengthPart | undefined {
  const longest = Math.max(
    0,
    ...problem.stock
      .filter((stock) => stock.onHand !== 0)
      .map((stock) => usableOf(problem, stock) - problem.kerf),
  )
  return problem.parts.find((part) => part.count > 0 && part.length > longest)
}

/** Parts that are one type to the search, the longest first; `key` tells parts of one size apart. */
function sourcesByType(problem: LengthProblem, key: (part: LengthPart) => number): LengthPart[][] {
  const byType = new Map<string, LengthPart[]>()
  for (const part of problem.parts) {
    if (part.count === 0) continue
    const type = `${part.length} ${key(part)}`
    const sources = byType.get(type)
    if (sources === undefined) byType.set(type, [part])
    else sources.push(part)
  }
  return [...byType.values()].sort((a, b) => b[0]!.length - a[0]!.length)
}

type Priced = Omit<Bar, 'weight'>

const beats = (a: Priced, b: Priced): boolean =>
  a.limit === Infinity && a.capacity >= b.capacity && a.price <= b.price

/** Leaves out bars that another, of which there is no end, replaces at no more cost. */
function dropBeaten(bars: readonly Priced[]): Priced[] {
  return bars.filter(
    (bar, place) =>
      !bars.some(
        (other, rank) => rank !== place && beats(other, bar) && (!beats(bar, other) || rank < place),
      ),
  )
}

function barsOf(problem: LengthProblem, unit: number, smallest: number, parts: number): Priced[] {
  const bars = problem.stock.map((stock) => ({
    id: stock.id,
    capacity: Math.floor(usableOf(problem, stock) / unit),
    price: stock.price,
    limit: stock.onHand === undefined || stock.onHand >= parts ? Infinity : stock.onHand,
  }))
  return dropBeaten(bars.filter((bar) => bar.capacity >= smallest && bar.limit > 0))
}

/** The largest weight of a whole plan that floating point still counts exactly, with room for sums. */
const HEAVIEST = 2 ** 48

interface Weighed {
  readonly bars: readonly Bar[]
  readonly cent: number
  readonly plain: boolean
}

/** Prices in their common unit, and weights that put the price before the number of bars. */
function weigh(bars: readonly Priced[], parts: number): Weighed {
  const cent = bars.reduce((unit, bar) => commonDivisor(unit, bar.price), 0) || 1
  const dearest = bars.reduce((most, bar) => Math.max(most, bar.price / cent), 0)
  const plain = bars.every((bar) => bar.price === bars[0]!.price)
  const roomy = (dearest * (parts + 1) + 1) * parts < HEAVIEST
  const scale = plain ? 0 : roomy ? parts + 1 : 1
  const extra = plain || roomy ? 1 : 0
  const weighed = bars.map((bar) => {
    const price = bar.price / cent
    return { ...bar, price, weight: price * scale + extra }
  })
  return { bars: weighed, cent, plain }
}

/** A bar of which there is no end, dearer than any plan without it: a part on it is a part not cut. */
function pretendBar(bars: readonly Bar[], longest: number, parts: number): Bar {
  const price = bars.reduce((most, bar) => Math.max(most, bar.price), 1) * parts + 1
  const weight = bars.reduce((most, bar) => Math.max(most, bar.weight), 1) * parts + 1
  return { id: '', capacity: longest, price, weight, limit: Infinity }
}

const suffices = (bars: readonly Bar[], longest: number): boolean =>
  bars.some((bar) => bar.limit === Infinity && bar.capacity >= longest)

interface Asked extends Pick<Task, 'sizes' | 'demand' | 'parts' | 'total' | 'sources'> {
  readonly unit: number
}

function askedOf(problem: LengthProblem, key: (part: LengthPart) => number = () => 0): Asked {
  const sources = sourcesByType(problem, key)
  const long = sources.map(([first]) => first!.length + problem.kerf)
  const unit = long.reduce(commonDivisor, 0) || 1
  const demand = Int32Array.from(sources, (same) => same.reduce((sum, part) => sum + part.count, 0))
  const sizes = Float64Array.from(long, (size) => size / unit)
  const parts = demand.reduce((sum, count) => sum + count, 0)
  const total = sizes.reduce((sum, size, type) => sum + size * demand[type]!, 0)
  return { sizes, demand, parts, total, sources, unit }
}

/**
 * The problem as a task in which the stock there is, one where no number is given, is all there is. Parts of one size are
 * of one type where their worth is the same.
 */
export function reduceYield(problem: LengthProblem): Task {
  const asked = askedOf(problem, ({ worth = 0 }) => worth)
  const bars = problem.stock
    .map((stock) => ({
      id: stock.id,
      capacity: Math.floor(usableOf(problem, stock) / asked.unit),
      price: 0,
      weight: 1,
      limit: stock.onHand ?? 1,
    }))
    .filter((bar) => bar.limit > 0 && bar.capacity >= (asked.sizes.at(-1) ?? Infinity))
  return { ...asked, bars, cent: 1, plain: true, pretend: undefined }
}

/** The problem as a task for the search; every part must fit some stock. */
export function reduceProblem(problem: LengthProblem): Task {
  const { unit, ...asked } = askedOf(problem)
  const { sizes, parts } = asked
  const { bars, cent, plain } = weigh(barsOf(problem, unit, sizes.at(-1) ?? 1, parts), parts)
  const longest = sizes[0] ?? 0
  const all = suffices(bars, longest) ? bars : [...bars, pretendBar(bars, longest, parts)]
  const pretend = all.length > bars.length ? bars.length : undefined
  return { ...asked, bars: all, cent, plain, pretend }
}
