import type { Length } from '../../measure/length.ts'
import { INCH } from '../../measure/length.ts'
import { readBoard } from '../../measure/readBoard.ts'
import { readMeasure } from '../../measure/readMeasure.ts'
import type { ReadingSettings, UnitSystem } from '../../measure/reading.ts'

/** The sides of a part as read, and the stock it is when a trade name was given. */
export interface Sides {
  readonly status: 'read'
  readonly length: Length
  readonly width?: Length | undefined
  readonly thickness?: Length | undefined
  readonly material?: string | undefined
  /** Name of the board whose section width and thickness are. */
  readonly board?: string | undefined
  readonly count?: number | undefined
  readonly units: UnitSystem
  readonly note?: string | undefined
}

/** Why there are no sides; `ambiguous` when knowing the unit might help. */
export interface NoSides {
  readonly status: 'ambiguous' | 'problem'
  readonly problem: string
}

/** Nothing thicker is taken for a thickness among three sizes. */
const THICKEST = 2 * INCH

const refuse = (problem: string): NoSides => ({ status: 'problem', problem })

type Three = Pick<Sides, 'length' | 'width' | 'thickness'>

/** Three sizes: the thickness is the least and stands first or last; of two that are least the section is square. */
function sortThree(lengths: readonly Length[]): Three | undefined {
  const [first, second, third] = lengths as [Length, Length, Length]
  const least = Math.min(first, second, third)
  if (least > THICKEST) return undefined
  if (first === least && second === least) return { length: third, width: second, thickness: first }
  if (third === least) return { length: first, width: second, thickness: third }
  return first === least ? { length: second, width: third, thickness: first } : undefined
}

const startsWithWhole = (text: string): boolean => /^\d{1,2}\s*(?:x|×|\*|by)/iu.test(text)

/** `18 wide x 24 long`: named sides beat the order they stand in. */
const isLongLast = (text: string): boolean => /\b(?:wide|width|w)\b.*\b(?:long|length|l)\b/iu.test(text)

function readThree(text: string, lengths: readonly Length[], counted: boolean): Three | NoSides {
  if (!counted && startsWithWhole(text) && lengths[0] === Math.min(...lengths)) {
    const [first] = text.split(/\D/u)
    return refuse(
      `the ${first} in "${text}" could be a count or a thickness; write ${first} @ for a count, or put the thickness last`,
    )
  }
  const three = lengths.length === 3 ? sortThree(lengths) : undefined
  return three ?? refuse(`"${text}" is no part; write length x width x thickness, such as 24 x 18 x 3/4in`)
}

/**
 * Reads the sides of a part: one length, length x width, or three with the thickness first or last. `counted` tells
 * that the line has its count elsewhere, so that a small first number cannot be one.
 */
export function readSides(text: string, settings: ReadingSettings, counted: boolean): Sides | NoSides {
  const read = readMeasure(text, settings)
  if (read.status === 'ambiguous') return { status: 'ambiguous', problem: read.question }
  if (read.status === 'invalid') return refuse(read.problem)
  if (read.kind === 'angle')
    return refuse(`"${text}" is an angle, not a size; write a size, such as 24 x 18in`)
  const { lengths, units, note, count, kind } = read
  const common = { status: 'read' as const, units, note, count }
  if (kind === 'lumber') {
    const board = readBoard(text, settings)
    if (board.status === 'read') {
      const { length, width, thickness, name = '' } = board
      if (length === undefined)
        return refuse(`"${text}" is a board with no length; write that too, such as 8ft ${name}`)
      return { ...common, length, width, thickness, material: name, board: name }
    }
    if (lengths.length < 3)
      return refuse(`"${text}" names stock but no size; write a size, such as 24 x 18in`)
    return { ...common, length: lengths[2]!, width: lengths[1], thickness: lengths[0], material: read.name }
  }
  if (lengths.length === 1) return { ...common, length: lengths[0]! }
  if (lengths.length === 2) {
    const [length, width] = isLongLast(text) ? [lengths[1]!, lengths[0]!] : [lengths[0]!, lengths[1]!]
    return { ...common, length, width }
  }
  const three = readThree(text, lengths, counted || count !== undefined)
  return 'status' in three ? three : { ...common, ...three }
}
