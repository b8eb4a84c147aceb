import { cutLengths } from '../../../src/core/cutting/lengths.ts'
import type { LengthProblem, Outcome, SheetProblem } from '../../../src/core/cutting/problem.ts'
import { cutSheets, mostFromSheets } from '../../../src/core/cutting/sheets.ts'
import { verifyCost, verifyLengths, verifySheets, verifyWorth } from '../../../src/core/cutting/verify.ts'
import type { Fault } from '../../../src/core/cutting/verify/fault.ts'
import { stopAfter, timed } from './clock.ts'
import type { Instance } from './instance.ts'

/** One answer, timed and verified. `value` is NaN when there is none. */
export interface Answer {
  readonly value: number
  readonly bound: number
  readonly proven: boolean
  readonly milliseconds: number
  /** Sentences: what the verifier found, and claims that the published values contradict. */
  readonly faults: readonly string[]
}

/** An answer beside its instance. */
export interface Result extends Answer {
  readonly instance: Instance
}

function readOutcome<Layout>(
  outcome: Outcome<Layout>,
  milliseconds: number,
  verify: (layouts: readonly Layout[]) => readonly Fault[],
): Answer {
  if (outcome.status === 'impossible') {
    const faults = [`called impossible: ${outcome.reason}`]
    return { value: Number.NaN, bound: 0, proven: false, milliseconds, faults }
  }
  return {
    value: outcome.cost,
    bound: outcome.lowerBound,
    proven: outcome.status === 'optimal',
    milliseconds,
    faults: verify(outcome.layouts).map((fault) => fault.sentence),
  }
}

/** Boards at the least cost within the seconds given. */
export async function answerLengths(problem: LengthProblem, seconds: number): Promise<Answer> {
  const { answer, milliseconds } = await timed(() => cutLengths(problem, { shouldStop: stopAfter(seconds) }))
  return readOutcome(answer, milliseconds, (layouts) => [
    ...verifyLengths(problem, layouts),
    ...verifyCost(problem, answer),
  ])
}

/** Sheets at the least cost within the seconds given. */
export async function answerSheets(problem: SheetProblem, seconds: number): Promise<Answer> {
  const { answer, milliseconds } = await timed(() => cutSheets(problem, { shouldStop: stopAfter(seconds) }))
  return readOutcome(answer, milliseconds, (layouts) => [
    ...verifySheets(problem, layouts),
    ...verifyCost(problem, answer),
  ])
}

/** The most worth from the sheets on hand within the seconds given. */
export async function answerMost(problem: SheetProblem, seconds: number): Promise<Answer> {
  const { answer, milliseconds } = await timed(() =>
    mostFromSheets(problem, { shouldStop: stopAfter(seconds) }),
  )
  const faults = [...verifySheets(problem, answer.layouts, 'most'), ...verifyWorth(problem, answer)]
  return {
    value: answer.worth,
    bound: answer.upperBound,
    proven: answer.status === 'optimal',
    milliseconds,
    faults: faults.map((fault) => fault.sentence),
  }
}

const solveKind = (instance: Instance, seconds: number): Promise<Answer> => {
  if (instance.kind === 'lengths') return answerLengths(instance.problem, seconds)
  return instance.kind === 'sheets'
    ? answerSheets(instance.problem, seconds)
    : answerMost(instance.problem, seconds)
}

/** An instance of whichever kind, within the seconds given. */
export async function solve(instance: Instance, seconds: number): Promise<Result> {
  return { ...(await solveKind(instance, seconds)), instance }
}
