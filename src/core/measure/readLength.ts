import { groupsOf } from './group.ts'
import { amountsOf, isMark, type Item, type Phrase } from './item.ts'
import { adjacent, outside } from './measureOf.ts'
import type { Ambiguous, Invalid, LengthRead, ReadingSettings } from './reading.ts'
import { phraseOrAnswer } from './refuseFirst.ts'
import { lengthOf, resolveGroup, systemOf } from './resolve.ts'
import { stockOf } from './stockPhrase.ts'
import { sumOf } from './sum.ts'
import { isKnownThing } from './things.ts'
import { twinOf } from './twin.ts'
import { invalid, quoted } from './wording.ts'

/**
 * Exactly one length, as an option wants it: `24in`, `1/8`, `2 ft 6`, `23 7/8 less 1/16`. A bare fraction is inches, since no
 * lumber or door can be meant; a bare whole number is asked about unless the units are settled. A size, a piece of stock,
 * an angle and a length with a sign are refused.
 */
export function readLength(text: string, settings: ReadingSettings): LengthRead | Ambiguous | Invalid {
  const phrase = phraseOrAnswer(text, settings, 'a length')
  if ('status' in phrase) return phrase
  return (
    signed(phrase) ??
    twinOf(phrase) ??
    sumOf(phrase, settings) ??
    stock(phrase, settings) ??
    adjacent(phrase) ??
    one(phrase, settings)
  )
}

function signed({ text, items }: Phrase): Invalid | undefined {
  const sign = isMark(items[0], '-', '+')
  return sign
    ? invalid(
        `cannot read ${quoted(text)} as a length: it has a sign; write ${items
          .slice(1)
          .map((item) => item.text)
          .join(' ')}`,
      )
    : undefined
}

function stock(phrase: Phrase, settings: ReadingSettings): Invalid | undefined {
  const amounts = amountsOf(phrase.items)
  const piece = stockOf(phrase, settings)
  if (!piece || (piece.status === 'ambiguous' && amounts.length === 1)) return undefined
  if (piece.status === 'ambiguous') return severalNumbers(phrase)
  if (piece.status === 'invalid') return piece
  return invalid(
    `cannot read ${quoted(phrase.text)} as a length: it is a piece of stock; write one length, such as 3/4in or 18mm`,
  )
}

const severalNumbers = ({ text }: Phrase): Invalid =>
  invalid(
    `cannot read ${quoted(text)} as a length: it has more than one number; write one length, such as 24in or 600mm`,
  )

function one(phrase: Phrase, settings: ReadingSettings): LengthRead | Ambiguous | Invalid {
  const { text, items } = phrase
  const groups = groupsOf(items)
  const [group] = groups
  if (!group || groups.length > 1 || group.terms.length > 1 || group.terms[0]?.shape === 'square')
    return severalNumbers(phrase)
  const odd = outside(items, group).find(isOdd)
  if (odd)
    return invalid(
      `cannot read ${quoted(text)} as a length: ${quoted(odd.text)} has no place there; write ${sample(group.terms[0]?.amount.text)}`,
    )
  const resolved = resolveGroup(group, { settings, evidence: [], expected: true, object: false })
  if (resolved.status !== 'read') return resolved
  const [measured] = resolved.measured
  if (!measured) return severalNumbers(phrase)
  return {
    status: 'read',
    length: lengthOf(measured.size),
    units: systemOf([measured.unit]),
    ...(resolved.note !== undefined && { note: resolved.note }),
  }
}

const isOdd = (item: Item): boolean =>
  item.is === 'amount' ||
  item.is === 'by' ||
  item.is === 'soup' ||
  (item.is === 'word' && !isKnownThing(item.text)) ||
  (item.is === 'mark' && !isMark(item, '.', ',', '(', ')', ';', '!'))

const sample = (typed = '24in'): string => (/[\d}]$/u.test(typed) ? `${typed}in or ${typed}mm` : typed)
