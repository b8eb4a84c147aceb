import type { ShouldStop } from '../../problem.ts'
import type { Job } from '../job.ts'
import { markPacking, restorePacking } from '../mark.ts'
import type { Packing } from '../packing.ts'
import { dropSheet } from '../ruin.ts'
import { packingScore, stepOnce } from '../search.ts'
import type { Filler } from './filler.ts'
import { cheapestPlan, needOf, type Plan, planWithin } from './plan.ts'

/** Share of the effort that goes into filling rows anew; the rest moves single parts. */
const REFILL_SHARE = 0.95

/** Most rows that are filled anew in one step. */
const MOST_ROWS = 3

/** A descent ends after so many steps in a row that gain less than this, in largest sheets. */
const IDLE_STEPS = 30
const LEAST_GAIN = 1e-4

/** How many sheets are filled anew between two descents. */
const LEAST_SHEETS = 2
const MOST_SHEETS = 4

/** A gain is notable when it brings the weight of the parts without a place down to this share. */
const NOTABLE = 0.9

/** From how many parts, and how many of the largest sheets, a job counts as large. */
const LARGE_PARTS = 150
const LARGE_SHEETS = 4

/** The share of the sheets that parts take up in the first plan. */
const FIRST_SHARE = 0.985

/** Whether a job has parts enough that sheets can be filled nearly flush from them. */
export const isLarge = (job: Job): boolean => {
  const parts = job.parts.reduce((sum, part) => sum + part.count, 0)
  const largest = Math.max(...job.sheets.map((sheet) => sheet.area))
  return parts >= LARGE_PARTS && needOf(job) >= LARGE_SHEETS * largest
}

/** The emptiest sheet of a type. */
const emptiest = (packing: Packing, type: number): number => {
  let found = -1
  packing.sheets.forEach((sheet, index) => {
    if (sheet.type === type && (found < 0 || sheet.used < packing.sheets[found]!.used)) found = index
  })
  return found
}

/** Gives sheets back and opens others, until what is open is what the plan says; new ones are filled, small ones first. */
export const followPlan = (filler: Filler, plan: Plan, shouldStop: ShouldStop): void => {
  const { packing } = filler
  const { sheets } = packing.job
  const missing: number[] = []
  plan.forEach((count, type) => {
    while (packing.opened[type]! > count) dropSheet(packing, emptiest(packing, type))
    for (let turn = packing.opened[type]!; turn < count; turn++) missing.push(type)
  })
  missing.sort((a, b) => sheets[a]!.area - sheets[b]!.area)
  filler.openFilled(missing, shouldStop)
}

/** Gives all sheets back. */
export const clearAll = ({ packing }: Filler): void => {
  while (packing.sheets.length > 0) dropSheet(packing, 0)
}

/** Lays all parts anew on the sheets of a plan with a little room to spare; some may be left without a place. */
export const refillAll = (filler: Filler, shouldStop: ShouldStop): void => {
  const { packing } = filler
  const plan = cheapestPlan(packing.job.sheets, needOf(packing.job) / FIRST_SHARE)
  if (plan === undefined) return
  clearAll(filler)
  followPlan(filler, plan, shouldStop)
}

/** Fills rows anew and moves single parts as long as fewer parts are left without a place for it. */
const descend = (filler: Filler, budget: number, shouldStop: ShouldStop): void => {
  const { packing, random } = filler
  let mark = markPacking(packing)
  let current = packingScore(packing)
  let refilling = 0
  let idle = 0
  const from = packing.effort
  while (packing.leftCount > 0 && idle < IDLE_STEPS && !shouldStop()) {
    const before = packing.effort
    if (refilling <= (before - from) * REFILL_SHARE) {
      filler.refillRows(1 + random.below(MOST_ROWS), shouldStop)
      refilling += packing.effort - before
    } else stepOnce(packing, budget, random)
    const next = packingScore(packing)
    idle = next < current - LEAST_GAIN ? 0 : idle + 1
    if (next <= current) {
      current = next
      mark = markPacking(packing)
    } else restorePacking(packing, mark)
  }
}

/**
 * Searches for a place for every part on the sheets that the budget buys, for jobs of many parts: sheets are filled with
 * rows that lie nearly flush, then, again and again, the emptiest few sheets are filled anew and what comes of it is
 * bettered by rows and single parts (iterated local search, Lourenço, Martin, Stützle 2003). True when found; given up
 * after `patience` such turns without notable gain.
 */
export const reachPlan = (
  filler: Filler,
  budget: number,
  patience: number,
  shouldStop: ShouldStop,
): boolean => {
  const { packing, random } = filler
  const plan = planWithin(packing.job, budget)
  if (plan === undefined) return false
  followPlan(filler, plan, shouldStop)
  descend(filler, budget, shouldStop)
  let mark = markPacking(packing)
  let current = packingScore(packing)
  let stalled = 0
  let target = packing.leftWeight * NOTABLE
  while (packing.leftCount > 0 && stalled < patience && !shouldStop()) {
    const count = LEAST_SHEETS + random.below(MOST_SHEETS - LEAST_SHEETS + 1)
    filler.refillSheets(count, shouldStop)
    descend(filler, budget, shouldStop)
    const next = packingScore(packing)
    stalled++
    if (packing.leftWeight < target) {
      stalled = 0
      target = packing.leftWeight * NOTABLE
    }
    if (next <= current) {
      current = next
      mark = markPacking(packing)
    } else restorePacking(packing, mark)
  }
  return packing.leftCount === 0
}
