import type { Amount } from './amount.ts'
import { type BoardMatch, matchBoard } from './boardMatch.ts'
import type { Ambiguous } from './reading.ts'
import { lengthOf } from './resolve.ts'
import { isWholeSheet, sheetOrSize } from './sheetChunk.ts'
import type { Chunk, Part, StockContext } from './stockPart.ts'
import { isBoardWord } from './stockWords.ts'
import { FT, IN, M, MM, type Unit } from './unit.ts'
import { couldBe, inUnit, typed } from './wording.ts'

/** Lengths that boards are sold in start at this many feet; a smaller third number may be the side of a box. */
const SHORTEST_FEET = 6
const LONGEST_FEET = 24
/** Longer than this, feet are as rare in a shed as a piece of so many inches is common. */
const USUAL_FEET = 20

/** Two or three numbers as a board and its length: `2x4`, `2x6x8`, `2x4x92-5/8`, `4"x4" post`, `90x45x2400`. */
export function boardChunk(context: StockContext, { amounts }: Chunk): Part | Ambiguous | undefined {
  if (amounts.length > 3) return undefined
  const [first, second, third] = plainSides(amounts, context.words)
  if (!first || !second || amounts.some(({ doubt }) => doubt)) return undefined
  const bare = context.words.length === 0 && !third && !first.unit && !second.unit
  if (bare && isWholeSheet(first, second, context.settings)) return sheetOrSize(first, second)
  const match = matchBoard(first, second, context.words, context.settings)
  if (!match || match.status === 'ambiguous') return match
  return third ? withLength(context, match, third) : partOf(match, [])
}

/** `4"x4" post`: the marks say the name, not the size. */
function plainSides(amounts: readonly Amount[], words: readonly string[]): readonly Amount[] {
  const marked = words.some((word) => /^(?:posts?|studs?|joists?|lumber)$/u.test(word))
  return amounts.map((amount, at) => {
    if (at > 1 || !marked || amount.unit !== IN || amount.compound) return amount
    const { text, number } = amount
    return { text, number }
  })
}

const partOf = (match: BoardMatch, rest: Part['lengths'], note = ''): Part => ({
  status: 'read',
  lengths: [match.thickness, match.width, ...rest],
  unit: match.units === 'inch' ? IN : MM,
  is: 'board',
  name: match.name,
  note: match.note + note,
})

function withLength(
  { text, words, settings }: StockContext,
  match: BoardMatch,
  third: Amount,
): Part | Ambiguous | undefined {
  const metric = match.units === 'metric'
  if (
    metric &&
    !settings.stock.boards.some(({ region, name }) => region === settings.region && name === match.name) &&
    !words.some(isBoardWord)
  )
    return undefined
  if (third.size) return partOf(match, [lengthOf(third.size)])
  const unit = metric ? metricLength(third) : inchLength(third)
  if (unit)
    return partOf(
      match,
      [lengthOf(third.number.value.mul(unit.size))],
      `, ${inUnit(third.number.value, unit)} long`,
    )
  const { value } = third.number
  if (!metric && value.compare(USUAL_FEET) > 0)
    return couldBe(text, [`${match.name} ${inUnit(value, FT)}`, `${match.name} ${inUnit(value, IN)}`])
  const choices = metric
    ? [`${match.name} ${inUnit(value, MM)}`, `${match.name} ${inUnit(value, M)}`]
    : [
        `${match.name} ${inUnit(value, FT)}`,
        match.name
          .split('x')
          .concat(typed(value))
          .map((side) => `${side}in`)
          .join(' x '),
      ]
  return couldBe(text, choices, 'a board and its length, or a box')
}

/** Third number after an inch name: feet up to 20, inches past 24, which is asked about in between. */
function inchLength({ number }: Amount): Unit | undefined {
  const { value, form } = number
  if (value.compare(787) > 0) return MM
  if (value.compare(LONGEST_FEET) > 0) return IN
  const isUsual = value.compare(SHORTEST_FEET) >= 0 && value.compare(USUAL_FEET) <= 0
  return form === 'whole' && isUsual ? FT : undefined
}

function metricLength({ number }: Amount): Unit | undefined {
  if (number.value.compare(100) >= 0) return MM
  return number.form === 'decimal' && number.value.compare(1) > 0 && number.value.compare(8) < 0
    ? M
    : undefined
}
