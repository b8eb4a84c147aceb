import type { ShouldStop } from '../problem.ts'
import { markPacking, restorePacking } from './mark.ts'
import type { Packing } from './packing.ts'
import type { Random } from './random.ts'
import { cheapFirst, type Filling, PART_KEYS, recreate } from './recreate.ts'
import { dropSheet, ruin } from './ruin.ts'

/** Most parts taken out in a step. */
const RUINED = 10

/** How far the order of the parts may be stirred. */
const NOISE = 0.3

/** Chance to pass over a place, and the same in the one step of ten that is shaky. */
const BLINK = 0.02
const SHAKY_BLINK = 0.3
const SHAKY = 0.1

/** How much free room in large pieces counts beside the parts without a place. */
const ROOM = 0.03

/** Over how many steps a worse packing may still pass (late acceptance, Burke, Bykov 2017). */
const HISTORY = 5

/** By how much parts without a place come to count more, and the least number of steps between. */
const LESSON = 0.05
const LESSON_STEPS = 50

/** The free room that is in large pieces: squares of gaps, in sheets. */
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

/** How many times its own area a part may come to count. */
const MOST_WEIGHT = 30

/** Makes the parts that are without a place count more, so that the search turns to them; the weights are kept in bounds. */
const learnWeights = (packing: Packing): void => {
  const { weight, left, base } = packing
  let most = 0
  for (let part = 0; part < left.length; part++) {
    if ((left[part] as number) > 0) weight[part] = (weight[part] as number) * (1 + LESSON)
    most = Math.max(most, (weight[part] as number) / (base[part] as number))
  }
  if (most > MOST_WEIGHT)
    for (let part = 0; part < left.length; part++)
      weight[part] = Math.sqrt((weight[part] as number) * (base[part] as number))
  packing.leftWeight = 0
  for (let part = 0; part < left.length; part++)
    packing.leftWeight += (left[part] as number) * (weight[part] as number)
}

/** What a search makes less: parts without a place, and free room in small pieces. */
export const packingScore = (packing: Packing): number => packing.leftWeight - ROOM * roomScore(packing)

/** Takes a few parts out and lays all that have no place anew. */
export const stepOnce = (packing: Packing, budget: number, random: Random): void => {
  packing.effort += 5000
  ruin(packing, 1 + random.below(RUINED), random)
  const filling: Filling = {
    key: PART_KEYS[random.below(PART_KEYS.length)] as Filling['key'],
    noise: NOISE,
    taste: { blink: random.next() < SHAKY ? SHAKY_BLINK : BLINK, power: 0 },
    budget,
    choose: cheapFirst(0.3),
  }
  recreate(packing, filling, random)
}

/** Searches until nothing is left without a place within the budget. True when found. */
export const reachGoal = (
  packing: Packing,
  budget: number,
  random: Random,
  shouldStop: ShouldStop,
): boolean => {
  while (packing.cost > budget) dropSheet(packing, random.below(packing.sheets.length))
  let mark = markPacking(packing)
  let current = packingScore(packing)
  const history = new Float64Array(HISTORY).fill(current)
  let slot = 0
  let count = 0
  const parts = packing.job.parts.reduce((sum, part) => sum + part.count, 0)
  const lesson = Math.max(LESSON_STEPS, parts >> 1)
  while (packing.leftCount > 0) {
    if (shouldStop()) return false
    stepOnce(packing, budget, random)
    const next = packingScore(packing)
    if (next <= current || next <= (history[slot] as number)) {
      current = next
      mark = markPacking(packing)
    } else restorePacking(packing, mark)
    if (++count % lesson === 0) {
      learnWeights(packing)
      current = packingScore(packing)
      mark = markPacking(packing)
    }
    history[slot] = current
    slot = (slot + 1) % history.length
  }
  return true
}
