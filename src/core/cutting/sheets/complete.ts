import type { ShouldStop } from '../problem.ts'
import { type Mark, markPacking, restorePacking } from './mark.ts'
import type { Packing } from './packing.ts'
import type { Random } from './random.ts'
import { cheapFirst, leastPrice, PART_KEYS, recreate } from './recreate.ts'

/** Gives the parts without a place more sheets, whatever they cost, in a few ways; leaves the cheapest. */
export const complete = (packing: Packing, random: Random, shouldStop: ShouldStop): void => {
  const start = markPacking(packing)
  let best: Mark | undefined
  for (const [index, key] of PART_KEYS.entries()) {
    if (best && shouldStop()) break
    restorePacking(packing, start)
    const taste = { blink: 0.02, power: 0 as const }
    const budget = Number.POSITIVE_INFINITY
    const choose = index % 2 === 0 ? cheapFirst(0.1) : leastPrice
    recreate(packing, { key, noise: 0.1, taste, budget, choose }, random)
    if (best && (packing.leftCount - best.leftCount || packing.cost - best.cost) >= 0) continue
    best = markPacking(packing)
  }
  restorePacking(packing, best ?? start)
}
