import { mentions } from '../core/checks/cautionWords.ts'
import { type Length, nanometres, times } from '../core/measure/length.ts'
import { showFloorLoad, showWeight } from '../core/measure/showWeight.ts'
import { showArea } from '../core/measure/showAmounts.ts'
import type { Plan, Spec } from '../core/plan.ts'
import { POUND_PER_CUBIC_FOOT } from '../core/quantities/density.ts'
import { floorLoad, soilWeight, USUAL_DECK, WET_SOIL } from '../core/quantities/floorLoad.ts'
import type { Range } from '../core/quantities/product.ts'
import type { Figure } from './reply.ts'
import type { Show } from './show.ts'

export const SOILS = ['none', 'garden', 'light'] as const
export type SoilName = (typeof SOILS)[number]

/** A box with what grows in it, on the floor. */
export interface Planted {
  /** Grams of soaked soil. */
  readonly soil: Range
  /** Grams of the heaviest soil and the box. */
  readonly total: number
  /** kg/m2 under the box. */
  readonly load: number
  /** mm2 over which the whole must be spread to stay at what decks carry at the least. */
  readonly spread: number
}

/** Words that say that something is filled with soil. */
const PLANTERS = [
  'planter',
  'plant',
  'plant box',
  'flower box',
  'window box',
  'raised bed',
  'garden bed',
  'flower pot',
  'plant pot',
]

/** The soil that was asked for; garden soil in what is called a planter, else none. */
export const soilIn = (asked: SoilName | undefined, words: readonly string[] = []): SoilName =>
  asked ?? (mentions(words.join(' '), PLANTERS) ? 'garden' : 'none')

/** What a plan's object weighs filled to `depth` with soaked soil, with `box` grams round it; undefined without soil. */
export function plantedBox(plan: Plan, box: number, soil: SoilName, depth: Length): Planted | undefined {
  if (soil === 'none') return undefined
  const [length, width] = footprint(plan.spec.object)
  const filled = soilWeight(length, width, depth, soil)
  const total = filled.high + box
  return {
    soil: filled,
    total,
    load: floorLoad(total, plan.outside.length, plan.outside.width),
    spread: (total / 1000 / USUAL_DECK.low) * 1_000_000,
  }
}

/** Sides of a rectangle with the area of the object; pi d2 / 4 for a round one. */
const footprint = (object: Spec['object']): readonly [Length, Length] =>
  object.shape === 'rectangle'
    ? [object.length, object.width]
    : [object.diameter, nanometres((times(object.diameter, 1) * Math.PI) / 4)]

/** What to say of a planted box, one line each. */
export function plantedNotes({ soil, total, load, spread }: Planted, kind: 'garden' | 'light', show: Show) {
  const { units } = show
  const deck = `${showFloorLoad(USUAL_DECK.low, units)} to ${showFloorLoad(USUAL_DECK.high, units)}`
  return [
    `soaked ${kind} soil ${showWeight(soil.low, units)} to ${showWeight(soil.high, units)}, ${heaviest(kind, units)} at the most; with the box ${showWeight(total, units)}`,
    load > USUAL_DECK.low
      ? `${showFloorLoad(load, units)} under it; decks are commonly built for ${deck}: spread it over ${showArea(spread, units)}, or put it over a beam`
      : `${showFloorLoad(load, units)} under it; decks are commonly built for ${deck}`,
  ]
}

export const plantedFigures = (planted: Planted | undefined): Readonly<Record<string, Figure>> =>
  planted
    ? { soil: { ...planted.soil }, planted: planted.total, load: planted.load, spread: planted.spread }
    : { soil: null, planted: null, load: null, spread: null }

/** What a cubic foot or a cubic metre of it weighs at the most. */
const heaviest = (kind: 'garden' | 'light', units: Show['units']): string => {
  const { high } = WET_SOIL[kind]
  return units === 'inch'
    ? `${Math.round(high / POUND_PER_CUBIC_FOOT)} lb/cu ft`
    : `${Math.round(high)} kg/m³`
}
