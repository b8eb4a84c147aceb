import type { ShouldStop } from '../problem.ts'
import { createDescent, worthWith } from './descent.ts'
import type { Table } from './knapsack.ts'
import { fillTable, worthFrom } from './knapsack.ts'
import type { Remainder } from './master.ts'
import type { Pattern } from './pattern.ts'
import type { Task } from './task.ts'

/** What the linear programme says each part and each bar that may run out is worth, in whole numbers. */
export interface Worths {
  /** By type. */
  readonly values: Float64Array
  /** By bar: its cost and what its running out adds; a pattern worth more than this is wanted. */
  readonly charges: Float64Array
  /** By bar: its cost alone, not rounded. */
  readonly costs: Float64Array
  readonly dearest: number
}

/** Patterns worth adding, and a bound that holds whatever the linear programme thought. */
export interface Priced {
  readonly patterns: readonly Pattern[]
  readonly certificate: Certificate
}

/** Values that prove a bound: all that is asked for is worth `required`, and no bar more than its cost times `unit`. */
export interface Certificate {
  /** By type. */
  readonly values: Float64Array
  /** What the parts are worth, less what the bars that may run out are worth above their cost. */
  readonly required: number
  readonly unit: number
  /** No way to cut the remainder costs less, in units of cost. */
  readonly bound: number
}

/** Whole numbers up to here for one bar: exact when thousands of them are added. */
const FINEST = 2 ** 38

/** Patterns to add at once. */
const WANTED = 60

/** The worths of a solution whose prices were divided by the dearest cost. */
export function readWorths(task: Task, worth: Float64Array, costs: Float64Array): Worths {
  const dearest = Math.max(...costs)
  const values = Float64Array.from(task.sizes, (_, type) => Math.floor(Math.max(0, worth[type]!) * FINEST))
  let row = task.sizes.length
  const scaled = costs.map((cost) => (cost / dearest) * FINEST)
  const charges = Float64Array.from(task.bars, (bar, place) => {
    const held = bar.limit === Infinity ? 0 : Math.max(0, -worth[row++]!)
    return Math.ceil(scaled[place]! + held * FINEST)
  })
  return { values, charges, costs: scaled, dearest }
}

/** A pattern and how many times its charge it is worth. */
interface Offer {
  readonly pattern: Pattern
  readonly ratio: number
}

interface Search {
  readonly offers: Offer[]
  /** The most that any pattern of the bar is worth, proven. */
  readonly most: number
}

interface Row {
  readonly row: number
  readonly worth: number
}

function rowsWorth(table: Table, capacity: number, charge: number): Row[] {
  const rows: Row[] = []
  for (let row = 0; row < table.count; row++) {
    if (worthFrom(table, row, capacity) <= charge) break
    const worth = worthWith(table, row, capacity)
    if (worth > charge) rows.push({ row, worth })
  }
  return rows.sort((a, b) => b.worth - a.worth)
}

/** Steps of the search for a first pattern, and of the last one, which proves that there is none. */
const FEW_STEPS = 20_000
const MANY_STEPS = 4_000_000

function searchBar(
  table: Table,
  bar: number,
  capacity: number,
  charge: number,
  steps: number,
  shouldStop: ShouldStop,
): Search {
  const top = worthFrom(table, 0, capacity)
  const rows = rowsWorth(table, capacity, charge)
  const descent = createDescent(table, steps, shouldStop)
  const offers: Offer[] = []
  let most = Math.min(top, charge)
  for (const { row } of rows) {
    const contents = descent.packFrom(row, capacity, charge)
    if (contents === undefined) continue
    most = Math.max(most, contents.value)
    const { types, counts, value } = contents
    offers.push({ pattern: { bar, types, counts }, ratio: value / charge })
  }
  return { offers, most: table.grain === 1 || descent.stepsLeft() <= 0 ? top : most }
}

/** The best offers, none of them made of types that better ones have mostly used. */
function chooseOffers(offers: Offer[], types: number, wanted: number): Pattern[] {
  const used = new Uint8Array(types)
  const chosen: Pattern[] = []
  for (const { pattern } of offers.sort((a, b) => b.ratio - a.ratio)) {
    const fresh = pattern.types.filter((type) => used[type]! < 1).length
    if (fresh * 2 < pattern.types.length) continue
    chosen.push(pattern)
    for (const type of pattern.types) used[type] = 1
    if (chosen.length >= wanted) break
  }
  return chosen
}

/**
 * Values scaled down until no pattern of a bar without end is worth more than its cost, less what the bars that may
 * run out are then worth too much, are a feasible dual solution: their sum bounds the cost from below. After
 * Farley, A note on bounding a class of linear programming problems (Operations Research 38, 1990).
 */
function certify(task: Task, most: readonly number[], worths: Worths, remainder: Remainder): Certificate {
  let scale = 1
  task.bars.forEach((bar, place) => {
    if (bar.limit === Infinity) scale = Math.max(scale, (most[place]! / worths.costs[place]!) * (1 + 1e-15))
  })
  let sum = 0
  for (let type = 0; type < task.sizes.length; type++) sum += worths.values[type]! * remainder.demand[type]!
  let excess = 0
  task.bars.forEach((bar, place) => {
    const over = most[place]! - scale * worths.costs[place]! * (1 - 1e-15)
    if (bar.limit !== Infinity && over > 0) excess += Math.ceil(over) * remainder.limits[place]!
  })
  const unit = FINEST / worths.dearest
  const bound = scale < Infinity ? Math.max(0, ((sum - excess) / scale / unit) * (1 - 1e-14)) : 0
  return { values: worths.values, required: sum - excess, unit: scale * unit, bound }
}

/** Patterns worth more than their charge, and the bound; undefined when it was stopped. */
export function pricePatterns(
  task: Task,
  table: Table,
  worths: Worths,
  remainder: Remainder,
  shouldStop: ShouldStop,
): Priced | undefined {
  if (!fillTable(table, task.sizes, worths.values, remainder.demand, shouldStop)) return undefined
  for (const steps of table.grain === 1 ? [MANY_STEPS] : [FEW_STEPS, MANY_STEPS]) {
    const searches = task.bars.map((bar, place) =>
      remainder.limits[place]! > 0
        ? searchBar(table, place, bar.capacity, worths.charges[place]!, steps, shouldStop)
        : { offers: [], most: worthFrom(table, 0, bar.capacity) },
    )
    const offers = searches.flatMap((search) => search.offers)
    if (offers.length === 0 && steps < MANY_STEPS) continue
    const most = searches.map((search) => search.most)
    const patterns = chooseOffers(offers, task.sizes.length, WANTED)
    return { patterns, certificate: certify(task, most, worths, remainder) }
  }
  return undefined
}
