import { angleOf } from './angle.ts'
import { fastenerOf } from './fastener.ts'
import { faultOf, zeroOf } from './fault.ts'
import { amountsOf, type Phrase } from './item.ts'
import { adjacent, measureOf } from './measureOf.ts'
import { withoutNumber } from './noNumber.ts'
import { phraseOf } from './phrase.ts'
import { puzzleOf } from './puzzle.ts'
import type { LengthRead, MeasureRead, ReadingSettings } from './reading.ts'
import { tooLong } from './refuseFirst.ts'
import { sentenceOf } from './sentence.ts'
import { lumberRead, stockOf } from './stockPhrase.ts'
import { sumOf } from './sum.ts'
import { twinOf } from './twin.ts'
import { vaguenessOf } from './vagueness.ts'
import { invalid, quoted } from './wording.ts'

/** One way of reading a phrase; undefined where the phrase is not of its kind. */
type Reader = (phrase: Phrase, settings: ReadingSettings) => MeasureRead | undefined

/** Tried in this order: what must be refused or asked first, then the most particular reading before the more general. */
const READERS: readonly Reader[] = [
  (phrase) => (amountsOf(phrase.items).length === 0 ? withoutNumber(phrase) : undefined),
  faultOf,
  (phrase) => angleOf(phrase),
  (phrase) => puzzleOf(phrase),
  zeroOf,
  fastenerOf,
  (phrase) => asLengths(twinOf(phrase)),
  vaguenessOf,
  (phrase, settings) => {
    const stock = stockOf(phrase, settings)
    return stock?.status === 'read' ? lumberRead(stock) : stock
  },
  (phrase, settings) => asLengths(sumOf(phrase, settings)),
  adjacent,
  measureOf,
  sentenceOf,
]

/**
 * Any measure that a person types: a length, a size, a piece of stock, an angle, or a phrase with several numbers. It never
 * throws; where a careful person at the saw would ask back it is `ambiguous`, and where nothing can be meant `invalid`.
 *
 * The rule for one bare number or pair: it is read when only one system makes it possible. A fraction or three decimals
 * are inches; more than 20 m, or more than 12 ft for an object of three sides, can only be mm; else it is asked.
 */
export function readMeasure(text: string, settings: ReadingSettings): MeasureRead {
  const long = tooLong(text)
  if (long) return long
  const phrase = phraseOf(text)
  for (const reader of READERS) {
    const read = reader(phrase, settings)
    if (read) return read
  }
  return invalid(`cannot read ${quoted(text)}; write a length, such as 24in or 600mm`)
}

function asLengths(
  read: LengthRead | Exclude<MeasureRead, { status: 'read' }> | undefined,
): MeasureRead | undefined {
  if (read?.status !== 'read') return read
  const { length, units, note } = read
  return { status: 'read', kind: 'length', lengths: [length], units, ...(note !== undefined && { note }) }
}
