/**
 * Percent moisture that wood settles at in air of `temperature` degrees Celsius and `humidity` percent: the two-hydrate
 * equation of Hailwood and Horrobin, constants in Celsius from the Wood Handbook (USDA Forest Products Laboratory, GTR-190,
 * ch. 4). Its data are good for the shop, not for science (FPL-GTR-229). Throws for a humidity outside 0 to 100.
 */
export function equilibriumMoisture(temperature: number, humidity: number): number {
  if (!(humidity >= 0 && humidity <= 100)) throw new RangeError(`humidity must be 0 to 100 %: ${humidity}`)
  if (!Number.isFinite(temperature)) throw new RangeError(`temperature must be a number: ${temperature}`)
  const weight = quadratic(temperature, 349, 1.29, 0.0135)
  const vapour = (quadratic(temperature, 0.805, 0.000736, -0.00000273) * humidity) / 100
  const first = quadratic(temperature, 6.27, -0.00938, -0.000303)
  const second = quadratic(temperature, 1.91, 0.0407, -0.000293)
  const [single, double] = [first * vapour, first * second * vapour ** 2]
  return (1800 / weight) * (vapour / (1 - vapour) + (single + 2 * double) / (1 + single + double))
}

const quadratic = (at: number, constant: number, linear: number, square: number): number =>
  constant + linear * at + square * at * at

/** Degrees Celsius of a temperature in Fahrenheit. */
export const celsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9

/** Degrees Fahrenheit of a temperature in Celsius. */
export const fahrenheit = (celsius: number): number => (celsius * 9) / 5 + 32
