import { normalise } from './normalise.ts'
import type { Ambiguous, Invalid, UnitSystem } from './reading.ts'
import { tooLong } from './refuseFirst.ts'
import { couldBe, invalid, quoted } from './wording.ts'

/** A weight in grams, and the unit system it was typed in. */
export interface WeightRead {
  readonly status: 'read'
  readonly grams: number
  readonly units: UnitSystem
}

/** Grams in a pound, by definition (international yard and pound agreement, 1959). */
export const POUND = 453.59237

const UNITS: readonly { readonly pattern: RegExp; readonly grams: number; readonly units: UnitSystem }[] = [
  { pattern: /^(?:kg|kgs|kilos?|kilograms?)$/u, grams: 1000, units: 'metric' },
  { pattern: /^(?:g|grams?)$/u, grams: 1, units: 'metric' },
  { pattern: /^(?:t|tonnes?)$/u, grams: 1_000_000, units: 'metric' },
  { pattern: /^(?:lbs?|pounds?)\.?$/u, grams: POUND, units: 'inch' },
  { pattern: /^(?:oz|ounces?)$/u, grams: POUND / 16, units: 'inch' },
]

/** 100 t: past anything that stands on a floor. */
const HEAVIEST = 100_000_000

/** Reads `20kg`, `45 lb`, `500 g` or `8 oz`. A bare number is asked about; nothing at all and over 100 t are refused. */
export function readWeight(text: string): WeightRead | Ambiguous | Invalid {
  const long = tooLong(text)
  if (long) return long
  const [, digits, word] = /^(\d{1,6}(?:[.,]\d{1,3})?)\s*([a-z]+\.?)?$/u.exec(normalise(text)) ?? []
  if (digits !== undefined && word === undefined) return couldBe(text, [`${digits}kg`, `${digits}lb`])
  const unit = word === undefined ? undefined : UNITS.find(({ pattern }) => pattern.test(word))
  const grams = Number(digits?.replace(',', '.')) * (unit?.grams ?? Number.NaN)
  if (!unit || !(grams > 0 && grams <= HEAVIEST))
    return invalid(`cannot read ${quoted(text)} as a weight; write 20kg or 45lb`)
  return { status: 'read', grams, units: unit.units }
}
