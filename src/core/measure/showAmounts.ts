import type { UnitSystem } from './reading.ts'
import { showDecimal } from './showDecimal.ts'

/** Square millimetres in a square foot: 0.09290304 m2 (HUD Residential Structural Design Guide, App. B). */
const SQUARE_FOOT = 92_903.04
const SQUARE_METRE = 1_000_000

/** Millilitres in a US fluid ounce (1/128 of a gallon of 231 in3). */
const FLUID_OUNCE = 29.5735295625
const QUART = 32 * FLUID_OUNCE
const GALLON = 4 * QUART

/** Degrees to 0.1: `28.5°`; a smaller angle that is not zero keeps two figures: `0.04°`. */
export const showAngle = (degrees: number): string => `${showDecimal(degrees, 1)}°`

/** Square millimetres as `21.3 sq ft` or `1.98 m²`. */
export const showArea = (squareMillimetres: number, units: UnitSystem): string =>
  units === 'inch'
    ? `${showDecimal(squareMillimetres / SQUARE_FOOT, 1)} sq ft`
    : `${showDecimal(squareMillimetres / SQUARE_METRE, 2)} m²`

/** Millilitres in the unit a can of that size is named by: `12.5 fl oz`, `1.19 gal`; `750 mL`, `2.5 L`. */
export function showVolume(millilitres: number, units: UnitSystem): string {
  const size = Math.abs(millilitres)
  if (units === 'metric')
    return size < 1000 ? `${showDecimal(millilitres, 0)} mL` : `${showDecimal(millilitres / 1000, 2)} L`
  if (size < QUART) return `${showDecimal(millilitres / FLUID_OUNCE, 1)} fl oz`
  return size < GALLON
    ? `${showDecimal(millilitres / QUART, 2)} qt`
    : `${showDecimal(millilitres / GALLON, 2)} gal`
}
