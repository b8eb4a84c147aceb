/** Constants of the Magnus formula for vapour over water, the second in degrees Celsius (good to 0.35 C from -40 to 60 C). */
const MAGNUS = { factor: 17.625, offset: 243.04 }

/** A surface takes a coat when it is at least so much warmer than the dew point, degrees Celsius: 5 F (coating makers' charts). */
export const ABOVE_DEW = 25 / 9

/**
 * Degrees Celsius at which the moisture of air of `temperature` degrees and `humidity` percent settles as dew: the formula of
 * August, Roche and Magnus. Throws for a humidity that is not above 0 and at most 100.
 */
export function dewPoint(temperature: number, humidity: number): number {
  if (!(humidity > 0 && humidity <= 100))
    throw new RangeError(`humidity must be above 0 to 100 %: ${humidity}`)
  const { factor, offset } = MAGNUS
  const gamma = (factor * temperature) / (offset + temperature) + Math.log(humidity / 100)
  return (offset * gamma) / (factor - gamma)
}
