import { type Length, toInches, toMillimetres } from './length.ts'
import type { UnitSystem } from './reading.ts'
import { showDecimal } from './showDecimal.ts'

/** A small length as a calliper or a feeler gauge reads it, to 0.001 in or 0.01 mm: `0.031 in`, `0.79 mm`. */
export const showCaliper = (length: Length, units: UnitSystem): string =>
  `${caliperMark(length, units)} ${units === 'inch' ? 'in' : 'mm'}`

/** The same without its unit, for a table cell. */
export function caliperMark(length: Length, units: UnitSystem): string {
  const [size, ticks] = units === 'inch' ? [toInches(length), 1000] : [toMillimetres(length), 100]
  return showDecimal(Math.round(size * ticks) / ticks, 3)
}
