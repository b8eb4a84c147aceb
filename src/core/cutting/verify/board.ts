import type { LengthLayout, LengthProblem } from '../problem.ts'
import type { Fault } from './fault.ts'
import { faultIn } from './fault.ts'

/** What is left of `usable` behind the last part's kerf, never below nothing; undefined when the parts do not fit. */
function leaveOver(usable: number, lengths: readonly number[], kerf: number): number | undefined {
  const end = lengths.reduce((reached, length) => reached + length + kerf, 0)
  return end - kerf > usable ? undefined : Math.max(0, usable - end)
}

/**
 * The faults of one board: parts unknown, parts past the end, an offcut that is not what the last kerf leaves.
 * A remainder too short to keep may be given as it is or as 0.
 */
export function checkBoard(problem: LengthProblem, layout: LengthLayout, index: number): Fault[] {
  const stock = problem.stock.find((piece) => piece.id === layout.stock)
  if (stock === undefined) return []
  const sizes = new Map(problem.parts.map((part) => [part.id, part.length]))
  const strangers = layout.parts.filter((id) => !sizes.has(id))
  if (strangers.length > 0)
    return strangers.map((id) => faultIn('demand', index, `there is no part called "${id}"`, id))
  if (layout.parts.length === 0) return [faultIn('count', index, 'nothing is cut from it')]
  const lengths = layout.parts.map((id) => sizes.get(id) ?? 0)
  const left = leaveOver(stock.length - problem.trim, lengths, problem.kerf)
  if (left === undefined) {
    const last = layout.parts.at(-1)
    return [faultIn('inside', index, `part "${last}" ends past the end of "${stock.id}"`, last)]
  }
  const kept = layout.offcut === left || (layout.offcut === 0 && left < problem.keepable)
  if (kept) return []
  return [faultIn('offcut', index, `its offcut is given as ${layout.offcut}, but ${left} is left`)]
}
