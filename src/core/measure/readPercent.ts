import { normalise } from './normalise.ts'
import type { Ambiguous, Invalid } from './reading.ts'
import { tooLong } from './refuseFirst.ts'
import { couldBe, invalid, quoted } from './wording.ts'

/** A number of percent: 65 is 65 %. */
export interface PercentRead {
  readonly status: 'read'
  readonly percent: number
}

const PERCENT = /^(\d{1,3}(?:[.,]\d{1,3})?)\s*(%|percent|per cent|pct)?\s*(?:rh|mc|humidity|moisture)?$/u

/** Reads `65%`, `65`, `7.5 percent` or `65 % RH`, 0 to 100. A bare part of one, `0.65`, is asked about. */
export function readPercent(text: string): PercentRead | Ambiguous | Invalid {
  const long = tooLong(text)
  if (long) return long
  const [, digits, sign] = PERCENT.exec(normalise(text)) ?? []
  const percent = Number(digits?.replace(',', '.'))
  if (digits === undefined || !(percent <= 100))
    return invalid(`cannot read ${quoted(text)} as a percentage; write 0% to 100%, such as 65%`)
  if (sign === undefined && percent > 0 && percent < 1)
    return couldBe(text, [`${digits}%`, `${Number((percent * 100).toFixed(1))}%`])
  return { status: 'read', percent }
}
