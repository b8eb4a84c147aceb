import type { Column, LinearProgram, Row, Solution, Solver } from '../linearProgram.ts'
import { createProgram } from '../linearProgram.ts'
import type { ShouldStop } from '../problem.ts'
import type { Pattern } from './pattern.ts'
import { keyOf } from './pattern.ts'
import type { Task } from './task.ts'

/** What is still to be made and what may still be used. */
export interface Remainder {
  readonly demand: Int32Array
  /** By bar; `Infinity` where there is no end. */
  readonly limits: Float64Array
}

/** The patterns known so far, as the linear programme that chooses among them. */
export interface Master {
  readonly patterns: readonly Pattern[]
  /** Adds those not yet known; how many that were. */
  readonly add: (patterns: readonly Pattern[]) => number
  /** What one of each bar costs from now on. */
  readonly setCosts: (costs: Float64Array) => void
  readonly setRemainder: (remainder: Remainder) => void
  readonly solve: (shouldStop: ShouldStop) => Solution | undefined
  readonly costs: () => Float64Array
  readonly dispose: () => void
}

/** The row of each bar that may run out, after the rows of the types. */
function limitRows(task: Task): Int32Array {
  let row = task.sizes.length
  return Int32Array.from(task.bars, (bar) => (bar.limit === Infinity ? -1 : row++))
}

function rowsOf(task: Task, remainder: Remainder): Row[] {
  const asked = Array.from(remainder.demand, (least) => ({ least, most: Infinity }))
  const held = task.bars.flatMap((bar, place) =>
    bar.limit === Infinity ? [] : [{ least: -Infinity, most: remainder.limits[place]! }],
  )
  return [...asked, ...held]
}

function changedRows(before: readonly Row[], after: readonly Row[]): number[] {
  return after.flatMap((row, place) => {
    const old = before[place]!
    return row.least === old.least && row.most === old.most ? [] : [place]
  })
}

/** All that the task asks for. */
export const everything = (task: Task): Remainder => ({
  demand: task.demand.slice(),
  limits: Float64Array.from(task.bars, (bar) => bar.limit),
})

/** A master problem with no pattern in it. Dispose it in the end. */
export function createMaster(solver: Solver, task: Task, first: Float64Array): Master {
  const heldRows = limitRows(task)
  let rows = rowsOf(task, everything(task))
  const program: LinearProgram = createProgram(solver, rows)
  const patterns: Pattern[] = []
  const known = new Set<string>()
  let costs = first
  let dearest = Math.max(...costs)

  const columnOf = (pattern: Pattern): Column => {
    const held = heldRows[pattern.bar]!
    const price = costs[pattern.bar]! / dearest
    if (held < 0) return { price, rows: pattern.types, amounts: pattern.counts }
    return { price, rows: [...pattern.types, held], amounts: [...pattern.counts, 1] }
  }
  return {
    patterns,
    costs: () => costs,
    add: (offered) => {
      const fresh = offered.filter((pattern) => {
        const key = keyOf(pattern)
        return known.has(key) ? false : known.add(key)
      })
      if (fresh.length > 0) program.addColumns(fresh.map(columnOf))
      patterns.push(...fresh)
      return fresh.length
    },
    setCosts: (next) => {
      costs = next
      dearest = Math.max(...costs)
      program.setPrices(Float64Array.from(patterns, (pattern) => costs[pattern.bar]! / dearest))
    },
    setRemainder: (remainder) => {
      const next = rowsOf(task, remainder)
      const places = changedRows(rows, next)
      if (places.length > 0) {
        program.setRows(
          places,
          places.map((place) => next[place]!),
        )
      }
      rows = next
    },
    solve: (shouldStop) => program.solve(task.sizes.length > 300 ? shouldStop : undefined),
    dispose: program.dispose,
  }
}
