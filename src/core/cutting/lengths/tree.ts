import type { LinearProgram, Solution, Solver } from '../linearProgram.ts'
import { createProgram } from '../linearProgram.ts'
import type { ShouldStop } from '../problem.ts'
import type { Incumbent } from './incumbent.ts'
import type { Pattern } from './pattern.ts'
import type { Task } from './task.ts'

/** How much there may be of a column, or of all columns of a bar together. */
interface Range {
  least: number
  most: number
}

/** A choice among patterns being made, node by node. */
interface Tree {
  readonly task: Task
  readonly patterns: readonly Pattern[]
  readonly incumbent: Incumbent
  readonly program: LinearProgram
  readonly columns: readonly Range[]
  readonly bars: readonly Range[]
  readonly shouldStop: ShouldStop
  readonly dearest: number
  nodes: number
  depth: number
  /** Every node closed so far was closed by a bound in whole numbers. */
  proven: boolean
}

const WHOLE = 1e-6

/** Choices on top of one another: more would overrun the stack. */
const DEEPEST = 500

const isWhole = (amount: number): boolean => Math.abs(amount - Math.round(amount)) < WHOLE

/** No plan needs a pattern more often than its scarcest part lets it be of use. */
function timesOfUse(task: Task, pattern: Pattern): number {
  const useful = pattern.types.reduce(
    (most, type, place) => Math.max(most, Math.ceil(task.demand[type]! / pattern.counts[place]!)),
    0,
  )
  return Math.min(useful, task.bars[pattern.bar]!.limit)
}

/** The programme: patterns, then each type by itself at a forbidding price, then each bar cut for nothing. */
function programOf(
  solver: Solver,
  task: Task,
  patterns: readonly Pattern[],
  forbidding: number,
): LinearProgram {
  const barRow = (bar: number): number => task.sizes.length + bar
  const program = createProgram(solver, [
    ...Array.from(task.demand, (least) => ({ least, most: Infinity })),
    ...task.bars.map((bar) => ({ least: 0, most: bar.limit })),
  ])
  const dearest = task.bars.reduce((most, bar) => Math.max(most, bar.weight), 0)
  program.addColumns([
    ...patterns.map(({ bar, types, counts }) => ({
      price: task.bars[bar]!.weight / dearest,
      rows: [...types, barRow(bar)],
      amounts: [...counts, 1],
    })),
    ...Array.from(task.sizes, (_, type) => ({ price: forbidding / dearest, rows: [type], amounts: [1] })),
    ...task.bars.map((bar, place) => ({ price: bar.weight / dearest, rows: [barRow(place)], amounts: [1] })),
  ])
  return program
}

/**
 * A bound on the node in whole numbers: what the parts are worth, with every column and bar charged for what it is
 * worth too much or too little (Lagrangian relaxation). True whatever the worths are; sharp when they are the duals.
 */
function boundOf(tree: Tree, solution: Solution): number {
  const { task, patterns, columns, bars, dearest } = tree
  const fine = Math.max(1, Math.floor(2 ** 50 / tree.incumbent.plan().weight))
  const whole = (worth: number): number => Math.floor(worth * dearest * fine)
  const forbidding = tree.incumbent.plan().weight * fine
  const values = Float64Array.from(task.sizes, (_, type) =>
    Math.min(forbidding, Math.max(0, whole(solution.worth[type]!))),
  )
  let sum = values.reduce((total, value, type) => total + value * task.demand[type]!, 0)
  const charges = bars.map((range, bar) => {
    const worth = Math.min(task.bars[bar]!.weight * fine, whole(solution.worth[task.sizes.length + bar]!))
    const charge = range.most === Infinity ? Math.max(0, worth) : worth
    sum += charge > 0 ? charge * range.least : charge < 0 ? charge * range.most : 0
    return charge
  })
  patterns.forEach(({ bar, types, counts }, place) => {
    let left = task.bars[bar]!.weight * fine - charges[bar]!
    for (let index = 0; index < types.length; index++) left -= values[types[index]!]! * counts[index]!
    const range = columns[place]!
    sum += left > 0 ? left * range.least : left * range.most
  })
  return (sum / fine) * (1 - 1e-14)
}

/** Takes the solution when it is whole. */
function offerWhole(tree: Tree, amounts: Float64Array): void {
  const cuts = tree.patterns.flatMap((pattern, place) => {
    const times = Math.round(amounts[place]!)
    return times > 0 ? [{ pattern, times }] : []
  })
  const made = new Int32Array(tree.task.demand.length)
  for (const { pattern, times } of cuts)
    pattern.types.forEach((type, place) => {
      made[type] = made[type]! + times * pattern.counts[place]!
    })
  if (made.every((count, type) => count >= tree.task.demand[type]!)) tree.incumbent.offer(cuts)
}

