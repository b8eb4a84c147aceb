import type {
  LengthLayout,
  LengthProblem,
  Outcome,
  StockLength,
} from '../../../../src/core/cutting/problem.ts'
import { verifyCost, verifyLengths } from '../../../../src/core/cutting/verify.ts'

type Solved = Exclude<Outcome<LengthLayout>, { status: 'impossible' }>

/** A problem of parts given as length and count, without trim. */
export const problemOf = (
  parts: readonly (readonly [number, number])[],
  stock: readonly StockLength[],
  kerf = 0,
): LengthProblem => ({
  parts: parts.map(([length, count], place) => ({ id: `part ${place + 1}`, length, count })),
  stock,
  kerf,
  trim: 0,
  keepable: 0,
})

/** One kind of board at one cent each. */
export const boardsOf = (length: number): StockLength[] => [{ id: 'board', length, price: 1 }]

export const neverStop = (): boolean => false

/** The outcome, which must be a sound one with layouts; throws with what is wrong otherwise. */
export function soundly(problem: LengthProblem, outcome: Outcome<LengthLayout>): Solved {
  if (outcome.status === 'impossible') throw new Error(`called impossible: ${outcome.reason}`)
  const faults = [...verifyLengths(problem, outcome.layouts), ...verifyCost(problem, outcome)]
  if (faults.length > 0) throw new Error(faults.map((fault) => fault.sentence).join('; '))
  return outcome
}
