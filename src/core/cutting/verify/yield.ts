import type { Measure, Yield } from '../lengths/most.ts'
import type { LengthProblem } from '../problem.ts'
import { type Fault, faultOverall } from './fault.ts'

/** Whether the sums and the bound of the most from boards agree with its layouts. */
export function verifyYield(problem: LengthProblem, found: Yield, measure: Measure): Fault[] {
  const parts = new Map(problem.parts.map((part) => [part.id, part]))
  const laid = { count: 0, length: 0, worth: 0 }
  for (const layout of found.layouts)
    for (const id of layout.parts) {
      const { length = 0, worth = 0 } = parts.get(id) ?? {}
      laid.count += layout.count
      laid.length += layout.count * length
      laid.worth += layout.count * worth
    }
  const { status, upperBound } = found
  const sums = (['count', 'length', 'worth'] as const).filter((sum) => laid[sum] !== found[sum])
  const claims = [
    ...sums.map((sum) => `a ${sum} of ${found[sum]} is claimed, but ${laid[sum]} is laid`),
    upperBound < laid[measure]
      ? `the upper bound ${upperBound} is below the ${measure} ${laid[measure]}`
      : '',
    status === 'optimal' && Math.floor(upperBound) > laid[measure]
      ? `called optimal at ${laid[measure]} on a bound of ${upperBound}`
      : '',
  ]
  return claims.filter((claim) => claim !== '').map((claim) => faultOverall('worth', claim))
}
