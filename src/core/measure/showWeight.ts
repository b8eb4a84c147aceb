import type { UnitSystem } from './reading.ts'
import { POUND } from './readWeight.ts'
import { showDecimal } from './showDecimal.ts'

/** Newtons of one pound of force, and of what a kilogram weighs. */
const POUND_FORCE = 4.4482216152605
const KILOGRAM_FORCE = 9.80665

/** Pascals of one pound to the square inch. */
const POUND_PER_SQUARE_INCH = 6894.757293168

/** kg/m2 of one pound to the square foot. */
const POUND_PER_SQUARE_FOOT = 0.45359237 / 0.3048 ** 2

/** Grams as `31.5 lb` or `6 oz`; `14.3 kg` or `450 g`. */
export function showWeight(grams: number, units: UnitSystem): string {
  if (units === 'metric')
    return grams < 1000 ? `${showDecimal(grams, 0)} g` : `${showDecimal(grams / 1000, 1)} kg`
  return grams < POUND ? `${showDecimal((16 * grams) / POUND, 1)} oz` : `${showDecimal(grams / POUND, 1)} lb`
}

/** Newtons as the weight that pulls so hard: `25 lb`, `11 kg`; rounded down, since it is what something bears. */
export function showForce(newtons: number, units: UnitSystem): string {
  const [size, unit] = units === 'inch' ? [newtons / POUND_FORCE, 'lb'] : [newtons / KILOGRAM_FORCE, 'kg']
  return `${size >= 10 ? Math.floor(size) : showDecimal(Math.floor(size * 10) / 10, 1)} ${unit}`
}

/** Pascals from least to most: `100 to 150 psi`, `0.69 to 1.03 N/mm²`. */
export const showPressure = (low: number, high: number, units: UnitSystem): string =>
  units === 'inch'
    ? `${showDecimal(low / POUND_PER_SQUARE_INCH, 0)} to ${showDecimal(high / POUND_PER_SQUARE_INCH, 0)} psi`
    : `${showDecimal(low / 1_000_000, 2)} to ${showDecimal(high / 1_000_000, 2)} N/mm²`

/** kg/m2 as `42 lb/sq ft` or `205 kg/m²`, rounded up, since it is what a floor has to carry. */
export const showFloorLoad = (load: number, units: UnitSystem): string =>
  units === 'inch' ? `${Math.ceil(load / POUND_PER_SQUARE_FOOT)} lb/sq ft` : `${Math.ceil(load)} kg/m²`
