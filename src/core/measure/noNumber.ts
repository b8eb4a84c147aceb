import { angleOf } from './angle.ts'
import { type Phrase, plainOf } from './item.ts'
import type { Ambiguous, AngleRead, Invalid } from './reading.ts'
import { ambiguous, invalid, quoted } from './wording.ts'

const PROJECT = /\b(?:thickness|thicknesses|kerf|kerfs|clearance|overhang|width|height|depth|length|lip)\b/u
const WORKING = /\b(?:add|plus|minus|less|take|subtract|twice|double|half|times|divide|both|deduct|allow)\b/u

/** The answer to a phrase without a number: an angle (`hexagon corner`), a question about the project, or a refusal. */
export function withoutNumber(phrase: Phrase): AngleRead | Ambiguous | Invalid {
  const angle = angleOf(phrase)
  if (angle) return angle
  const { text, items } = phrase
  const plain = plainOf(items)
  if (PROJECT.test(plain) && WORKING.test(plain))
    return ambiguous(
      `${quoted(text)} depends on a size of the project that is not given here; write the size itself, such as 3/4in or 18mm`,
    )
  return invalid(
    items.length === 0
      ? 'nothing was given to read; write a length, such as 24in or 600mm'
      : `cannot read ${quoted(text)}: there is no number in it; write a length, such as 24in or 600mm`,
  )
}
