import type { LengthProblem } from '../../../../src/core/cutting/problem.ts'

/** The least cost and, at that cost, the fewest pieces of stock; undefined when the parts cannot all be cut. */
export interface Least {
  readonly cost: number
  readonly pieces: number
}

interface Open {
  readonly kind: number
  room: number
}

/**
 * Goes through every way to put the parts, one after another, into the bars opened so far or a new one. It shares
 * nothing with the search: sums of lengths and kerfs are compared as they stand.
 */
export function exhaust(problem: LengthProblem): Least | undefined {
  const lengths = problem.parts
    .flatMap((part) => Array.from({ length: part.count }, () => part.length))
    .sort((a, b) => b - a)
  const open: Open[] = []
  const used = problem.stock.map(() => 0)
  let best: Least | undefined
  const worse = (cost: number): boolean =>
    best !== undefined && (cost > best.cost || (cost === best.cost && open.length >= best.pieces))
  const place = (index: number, cost: number): void => {
    if (worse(cost)) return
    if (index === lengths.length) {
      best = { cost, pieces: open.length }
      return
    }
    const length = lengths[index] ?? 0
    for (const bar of open) {
      if (bar.room < length + problem.kerf) continue
      bar.room -= length + problem.kerf
      place(index + 1, cost)
      bar.room += length + problem.kerf
    }
    problem.stock.forEach((stock, kind) => {
      const room = stock.length - problem.trim - length
      if (room < 0 || (used[kind] ?? 0) >= (stock.onHand ?? Infinity)) return
      used[kind] = (used[kind] ?? 0) + 1
      open.push({ kind, room })
      place(index + 1, cost + stock.price)
      open.pop()
      used[kind] = (used[kind] ?? 0) - 1
    })
  }
  place(0, 0)
  return best
}
