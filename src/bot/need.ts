import { FOOT, type Length, MILLIMETRE, nanometres } from '../core/measure/length.ts'
import { readCount } from '../core/measure/readCount.ts'
import { readLength } from '../core/measure/readLength.ts'
import type { ReadingSettings } from '../core/measure/reading.ts'
import type { StripNeed } from '../core/panelling/boards.ts'
import { quoted, Refusal } from './refusal.ts'

/**
 * What is needed of strips: a count (`40`), or a length in all (`60ft`), which takes the length of the boards to share
 * out. Throws a Refusal for anything else.
 */
export function readNeed(
  text: string,
  boardLength: Length | undefined,
  settings: ReadingSettings,
): StripNeed {
  const counted = readCount(text.replace(/\s*strips?\s*$/iu, ''))
  if (counted.status === 'read') return { strips: counted.count }
  const total = readTotal(text)
  const read = total
    ? { status: 'read' as const, length: total }
    : readLength(text, { ...settings, units: undefined })
  if (/^\d{5,}$/u.test(text.trim()))
    throw new Refusal(
      'invalid',
      `need: ${quoted(text)} is more than is reckoned with; write 1 to 10000 strips`,
    )
  if (read.status === 'ambiguous') throw new Refusal('ambiguous', `need: ${read.question}`)
  if (read.status === 'invalid') {
    throw new Refusal(
      'invalid',
      `need: cannot read ${quoted(text)}; write a number of strips such as 40, or a length in all such as 60ft`,
    )
  }
  if (boardLength === undefined)
    throw new Refusal('invalid', 'how long are the boards? Add length=8ft, or write the board as 2x6x8')
  return { total: read.length, boardLength }
}

const TOTAL = /^(\d{1,5}(?:\.\d+)?)\s*(?:(ft|foot|feet|['’′])|m|met(?:er|re)s?)$/iu

/** All the strips together may be longer than any one piece, so a total in feet or metres has no such limit. */
function readTotal(text: string): Length | undefined {
  const [, number, feet] = TOTAL.exec(text.trim()) ?? []
  const total = nanometres(Number(number) * (feet ? FOOT : 1000 * MILLIMETRE))
  return total > 0 ? total : undefined
}
