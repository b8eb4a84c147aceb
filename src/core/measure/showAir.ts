import { fahrenheit } from '../moisture/equilibrium.ts'
import type { UnitSystem } from './reading.ts'
import { showDecimal } from './showDecimal.ts'

/** Degrees Celsius as `68°F` or `4.4°C`. */
export const showTemperature = (celsius: number, units: UnitSystem): string =>
  units === 'inch' ? `${showDecimal(fahrenheit(celsius), 0)}°F` : `${showDecimal(celsius, 1)}°C`

/** Percent to a tenth: `8.4 %`. */
export const showPercent = (percent: number): string => `${showDecimal(percent, 1)} %`

/** Hours as a person says them: `35 min`, `2 h`, `1 1/2 h`, `3 days`; rounded up, since it is a wait. */
export function showHours(hours: number): string {
  const minutes = Math.ceil(hours * 60 - 1e-6)
  if (minutes < 90) return `${minutes} min`
  if (minutes <= 48 * 60) return `${showDecimal(Math.ceil(minutes / 30) / 2, 1)} h`
  return `${showDecimal(Math.ceil(minutes / 720) / 2, 1)} days`
}
