import { performance } from 'node:perf_hooks'
import { cutLengths } from '../core/cutting/lengths.ts'
import { type Measure, mostFromLengths } from '../core/cutting/lengths/most.ts'
import { loadSolver } from '../core/cutting/linearProgram.ts'
import { orderCuts, type SawingJob } from '../core/cutting/order.ts'
import type { LengthProblem, Outcome, SheetProblem } from '../core/cutting/problem.ts'
import { cutSheets, mostFromSheets } from '../core/cutting/sheets.ts'
import { cutStrips } from '../core/cutting/strips.ts'
import type { StripProblem } from '../core/cutting/strips/stripProblem.ts'
import { verifyCost, verifyLengths, verifySheets, verifyWorth } from '../core/cutting/verify.ts'
import type { Fault } from '../core/cutting/verify/fault.ts'
import { verifyStrips } from '../core/cutting/verify/strips.ts'
import { verifyYield } from '../core/cutting/verify/yield.ts'

/** What is to be found. */
export type Question =
  | { readonly kind: 'lengths'; readonly problem: LengthProblem }
  | { readonly kind: 'strips'; readonly problem: StripProblem }
  | { readonly kind: 'sheets'; readonly problem: SheetProblem }
  | { readonly kind: 'most from sheets'; readonly problem: SheetProblem }
  | { readonly kind: 'most from lengths'; readonly problem: LengthProblem; readonly measure: Measure }

/** What a worker is asked to find. `stop` is one shared integer: not 0 means stop now. */
export type SearchTask = Question & { readonly seconds: number; readonly stop: SharedArrayBuffer }

/** Of the time for strips, the share after which boards are looked at. */
const HALFWAY = 0.6

/** Runs one search and checks what it found; the clock is here because the core has none. */
export async function work(task: SearchTask) {
  // Loaded before the clock runs: the first search of a thread has its whole time, too.
  if (!task.kind.startsWith('most')) await loadSolver()
  const start = performance.now()
  const after = (seconds: number) => () => performance.now() >= start + seconds * 1000
  const stop = new Int32Array(task.stop)
  const late = after(task.seconds)
  const shouldStop = () => Atomics.load(stop, 0) !== 0 || late()
  const outcome = await answer(task, { shouldStop, halfway: after(task.seconds * HALFWAY) })
  return { outcome, milliseconds: performance.now() - start }
}

/** How long fewer saw settings are looked for; the first order is there before that. */
const ORDER_SECONDS = 2

/** The saw settings of a job. */
export function order(job: SawingJob) {
  const end = performance.now() + ORDER_SECONDS * 1000
  return orderCuts(job, () => performance.now() >= end)
}

type Stops = { readonly shouldStop: () => boolean; readonly halfway: () => boolean }

async function answer(question: Question, stops: Stops) {
  if (question.kind === 'sheets') {
    const outcome = await cutSheets(question.problem, stops)
    return verified(outcome, (layouts) => [
      ...verifySheets(question.problem, layouts),
      ...verifyCost(question.problem, outcome),
    ])
  }
  if (question.kind === 'most from sheets') {
    const most = mostFromSheets(question.problem, stops)
    return sound(most, [
      ...verifySheets(question.problem, most.layouts, 'most'),
      ...verifyWorth(question.problem, most),
    ])
  }
  if (question.kind === 'most from lengths') {
    const { problem, measure } = question
    const most = mostFromLengths(problem, measure, stops)
    return sound(most, [
      ...verifyLengths(problem, most.layouts, 'most'),
      ...verifyYield(problem, most, measure),
    ])
  }
  if (question.kind === 'strips') {
    const outcome = await cutStrips(question.problem, stops)
    return verified(outcome, () => verifyStrips(question.problem, outcome))
  }
  const outcome = await cutLengths(question.problem, stops)
  return verified(outcome, (layouts) => [
    ...verifyLengths(question.problem, layouts),
    ...verifyCost(question.problem, outcome),
  ])
}

/** Throws where the layouts do not hold: a wrong one is never shown, for it would cost somebody their last sheet. */
export function verified<Layout>(
  outcome: Outcome<Layout>,
  verify: (layouts: readonly Layout[]) => readonly Fault[],
): Outcome<Layout> {
  return sound(outcome, outcome.status === 'impossible' ? [] : verify(outcome.layouts))
}

function sound<Result>(result: Result, [fault]: readonly Fault[]): Result {
  if (fault) throw new Error(`a layout does not hold: ${fault.sentence}`)
  return result
}
