import type Fraction from 'fraction.js'
import type { Ambiguous, Invalid } from './reading.ts'
import { TERMINAL_CODES } from './normalise.ts'
import { IN, MM, type Unit } from './unit.ts'

/** What was typed, in quotes: control characters off, and shortened when it is long. */
export function quoted(text: string): string {
  const line = text
    .replace(TERMINAL_CODES, '')
    .replace(/[\p{Cc}\p{Cf}\s]+/gu, ' ')
    .trim()
  const signs = [...line]
  return `"${signs.length > 40 ? `${signs.slice(0, 37).join('')}...` : line}"`
}

/** A refusal: the sentence says what was read, why not, and what would do. */
export const invalid = (problem: string): Invalid => ({ status: 'invalid', problem })
/** A question: one sentence that names the readings as they can be typed back. */
export const ambiguous = (question: string): Ambiguous => ({ status: 'ambiguous', question })

/** `"24" could be 24 in or 24 mm; write 24in or 24mm`: `readings` as they would be typed. */
export function couldBe(text: string, readings: readonly string[], why = ''): Ambiguous {
  const choices = [...new Set(readings)]
  const because = why === '' ? '' : ` (${why})`
  if (choices.length === 1)
    return ambiguous(`${quoted(text)} may mean ${choices[0]}${because}; write ${choices[0]} if it does`)
  return ambiguous(
    `${quoted(text)} could be ${listed(choices.map(apart))}${because}; write ${listed(choices)}`,
  )
}

/** `a, b or c`. */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`

/** `24in` as `24 in`, for the part of a sentence that is read and not typed. */
const apart = (reading: string): string => reading.replace(/(\d)(in|mm|ft|m|cm|deg)\b/gu, '$1 $2')

/** A number as it can be typed back: `2 3/4`, `24`, `17.75`, to `places` decimals where it is no tape fraction. */
export function typed(value: Fraction, places = 4): string {
  const whole = value.floor()
  const rest = value.sub(whole)
  if (rest.equals(0)) return whole.toFraction()
  if (rest.d > 64n || (rest.d & (rest.d - 1n)) !== 0n) return decimalText(value, places)
  return whole.equals(0) ? rest.toFraction() : `${whole.toFraction()} ${rest.toFraction()}`
}

/** A value as a decimal without trailing zeros. */
export const decimalText = (value: Fraction, places = 4): string =>
  `${Number(value.valueOf().toFixed(places))}`

/** A number with a unit stuck to it, as it can be typed back: `2 3/4in`, `600mm`, `1.5m`. */
export const inUnit = (value: Fraction, unit: Unit): string =>
  `${unit.system === 'metric' ? decimalText(value) : typed(value)}${unit.name}`

/** Nanometres as inches, to be typed back. */
export const inInches = (size: Fraction): string => inUnit(size.div(IN.size), IN)
/** Nanometres as mm, to be typed back. */
export const inMillimetres = (size: Fraction): string => inUnit(size.div(MM.size), MM)

/** Nanometres in the system of `unit`: `23 7/8in` or `606.4mm`. */
export const inSystemOf = (size: Fraction, unit: Unit): string =>
  unit.system === 'inch' ? inInches(size) : inMillimetres(size)
