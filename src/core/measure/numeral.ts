import { FOOT, INCH, type Length, toInches, toMillimetres } from './length.ts'
import type { UnitSystem } from './reading.ts'
import { showDecimal } from './showDecimal.ts'

const SIXTY_FOURTH = INCH / 64

/** A whole number of 1/64 in as inches with a reduced fraction, or a length as mm: `23 15/16`, `-1/2`, `606.5`. */
export const numeral = (mark: Length, units: UnitSystem): string =>
  units === 'metric'
    ? showDecimal(toMillimetres(mark), 2)
    : `${mark < 0 ? '-' : ''}${inchNumeral(Math.abs(mark))}`

/** A length of any size as a decimal, to 0.001 in or 0.01 mm, or finer when it is smaller than that. */
export const decimalNumeral = (length: Length, units: UnitSystem): string =>
  units === 'metric' ? showDecimal(toMillimetres(length), 2) : showDecimal(toInches(length), 3)

/** A whole number of 1/64 in as feet and inches: `7 ft 11 7/8 in`, `1 ft 0 5/8 in`, `8 ft`, `11 in`. */
export function feetAndInches(mark: Length): string {
  const feet = Math.floor(Math.abs(mark) / FOOT)
  const rest = Math.abs(mark) - feet * FOOT
  const words = [feet > 0 ? `${feet} ft` : '', feet === 0 || rest > 0 ? feetRest(rest, feet > 0) : '']
  return `${mark < 0 ? '-' : ''}${words.filter((word) => word !== '').join(' ')}`
}

/** `0 5/8 in` after feet, so that `1 ft 0 5/8 in` is never taken for `1 ft 5/8` of something else. */
const feetRest = (rest: number, afterFeet: boolean): string =>
  `${afterFeet && rest < INCH ? '0 ' : ''}${inchNumeral(rest)} in`

function inchNumeral(nanometres: number): string {
  const whole = Math.floor(nanometres / INCH)
  const parts = Math.round((nanometres - whole * INCH) / SIXTY_FOURTH)
  if (parts === 0) return `${whole}`
  return whole === 0 ? reduced(parts, 64) : `${whole} ${reduced(parts, 64)}`
}

const reduced = (parts: number, of: number): string =>
  parts % 2 === 0 ? reduced(parts / 2, of / 2) : `${parts}/${of}`
