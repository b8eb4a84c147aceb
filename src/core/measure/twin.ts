import type { Amount } from './amount.ts'
import { doubtOf, outOfRange } from './doubt.ts'
import { amountOf, amountsOf, isMark, isWord, type Phrase } from './item.ts'
import type { Ambiguous, Invalid, LengthRead } from './reading.ts'
import { lengthOf, systemOf } from './resolve.ts'
import { DEGREE, MM, type Unit } from './unit.ts'
import { couldBe, inSystemOf } from './wording.ts'

/** Rounding that a second system may show: half a millimetre. */
const ROUNDING = MM.size.div(2)

/**
 * One length given in both systems: `24 in (610 mm)`, `18mm / 0.709in`. The first is read where the second agrees to half a
 * millimetre, and asked about where it does not. Undefined for other phrases.
 */
export function twinOf({ text, items }: Phrase): LengthRead | Ambiguous | Invalid | undefined {
  const amounts = amountsOf(items)
  const [first, second] = amounts
  const plain = items.every(
    (item) => amountOf(item) || isMark(item, '(', ')', '/', '=') || isWord(item, /^or$/u),
  )
  if (amounts.length !== 2 || !plain || !first?.size || !second?.size || items.length < 3) return undefined
  if (!isPair(first, second)) return undefined
  const unit = first.unit as Unit
  const [size, other] = [first.size, second.size]
  if (size.sub(other).abs().compare(ROUNDING) > 0)
    return couldBe(
      text,
      [inSystemOf(size, unit), inSystemOf(other, second.unit as Unit)],
      'the two do not agree',
    )
  const doubt = doubtOf(first, unit, { united: true, expected: true })
  return (
    doubt ??
    outOfRange(text, size) ?? {
      status: 'read',
      length: lengthOf(size),
      units: systemOf([unit]),
      note: `read as ${inSystemOf(size, unit)}, the first of the two`,
    }
  )
}

const isPair = (first: Amount, second: Amount): boolean =>
  first.unit !== undefined &&
  second.unit !== undefined &&
  first.unit !== DEGREE &&
  second.unit !== DEGREE &&
  first.unit.system !== second.unit.system
