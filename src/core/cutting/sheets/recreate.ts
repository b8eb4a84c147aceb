import { fitsSheet } from './job.ts'
import { layPart, openSheet, type Packing, type Place } from './packing.ts'
import { findPlace, type Taste } from './place.ts'
import type { Random } from './random.ts'

/** What parts are taken first: those with the highest key. */
export type PartKey = (length: number, width: number, weight: number) => number

export const PART_KEYS: readonly PartKey[] = [
  (length, width) => length * width,
  (length, width) => Math.max(length, width),
  (length, width) => Math.min(length, width),
  (length) => length,
  (_, width) => width,
  (length, width) => length + width,
]

/** Keys for when not all parts can be had: by what they are worth, too. */
export const WORTH_KEYS: readonly PartKey[] = [
  (length, width, weight) => weight / (length * width),
  (length, width, weight) => (weight * weight) / (length * width),
  (_length, _width, weight) => weight,
  ...PART_KEYS.slice(0, 3),
]

/** The part types without a place, the first to be laid first; `noise` stirs the order. */
export const orderParts = (packing: Packing, key: PartKey, noise: number, random: Random): number[] => {
  const waiting: number[] = []
  const rank: number[] = []
  packing.job.parts.forEach((part, index) => {
    if ((packing.left[index] as number) === 0) return
    waiting.push(index)
    rank[index] = key(part.length, part.width, packing.weight[index] as number) * (1 - noise * random.next())
  })
  return waiting.sort((a, b) => (rank[b] as number) - (rank[a] as number))
}

/** Sheet types that take the part, are not used up and cost no more than is left to spend. */
export const openable = (packing: Packing, part: number, budget: number): number[] => {
  const found: number[] = []
  const sheets = packing.job.sheets
  for (let type = 0; type < sheets.length; type++) {
    const sheet = sheets[type] as (typeof sheets)[number]
    if (sheet.price > budget - packing.cost || (packing.opened[type] as number) >= sheet.limit) continue
    if (fitsSheet(packing.job.parts[part] as (typeof packing.job.parts)[number], sheet)) found.push(type)
  }
  return found
}

/** Chooses which type of sheet to open, -1 for none. */
export type SheetChoice = (packing: Packing, types: readonly number[], random: Random) => number

/** The type with the least price for its area; `noise` lets dearer ones pass now and then. */
export const cheapFirst =
  (noise: number): SheetChoice =>
  (packing, types, random) => {
    let best = -1
    let least = Number.POSITIVE_INFINITY
    for (const type of types) {
      const sheet = packing.job.sheets[type] as Packing['job']['sheets'][number]
      const rate = (sheet.price / sheet.area) * (1 + noise * (2 * random.next() - 1))
      if (rate >= least) continue
      least = rate
      best = type
    }
    return best
  }

/** The type with the least price, whatever its area: for the last few parts. */
export const leastPrice: SheetChoice = (packing, types) =>
  types.reduce(
    (best, type) =>
      best < 0 || packing.job.sheets[type]!.price < packing.job.sheets[best]!.price ? type : best,
    -1,
  )

/** How a packing is filled up. */
export interface Filling {
  readonly key: PartKey
  readonly noise: number
  /** Chance that a part type is passed over altogether. */
  readonly skip?: number
  readonly taste: Taste
  readonly budget: number
  readonly choose: SheetChoice
}

const layOne = (packing: Packing, part: number, filling: Filling, random: Random): boolean => {
  let place: Place = findPlace(packing, part, random, filling.taste)
  if (place.sheet < 0) {
    const types = openable(packing, part, filling.budget)
    const type = types.length === 0 ? -1 : filling.choose(packing, types, random)
    if (type < 0) return false
    openSheet(packing, type)
    place = findPlace(packing, part, random, filling.taste)
    if (place.sheet < 0) place = findPlace(packing, part, random, { ...filling.taste, blink: 0 })
  }
  layPart(packing, part, place)
  return true
}

/** Lays every part that finds a place, opening sheets as the budget allows. */
export const recreate = (packing: Packing, filling: Filling, random: Random): void => {
  for (const part of orderParts(packing, filling.key, filling.noise, random)) {
    if (filling.skip !== undefined && random.next() < filling.skip) continue
    while ((packing.left[part] as number) > 0 && layOne(packing, part, filling, random));
  }
}
