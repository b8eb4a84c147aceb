import type { LengthProblem } from '../problem.ts'

function checkWhole(name: string, value: number, least: number): void {
  if (!Number.isSafeInteger(value) || value < least)
    throw new RangeError(`${name} must be a whole number of at least ${least}, not ${value}`)
}

function checkNames(kind: string, ids: readonly string[]): void {
  const twice = ids.find((id, place) => ids.indexOf(id) !== place)
  if (twice !== undefined) throw new RangeError(`two ${kind} are called "${twice}"`)
}

/** Throws a RangeError for what only a caller's bug can give: sizes below 1, fractions, one name used twice. */
export function checkLengthProblem(problem: LengthProblem): void {
  checkWhole('the kerf', problem.kerf, 0)
  checkWhole('the trim', problem.trim, 0)
  checkWhole('the keepable length', problem.keepable, 0)
  checkNames(
    'parts',
    problem.parts.map((part) => part.id),
  )
  checkNames(
    'pieces of stock',
    problem.stock.map((stock) => stock.id),
  )
  for (const { id, length, count, worth = 0 } of problem.parts) {
    checkWhole(`the worth of "${id}"`, worth, 0)
    checkWhole(`the length of "${id}"`, length, 1)
    checkWhole(`the count of "${id}"`, count, 0)
  }
  for (const { id, length, price, onHand } of problem.stock) {
    checkWhole(`the length of "${id}"`, length, 1)
    checkWhole(`the price of "${id}"`, price, 0)
    if (onHand !== undefined) checkWhole(`the number of "${id}" on hand`, onHand, 0)
  }
}
