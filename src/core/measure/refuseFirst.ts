import { fastenerOf } from './fastener.ts'
import { faultOf, zeroOf } from './fault.ts'
import { amountsOf, type Phrase } from './item.ts'
import { withoutNumber } from './noNumber.ts'
import { LONGEST } from './normalise.ts'
import { phraseOf } from './phrase.ts'
import { puzzleOf } from './puzzle.ts'
import type { Ambiguous, Invalid, ReadingSettings } from './reading.ts'
import { DEGREE } from './unit.ts'
import { twinOf } from './twin.ts'
import { vaguenessOf } from './vagueness.ts'
import { invalid, quoted } from './wording.ts'

/** The refusal of a text that is too long to be a measure; undefined for others. */
export function tooLong(text: string): Invalid | undefined {
  return text.length > LONGEST
    ? invalid(
        `cannot read ${quoted(text)}: it is longer than ${LONGEST} characters; write one measure, such as 24 1/2 x 36in`,
      )
    : undefined
}

/** The text as a phrase, or the answer that every reader of a length or a size gives first: `what` names what is wanted. */
export function phraseOrAnswer(
  text: string,
  settings: ReadingSettings,
  what: string,
): Phrase | Ambiguous | Invalid {
  const long = tooLong(text)
  if (long) return long
  const phrase = phraseOf(text)
  return answerFirst(phrase, settings, what) ?? phrase
}

function answerFirst(
  phrase: Phrase,
  settings: ReadingSettings,
  what: string,
): Ambiguous | Invalid | undefined {
  const amounts = amountsOf(phrase.items)
  if (amounts.length === 0) {
    const answer = withoutNumber(phrase)
    return answer.status === 'read'
      ? invalid(`cannot read ${quoted(phrase.text)} as ${what}: it is an angle; write 24in or 600mm`)
      : answer
  }
  const fault = faultOf(phrase)
  if (fault) return fault
  if (amounts.some(({ unit }) => unit === DEGREE))
    return invalid(`cannot read ${quoted(phrase.text)} as ${what}: it is an angle; write 24in or 600mm`)
  return (
    puzzleOf(phrase, true) ??
    zeroOf(phrase) ??
    fastenerOf(phrase) ??
    (twinOf(phrase) ? undefined : vaguenessOf(phrase, settings))
  )
}
