import type { Solution } from '../linearProgram.ts'
import type { ShouldStop } from '../problem.ts'
import type { Table } from './knapsack.ts'
import type { Master, Remainder } from './master.ts'
import type { Certificate } from './pricing.ts'
import { pricePatterns, readWorths } from './pricing.ts'
import type { Task } from './task.ts'

/** The relaxed problem of a remainder, as far as it was solved. */
export interface Relaxed {
  readonly solution: Solution
  /** The cost of the solution. */
  readonly value: number
  /** No way to cut the remainder costs less; proven. */
  readonly bound: number
  /** What proves the bound of the last round, which is not always the best. */
  readonly certificate?: Certificate
  /** Whether no pattern is left that would help. */
  readonly complete: boolean
}

export interface Effort {
  /** Rounds of new patterns at most. */
  readonly rounds: number
  /** Told the best bound so far: nothing is gained by going on. */
  readonly enough: (bound: number, value: number) => boolean
  readonly shouldStop: ShouldStop
}

/**
 * Solves the relaxed problem by column generation (Gilmore and Gomory, Operations Research 9, 1961): patterns are
 * added while some are worth more than they cost. Undefined when stopped before there was any solution.
 */
export function relax(
  task: Task,
  master: Master,
  table: Table,
  remainder: Remainder,
  effort: Effort,
): Relaxed | undefined {
  let latest: Relaxed | undefined
  let bound = 0
  master.setRemainder(remainder)
  for (let round = 0; ; round++) {
    const solution = master.solve(effort.shouldStop)
    if (solution === undefined) return latest
    const costs = master.costs()
    const value = solution.value * Math.max(...costs)
    latest = { solution, value, bound, complete: false }
    if (round >= effort.rounds) return latest
    const worths = readWorths(task, solution.worth, costs)
    const priced = pricePatterns(task, table, worths, remainder, effort.shouldStop)
    if (priced === undefined) return latest
    const { certificate, patterns } = priced
    bound = Math.max(bound, certificate.bound)
    latest = { solution, value, bound, certificate, complete: patterns.length === 0 }
    if (latest.complete || effort.enough(bound, value)) return latest
    if (master.add(patterns) === 0) return latest
  }
}
