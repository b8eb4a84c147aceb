import { takeCount } from '../core/cutting/partList/count.ts'
import { boardTokens } from '../core/cutting/partList/words.ts'
import type { Length } from '../core/measure/length.ts'
import { readMoney } from '../core/measure/money.ts'
import { readBoard } from '../core/measure/readBoard.ts'
import { readSize } from '../core/measure/readSize.ts'
import type { Context } from './context.ts'
import { type Listed, LONGEST_LABEL } from './cutList.ts'
import { quoted, Refusal } from './refusal.ts'
import type { Stocked } from './shopStock.ts'

/** More than come out of anything: what stands for "as many as there can be". */
export const NO_END = 1_000_000

/**
 * A piece that was typed: a sheet of any thickness (`2ft x 4ft`), a board (`2x4x8`, or its length alone), and how many of
 * it there are (`3 @ 2x4x8`). Throws a Refusal where it is neither.
 */
export function readPiece(typed: string, { settled, reference }: Context): Stocked {
  const reading = { ...settled, stock: reference.stock }
  const counted = takeCount(typed.trim(), boardTokens(reference.stock.boards))
  if (counted.status === 'problem')
    throw new Refusal('invalid', `from: ${quoted(typed)} ${counted.problem.replace('24 x 18in', '2x4x8')}`)
  const { rest, count: onHand = 1 } = counted
  const label = rest.slice(0, LONGEST_LABEL).trim()
  const board = readBoard(rest, reading)
  if (board.status === 'read' && board.length !== undefined) {
    const { length, width, thickness } = board
    return { label, kind: 'board', length, width, thickness, onHand }
  }
  const size = readSize(rest, reading)
  if (size.status === 'ambiguous') throw new Refusal('ambiguous', `from: ${size.question}`)
  const [a, b, more] = size.status === 'read' ? size.lengths : []
  if (a === undefined || more !== undefined)
    throw new Refusal(
      'invalid',
      `from: cannot read ${quoted(typed)} as one piece; write a sheet as 2ft x 4ft, or a board as 2x4x8 or 8ft`,
    )
  if (b === undefined) return { label, kind: 'board', length: a, width: ANY, thickness: ANY, onHand }
  const [length, width] = a >= b ? [a, b] : [b, a]
  return { label, kind: 'sheet', length, width, thickness: ANY, onHand }
}

/** A side that nobody gave and that makes no difference. */
const ANY = 1 as Length

/** `piece` as thick (and, of a board, as wide) as what was taken for the first of `parts`, where nobody gave that. */
export const sectionLike = (piece: Stocked, [first]: readonly Listed[]): Stocked =>
  piece.thickness === ANY && first
    ? {
        ...piece,
        thickness: first.thickness ?? ANY,
        ...(piece.kind === 'board' ? { width: first.width ?? ANY } : {}),
      }
    : piece

/** `parts` as they come out of `piece`, whatever section or sheet was taken for them. Throws a Refusal where they cannot. */
export const fromPiece = (parts: readonly Listed[], piece: Stocked): readonly Listed[] =>
  parts.map(({ thickness, material: _material, ...part }): Listed => {
    if (piece.kind === 'sheet') {
      if (part.from === 'sheet') return part
      throw new Refusal(
        'invalid',
        `part ${part.label} has no width, but ${quoted(piece.label)} is a sheet; write both, such as 12in x 5in`,
      )
    }
    if (part.from === 'sheet')
      throw new Refusal(
        'invalid',
        `part ${part.label} has a width, but ${quoted(piece.label)} is a board; write its length alone, such as 12in`,
      )
    const { width: _width, ...long } = part
    // A length alone is the strip itself.
    return part.from === 'strip' && piece.width !== ANY
      ? { ...long, thickness, width: piece.thickness }
      : { ...long, from: 'board' }
  })

/**
 * What each part is worth, in cents by label: `A 12, B 7`, or the amounts in the order of the parts. Throws a Refusal where
 * one is left out or is no amount.
 */
export function readWorths(typed: string, parts: readonly Listed[]): ReadonlyMap<string, number> {
  const pieces = typed.split(/[,;\n]/u).flatMap((piece) => piece.trim() || [])
  const labels = parts.map(({ label }) => label)
  const worths = new Map<string, number>()
  for (const [at, piece] of pieces.entries()) {
    const [, name, amount = piece] = /^(.*\S)[\s:]+(\S+)$/u.exec(piece) ?? []
    const label = name === undefined ? labels[at] : labels.find((each) => sameWord(each, name))
    const worth = readMoney(amount)?.cents
    if (label === undefined)
      throw new Refusal(
        'invalid',
        `worth: ${quoted(piece)} is of no part here; there ${labels.length === 1 ? 'is' : 'are'} ${labels.slice(0, 12).join(', ')}`,
      )
    if (!worth)
      throw new Refusal('invalid', `worth: cannot read ${quoted(piece)} as an amount; write A 12, B 7.50`)
    worths.set(label, worth)
  }
  const without = labels.find((label) => !worths.has(label))
  if (without === undefined) return worths
  throw new Refusal('invalid', `worth: what is part ${without} worth? Write each, such as A 12, B 7.50`)
}

const sameWord = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase()
