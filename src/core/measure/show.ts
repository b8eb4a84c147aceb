import { INCH, type Length, MILLIMETRE, nanometres } from './length.ts'
import { decimalNumeral, feetAndInches, numeral } from './numeral.ts'
import type { UnitSystem } from './reading.ts'
import { type Purpose, roundFor } from './round.ts'

/** The finest mark used on an inch tape, as a part of an inch: 16 is 1/16 in. */
export const TAPES = [16, 32, 64] as const
export type Tape = (typeof TAPES)[number]

/** The finest mark used on a metric rule, in mm. */
export const MILLIMETRE_STEPS = [1, 0.5] as const
export type MillimetreStep = (typeof MILLIMETRE_STEPS)[number]

/** How lengths are shown to one person. */
export interface ShowSettings {
  readonly units: UnitSystem
  readonly tape: Tape
  readonly millimetreStep: MillimetreStep
  /** `7 ft 11 7/8 in` in place of `95 7/8 in`; false unless asked for. */
  readonly feet?: boolean | undefined
}

/** From one tape mark to the next: 1/16 in, 1 mm and so on. */
export const stepOf = (settings: ShowSettings): Length =>
  nanometres(settings.units === 'inch' ? INCH / settings.tape : settings.millimetreStep * MILLIMETRE)

/** A length as a tape shows it, with its unit and by how much the mark misses: `3 5/16 in (-0.021)`, `606.5 mm`. */
export function showLength(length: Length, settings: ShowSettings, purpose: Purpose = 'mark'): string {
  const mark = roundFor(length, stepOf(settings), purpose)
  const shown =
    settings.feet && settings.units === 'inch' && mark !== 0
      ? feetAndInches(mark)
      : `${showMark(length, settings, purpose)} ${settings.units === 'inch' ? 'in' : 'mm'}`
  const miss = showMiss(length, settings, purpose)
  return miss === '' ? shown : `${shown} ${miss}`
}

/**
 * The mark alone, for a table cell whose column names the unit: `23 15/16`, `606.5`. A length too small for any mark
 * is shown as the decimal that it is, never as 0.
 */
export function showMark(length: Length, settings: ShowSettings, purpose: Purpose = 'mark'): string {
  const mark = roundFor(length, stepOf(settings), purpose)
  return mark === 0 ? decimalNumeral(length, settings.units) : numeral(mark, settings.units)
}

/** What the last figure of a shown miss is worth: 0.001 in, 0.01 mm. */
const MISS = {
  inch: { tick: INCH / 1000, one: 1000, places: 3 },
  metric: { tick: MILLIMETRE / 100, one: 100, places: 2 },
} as const

/**
 * The mark less the exact length, in brackets: `(-0.021)` in inches, `(+0.42)` in mm. Empty where the mark is exact or
 * misses by less than half of the last figure shown, and where the decimal is shown in place of a mark.
 */
export function showMiss(length: Length, settings: ShowSettings, purpose: Purpose = 'mark'): string {
  const mark = roundFor(length, stepOf(settings), purpose)
  const { tick, one, places } = MISS[settings.units]
  const ticks = Math.round(Math.abs(mark - length) / tick)
  if (mark === 0 || ticks === 0) return ''
  return `(${mark > length ? '+' : '-'}${(ticks / one).toFixed(places)})`
}
