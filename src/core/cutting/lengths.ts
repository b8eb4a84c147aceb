import { checkLengthProblem } from './lengths/check.ts'
import { layoutsOf } from './lengths/layouts.ts'
import { cutOneByOne, gatherOffcut } from './lengths/offcuts.ts'
import type { Found } from './lengths/search.ts'
import { findPlan } from './lengths/search.ts'
import type { Task } from './lengths/task.ts'
import { findTooLong, reduceProblem } from './lengths/task.ts'
import type { Solver } from './linearProgram.ts'
import { loadSolver } from './linearProgram.ts'
import type { LengthLayout, LengthProblem, Outcome, ShouldStop } from './problem.ts'

export interface LengthSearch {
  readonly shouldStop: ShouldStop
  /** The same seed, the same choices, as far as time allows. */
  readonly seed?: number | undefined
  /** Loads the solver when one is needed; the one shared in this thread by default. */
  readonly load?: (() => Promise<Solver>) | undefined
}

type LengthOutcome = Outcome<LengthLayout>

const NOTHING: LengthOutcome = { status: 'optimal', layouts: [], cost: 0, pieces: 0, lowerBound: 0 }

/** The part that stays uncut when the stock on hand runs out, if one does. */
function findUncut(task: Task, found: Found): string | undefined {
  const cut = found.cuts.find(({ pattern }) => pattern.bar === task.pretend)
  return cut === undefined ? undefined : task.sources[cut.pattern.types[0]!]![0]!.id
}

function refuse(task: Task, found: Found, part: string): LengthOutcome {
  const proven = found.leastWeight >= task.bars[task.pretend!]!.weight
  const reason = proven
    ? `the stock on hand runs out before part "${part}" is cut`
    : `no way was found in the time given to cut part "${part}" from the stock on hand`
  return { status: 'impossible', part, reason, proven }
}

function answer(problem: LengthProblem, task: Task, found: Found, shouldStop: ShouldStop): LengthOutcome {
  const boards = gatherOffcut(task, cutOneByOne(task, found.cuts), shouldStop)
  const cost = boards.reduce((sum, board) => sum + task.bars[board.bar]!.price, 0) * task.cent
  const lowerBound = Math.min(cost, found.leastPrice * task.cent)
  const status = cost === lowerBound ? 'optimal' : 'stopped'
  return { status, layouts: layoutsOf(problem, task, boards), cost, pieces: boards.length, lowerBound }
}

/**
 * Boards for all the parts at the least cost, then from the fewest pieces, then with one offcut as long as may be.
 * Asynchronous because the solver of linear programmes is loaded when first needed; from then on it runs through.
 * Throws a RangeError for sizes, prices or counts that are no whole numbers in range.
 */
export async function cutLengths(problem: LengthProblem, search: LengthSearch): Promise<LengthOutcome> {
  checkLengthProblem(problem)
  const { shouldStop, seed = 1, load = loadSolver } = search
  const tooLong = findTooLong(problem)
  if (tooLong !== undefined)
    return {
      status: 'impossible',
      part: tooLong.id,
      reason: `part "${tooLong.id}" is longer than any stock`,
      proven: true,
    }
  if (problem.parts.every((part) => part.count === 0)) return NOTHING
  const task = reduceProblem(problem)
  const found = await findPlan(task, load, shouldStop, seed)
  const uncut = findUncut(task, found)
  return uncut === undefined ? answer(problem, task, found, shouldStop) : refuse(task, found, uncut)
}
