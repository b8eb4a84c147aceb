import { celsius } from '../moisture/equilibrium.ts'
import { normalise } from './normalise.ts'
import type { Ambiguous, Invalid, UnitSystem } from './reading.ts'
import { tooLong } from './refuseFirst.ts'
import { couldBe, invalid, quoted } from './wording.ts'

/** A temperature in degrees Celsius, and the unit system it was typed in. */
export interface TemperatureRead {
  readonly status: 'read'
  readonly celsius: number
  readonly units: UnitSystem
  readonly note?: string | undefined
}

/** Degrees Celsius between which people still work wood, from a frozen shed to a kiln. */
const COLDEST = -40
const HOTTEST = 70

const TEMPERATURE =
  /^(-?\d{1,3}(?:[.,]\d{1,2})?)\s*(?:°|deg(?:ree)?s?\.?)?\s*(c|f)?(?:elsius|entigrade|ahrenheit)?$/u

/**
 * Reads `10C`, `50 F`, `68°F` or `20 degrees celsius`. A bare number goes by the units that were settled, else it is asked
 * about. Refuses what is colder than -40 C or hotter than 70 C.
 */
export function readTemperature(
  text: string,
  settings: { readonly units?: UnitSystem | undefined },
): TemperatureRead | Ambiguous | Invalid {
  const long = tooLong(text)
  if (long) return long
  const [, digits, unit] = TEMPERATURE.exec(normalise(text)) ?? []
  if (digits === undefined) return invalid(`cannot read ${quoted(text)} as a temperature; write 20C or 68F`)
  const settled = settings.units && (settings.units === 'inch' ? 'f' : 'c')
  const scale = unit ?? settled
  if (scale === undefined) return couldBe(text, [`${digits}C`, `${digits}F`])
  const degrees = Number(digits.replace(',', '.'))
  const read = scale === 'f' ? celsius(degrees) : degrees
  if (read < COLDEST || read > HOTTEST)
    return invalid(
      `${quoted(text)} is no temperature of a shop; write ${COLDEST}C to ${HOTTEST}C (-40F to 158F)`,
    )
  return {
    status: 'read',
    celsius: read,
    units: scale === 'f' ? 'inch' : 'metric',
    ...(unit === undefined && { note: `${digits} read as ${digits} ${scale.toUpperCase()}` }),
  }
}
