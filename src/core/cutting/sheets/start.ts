import type { ShouldStop } from '../problem.ts'
import { type Mark, markPacking, restorePacking } from './mark.ts'
import type { Packing } from './packing.ts'
import type { Random } from './random.ts'
import { cheapFirst, type Filling, PART_KEYS, type PartKey, recreate } from './recreate.ts'

const filling = (key: PartKey): Filling => ({
  key,
  noise: 0,
  taste: { blink: 0, power: 0 },
  budget: Number.POSITIVE_INFINITY,
  choose: cheapFirst(0),
})

/**
 * Fills the packing greedily, once for every order of the parts as long as there is time (once in any case), and
 * leaves it at the best: fewest parts left out, then the least cost.
 */
export const startPacking = (packing: Packing, random: Random, shouldStop: ShouldStop): void => {
  const empty = markPacking(packing)
  let best: Mark | undefined
  for (const key of PART_KEYS) {
    if (best !== undefined && shouldStop()) break
    restorePacking(packing, empty)
    recreate(packing, filling(key), random)
    if (best && (packing.leftCount - best.leftCount || packing.cost - best.cost) >= 0) continue
    best = markPacking(packing)
  }
  restorePacking(packing, best ?? empty)
}
