import type { Length } from '../core/measure/length.ts'
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
  const counted = readCount(text)
  if (counted.status === 'read') return { strips: counted.count }
  const read = readLength(text, { ...settings, units: undefined })
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
