import type { ShouldStop } from '../problem.ts'
import { markPacking, restorePacking } from './mark.ts'
import type { Packing } from './packing.ts'
import type { Random } from './random.ts'
import { cheapFirst, type Filling, PART_KEYS, recreate } from './recreate.ts'
import { dropSheet, ruin } from './ruin.ts'

export const TUNING = {
  wanted: 10,
  blink: 0.02,
  shaky: 0.1,
  noise: 0.3,
  history: 5,
  room: 0.03,
  learn: 0.05,
  every: 50,
  power: 0,
}

/** Gap worth: the free room that is in large pieces. */
export const roomScore = (packing: Packing): number => {
  let score = 0
  for (const sheet of packing.sheets) {
    const whole = packing.job.sheets[sheet.type]?.area as number
    for (const gap of sheet.gaps) {
      const area = gap.gap * (gap.along === 0 ? gap.width : gap.length)
      score += (area / whole) ** 2
    }
  }
  return score
}

/** Searches until nothing is left without a place within the budget. True when found. */
export const reachGoal = (
  packing: Packing,
  budget: number,
  random: Random,
  shouldStop: ShouldStop,
): boolean => {
  const score = (): number => packing.leftWeight - TUNING.room * roomScore(packing)
  while (packing.cost > budget) dropSheet(packing, random.below(packing.sheets.length))
  let mark = markPacking(packing)
  let current = score()
  const history = new Float64Array(TUNING.history).fill(current)
  let slot = 0
  let count = 0
  while (packing.leftCount > 0) {
    if (shouldStop()) return false
    packing.effort += 5000
    ruin(packing, 1 + random.below(TUNING.wanted), random)
    const filling: Filling = {
      key: PART_KEYS[random.below(PART_KEYS.length)] as Filling['key'],
      noise: TUNING.noise,
      taste: { blink: random.next() < TUNING.shaky ? 0.3 : TUNING.blink, power: TUNING.power as 0 | 1 },
      budget,
      choose: cheapFirst(0.3),
    }
    recreate(packing, filling, random)
    const next = score()
    if (next <= current || next <= (history[slot] as number)) {
      current = next
      mark = markPacking(packing)
    } else restorePacking(packing, mark)
    if (TUNING.learn > 0 && ++count % TUNING.every === 0) {
      for (let part = 0; part < packing.left.length; part++) {
        const left = packing.left[part] as number
        if (left === 0) continue
        const more = (packing.weight[part] as number) * TUNING.learn
        packing.weight[part] = (packing.weight[part] as number) + more
        packing.leftWeight += more * left
      }
      current = score()
      mark = markPacking(packing)
    }
    history[slot] = current
    slot = (slot + 1) % history.length
  }
  return true
}
