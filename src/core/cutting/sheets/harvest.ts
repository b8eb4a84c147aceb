import type { ShouldStop } from '../problem.ts'
import { type Mark, markPacking, restorePacking } from './mark.ts'
import type { Packing } from './packing.ts'
import type { Random } from './random.ts'
import { cheapFirst, type PartKey, recreate, WORTH_KEYS } from './recreate.ts'
import { ruin } from './ruin.ts'
import { roomScore } from './search.ts'

/** How much free room in large pieces counts beside the worth of parts. */
const ROOM = 0.01

const fill = (packing: Packing, random: Random): void =>
  recreate(
    packing,
    {
      key: WORTH_KEYS[random.below(WORTH_KEYS.length)] as PartKey,
      noise: random.next() * 0.8,
      skip: random.next() < 0.5 ? 0.2 : 0,
      taste: { blink: random.next() < 0.2 ? 0.3 : 0.02, power: random.next() < 0.5 ? 0 : 1 },
      budget: Number.POSITIVE_INFINITY,
      choose: cheapFirst(0.3),
    },
    random,
  )

/**
 * Lays as much worth as it can on the sheets there are, by ruin and recreate, until `shouldStop`. Leaves the packing
 * at the best; `onBetter` hears of every better one.
 */
export const harvest = (
  packing: Packing,
  random: Random,
  shouldStop: ShouldStop,
  onBetter: () => void,
): void => {
  const score = (): number => packing.leftWeight - ROOM * roomScore(packing)
  fill(packing, random)
  let best: Mark = markPacking(packing)
  let mark = best
  let current = score()
  onBetter()
  const history = new Float64Array(20).fill(current)
  for (let step = 0; !shouldStop(); step++) {
    packing.effort += 5000
    ruin(packing, 1 + random.below(10), random)
    fill(packing, random)
    const next = score()
    const slot = step % history.length
    if (next <= current || next <= (history[slot] as number)) {
      current = next
      mark = markPacking(packing)
      if (packing.leftWeight < best.leftWeight - 1e-9) {
        best = mark
        onBetter()
      }
    } else restorePacking(packing, mark)
    history[slot] = current
  }
  restorePacking(packing, best)
}