/** The bar whose number is furthest from whole. */
function splitBar(tree: Tree, amounts: Float64Array): { bar: number; amount: number } | undefined {
  const sums = new Float64Array(tree.task.bars.length)
  tree.patterns.forEach((pattern, place) => {
    sums[pattern.bar] = sums[pattern.bar]! + amounts[place]!
  })
  // Bars cut for nothing count too: they are the last columns.
  for (let place = 0; place < sums.length; place++)
    sums[place] = sums[place]! + amounts[amounts.length - sums.length + place]!
  let bar = -1
  let most = WHOLE
  sums.forEach((sum, place) => {
    const off = Math.abs(sum - Math.round(sum))
    if (off > most) {
      most = off
      bar = place
    }
  })
  return bar < 0 ? undefined : { bar, amount: sums[bar]! }
}

/** The column nearest below a whole number, or -1. */
function splitColumn(tree: Tree, amounts: Float64Array): number {
  let chosen = -1
  let most = 0
  for (let place = 0; place < tree.patterns.length; place++) {
    const amount = amounts[place]!
    if (isWhole(amount)) continue
    const part = amount - Math.floor(amount)
    if (part > most) {
      most = part
      chosen = place
    }
  }
  return chosen
}

type Apply = (range: Range) => void

/** Explores the side of the range above `amount`, then the one below it. */
function split(tree: Tree, range: Range, amount: number, apply: Apply): void {
  const { least, most } = range
  const sides: Range[] = [
    { least: Math.ceil(amount), most },
    { least, most: Math.floor(amount) },
  ]
  for (const side of sides) {
    Object.assign(range, side)
    apply(range)
    tree.depth++
    if (range.least <= range.most) explore(tree)
    tree.depth--
  }
  Object.assign(range, { least, most })
  apply(range)
}

/** Whether the columns that must be cut are more than their bars allow: then there is nothing here. */
function overdrawn(tree: Tree): boolean {
  const forced = new Float64Array(tree.bars.length)
  tree.patterns.forEach((pattern, place) => {
    forced[pattern.bar] = forced[pattern.bar]! + tree.columns[place]!.least
  })
  return tree.bars.some((range, bar) => forced[bar]! > range.most)
}

function branch(tree: Tree, amounts: Float64Array): boolean {
  const { program, task, bars, columns } = tree
  const bar = splitBar(tree, amounts)
  if (bar !== undefined) {
    const row = task.sizes.length + bar.bar
    split(tree, bars[bar.bar]!, bar.amount, (range) => program.setRows([row], [{ ...range }]))
    return true
  }
  const place = splitColumn(tree, amounts)
  if (place < 0) return false
  split(tree, columns[place]!, amounts[place]!, ({ least, most }) => program.setColumn(place, least, most))
  return true
}

function explore(tree: Tree): void {
  if (overdrawn(tree)) return
  if (tree.nodes-- <= 0 || tree.depth > DEEPEST || tree.shouldStop()) {
    tree.proven = false
    return
  }
  const solution = tree.program.solve()
  if (solution === undefined) {
    tree.proven = false
    return
  }
  const closed = (): boolean => Math.ceil(boundOf(tree, solution)) >= tree.incumbent.plan().weight
  if (closed()) return
  const promising = solution.value * tree.dearest < tree.incumbent.plan().weight - 1 + 1e-3
  if (promising && branch(tree, solution.amounts)) return
  offerWhole(tree, solution.amounts)
  if (!closed()) tree.proven = false
}

/**
 * Branch and bound over patterns that hold every plan lighter than the best so far: on the number of bars of a kind,
 * then on the patterns. Offers what it finds; whether it proved that nothing lighter is left.
 */
export function exploreTree(
  solver: Solver,
  task: Task,
  incumbent: Incumbent,
  patterns: readonly Pattern[],
  nodes: number,
  shouldStop: ShouldStop,
): boolean {
  const columns = patterns.map((pattern) => ({ least: 0, most: timesOfUse(task, pattern) }))
  const bars = task.bars.map((bar) => ({ least: 0, most: bar.limit }))
  const program = programOf(solver, task, patterns, incumbent.plan().weight)
  const dearest = task.bars.reduce((most, bar) => Math.max(most, bar.weight), 0)
  const tree: Tree = {
    task,
    patterns,
    incumbent,
    program,
    columns,
    bars,
    shouldStop,
    dearest,
    nodes,
    depth: 0,
    proven: true,
  }
  try {
    explore(tree)
  } finally {
    program.dispose()
  }
  return tree.proven
}
