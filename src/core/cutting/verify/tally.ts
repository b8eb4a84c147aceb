import type { Fault } from './fault.ts'
import { faultIn, faultOverall } from './fault.ts'

interface Counted {
  readonly stock: string
  readonly count: number
}

interface Wanted {
  readonly id: string
  readonly count: number
}

interface Held {
  readonly id: string
  readonly onHand?: number | undefined
}

/** `all`: every part exactly as often as asked. `most`: no part more often than asked. */
export type Demand = 'all' | 'most'

/** Adds up how often each id comes, each weighted by `times`. */
export const addTo = (sums: Map<string, number>, id: string, times: number): void => {
  sums.set(id, (sums.get(id) ?? 0) + times)
}

/** Layouts that name stock nobody sells, or that are cut a number of times that is no count. */
export function findMisnamed(stock: readonly Held[], layouts: readonly Counted[]): Fault[] {
  const known = new Set(stock.map((piece) => piece.id))
  return layouts.flatMap((layout, index) => [
    ...(known.has(layout.stock)
      ? []
      : [faultIn('stock', index, `there is no stock called "${layout.stock}"`)]),
    ...(Number.isSafeInteger(layout.count) && layout.count > 0
      ? []
      : [faultIn('count', index, `it is cut ${layout.count} times, which is no count`)]),
  ])
}

/** Parts made too often or not often enough, and parts that nobody asked for. */
export function findMiscounted(
  parts: readonly Wanted[],
  made: ReadonlyMap<string, number>,
  demand: Demand,
): Fault[] {
  const wanted = new Map<string, number>()
  for (const part of parts) addTo(wanted, part.id, part.count)
  const strangers = [...made.keys()].filter((id) => !wanted.has(id))
  const wrong = [...wanted].filter(([id, count]) => {
    const got = made.get(id) ?? 0
    return demand === 'all' ? got !== count : got > count
  })
  return [
    ...strangers.map((id) => faultOverall('demand', `part "${id}" is cut but nobody asked for it`, id)),
    ...wrong.map(([id, count]) =>
      faultOverall(
        'demand',
        `part "${id}" is made ${made.get(id) ?? 0} times where ${count} are asked for`,
        id,
      ),
    ),
  ]
}

/** Stock used beyond what is on hand; for the most, one of each where nothing is said. */
export function findOverdrawn(stock: readonly Held[], layouts: readonly Counted[], demand: Demand): Fault[] {
  const used = new Map<string, number>()
  for (const layout of layouts) addTo(used, layout.stock, layout.count)
  const unsaid = demand === 'all' ? Number.POSITIVE_INFINITY : 1
  return stock.flatMap(({ id, onHand = unsaid }) => {
    const count = used.get(id) ?? 0
    return count > onHand
      ? [faultOverall('onHand', `${count} of "${id}" are used but ${onHand} are on hand`)]
      : []
  })
}
