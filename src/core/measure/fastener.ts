import { type Item, type Phrase, amountOf, amountsOf, isMark, isWord, plainOf } from './item.ts'
import type { Ambiguous, Invalid } from './reading.ts'
import { ambiguous, invalid, listed, quoted } from './wording.ts'

const GAUGE_WORDS = /^(?:ga|gauge|gage|swg|awg)$/u

/**
 * The answer to a screw, a bolt or a nail (`#8 x 1-1/4`, `M6x50`, `1/4-20 x 2"`, `16d`, `18 ga`): its gauge is no
 * length, so it is asked which length is meant, or refused when it gives none. Undefined for anything else.
 */
export function fastenerOf(phrase: Phrase): Ambiguous | Invalid | undefined {
  const at = phrase.items.findIndex((_item, index) => isGauge(phrase.items, index))
  if (at < 0) return gaugeByLength(phrase) ?? penny(phrase)
  const lengths = amountsOf(phrase.items.slice(at + 2)).map(({ text }) => text)
  return ask(phrase.text, lengths, isWord(phrase.items[at], /^m$/u))
}

function isGauge(items: readonly Item[], at: number): boolean {
  const [before, here, after] = [items[at - 1], items[at], items[at + 1]]
  if (amountOf(after) && (isMark(here, '#') || isNumberSign(items, at))) return true
  if (isWord(here, /^m$/u) && amountOf(after)?.number.form === 'whole' && !after?.gap)
    return isMetricThread(items, at)
  if (amountOf(here) && !amountOf(here)?.unit && isWord(after, GAUGE_WORDS)) return true
  const thread = amountOf(before)?.number.form === 'fraction' && isMark(here, '-') && !here?.gap
  return Boolean(
    thread &&
      amountOf(after)?.number.form === 'whole' &&
      !after?.gap &&
      amountOf(after)?.number.value.compare(8) !== -1 &&
      amountOf(after)?.number.value.compare(80) !== 1,
  )
}

const isNumberSign = (items: readonly Item[], at: number): boolean =>
  at < 2 &&
  (isWord(items[at], /^(?:no|nr|number)$/u) ||
    (isMark(items[at], '.') && isWord(items[at - 1], /^(?:no|nr)$/u)))

const isMetricThread = (items: readonly Item[], at: number): boolean =>
  (at === 0 || items[at]?.gap === true) &&
  !amountOf(items[at - 1]) &&
  (amountOf(items[at + 1])?.number.value.compare(30) ?? 1) <= 0

/** `8 x 2" screws`: the first number is the gauge. */
function gaugeByLength({ text, items }: Phrase): Ambiguous | Invalid | undefined {
  const [gauge, by, length, word] = items
  const screw =
    isWord(word, /^(?:wood|deck|drywall|screws?|bolts?|lags?|nails?|brads?)$/u) &&
    items.some((item) => isWord(item, /^(?:screws?|bolts?|lags?|nails?|brads?)$/u))
  if (!screw || by?.is !== 'by' || !amountOf(gauge) || amountOf(gauge)?.unit || !amountOf(length))
    return undefined
  return ask(text, [length?.text ?? ''])
}

/** `16d`, `8d nails`: pennies, which could as well be a depth. */
function penny({ text, items }: Phrase): Ambiguous | undefined {
  const plain = plainOf(items)
  if (!/^\d{1,2} d(?: (?:nails?|common|box|sinkers?|finish|finishing|brads?|galv|galvanized))*$/u.test(plain))
    return undefined
  const [number] = plain.split(' ')
  return ambiguous(
    `${quoted(text)} could be a ${number}-penny nail or a depth of ${number}; write the length of the nail, such as 3 1/2in, or ${number}in deep`,
  )
}

/** The length of a thread named in mm is in mm. */
function ask(text: string, lengths: readonly string[], metric = false): Ambiguous | Invalid {
  if (lengths.length === 0)
    return invalid(
      `cannot read ${quoted(text)} as a length: it is the size of a screw, a nail or a wire; write a length, such as 1 1/4in or 50mm`,
    )
  const length = lengths.at(-1) ?? ''
  const written = /[\d}]$/u.test(length) ? [...(metric ? [] : [`${length}in`]), `${length}mm`] : [length]
  return ambiguous(
    `${quoted(text)} could be a screw or a bolt of that length, or a size; its gauge is no length: write ${listed(written)} for the length`,
  )
}
