import { angleOf, angleRead } from './angle.ts'
import { faultOf } from './fault.ts'
import { amountOf, amountsOf, isMark, type Phrase } from './item.ts'
import { phraseOf } from './phrase.ts'
import type { Ambiguous, AngleRead, Invalid } from './reading.ts'
import { tooLong } from './refuseFirst.ts'
import { ZERO_VALUE } from './typedNumber.ts'
import { decimalText, invalid, quoted } from './wording.ts'

/** An angle in degrees: `31.6 deg`, `31°36'`, `4:12`, `5/12 pitch`, `hexagon corner`, `square cut`, or a bare `22.5`. */
export function readAngle(text: string): AngleRead | Ambiguous | Invalid {
  const long = tooLong(text)
  if (long) return long
  const phrase = phraseOf(text)
  if (isMark(phrase.items[0], '-') && amountsOf(phrase.items).length === 1)
    return invalid(
      `cannot read ${quoted(text)} as an angle: it has a sign; write ${decimalText(amountsOf(phrase.items)[0]?.number.value ?? ZERO_VALUE)}deg`,
    )
  return faultOf(phrase) ?? angleOf(phrase, true) ?? bare(phrase)
}

/** A number alone is degrees, where an angle is wanted; so is one of a mixed number. */
function bare({ text, items }: Phrase): AngleRead | Invalid {
  const amount = items.length === 1 ? amountOf(items[0]) : undefined
  const several = amountsOf(items).length > 1 ? 'it has more than one number' : 'it is no angle'
  if (!amount || amount.unit || amount.plural || amount.number.comma === 'three' || amount.number.or)
    return invalid(`cannot read ${quoted(text)} as an angle: ${several}; write 45deg, 4:12 or 31.6`)
  return angleRead(amount.number.value.valueOf(), text)
}
