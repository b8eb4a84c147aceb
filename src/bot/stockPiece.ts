import { takeCount } from '../core/cutting/partList/count.ts'
import { splitLine } from '../core/cutting/partList/chunk.ts'
import { boardTokens, materialWords } from '../core/cutting/partList/words.ts'
import { readBoard } from '../core/measure/readBoard.ts'
import { readSize } from '../core/measure/readSize.ts'
import { readSheet, type SheetRead } from '../core/measure/readSheet.ts'
import type { Context } from './context.ts'
import { quoted, Refusal } from './refusal.ts'
import { type Stocked, usualSheet } from './shopStock.ts'

/** A row of the stock list but for its label, and what was assumed in reading it. */
export interface StockPiece {
  readonly piece: Omit<Stocked, 'label'>
  readonly note?: string | undefined
}

/**
 * What was typed as a sheet (two sides, with `sheet=` for what it is) or as a board with its length (`2x4x8`), either with
 * how many are on hand (`3 @ 2x4x8`, `8ft 2x4 x3`). Throws a Refusal where it is neither.
 */
export function readStockPiece(typed: string, sheet: SheetRead | undefined, context: Context): StockPiece {
  const counted = takeCount(
    typed.trim().replace(PIECES, '$1 @ '),
    boardTokens(context.reference.stock.boards),
  )
  if (counted.status === 'problem')
    throw new Refusal('invalid', `nothing was added: ${quoted(typed)} ${counted.problem}`)
  const { piece, note } = readPiece(counted.rest, sheet, context)
  return { piece: counted.count === undefined ? piece : { ...piece, onHand: counted.count }, note }
}

/** `2 boards 2x4x8`, `3 sheets of 4ft x 8ft`: how many there are of what comes after. */
const PIECES = /^([1-9]\d{0,3})\s+(?:boards?|sheets?|lengths?|planks?|panels?)\s+(?:of\s+)?(?=\d)/iu

function readPiece(text: string, sheet: SheetRead | undefined, context: Context): StockPiece {
  const reading = { ...context.settled, stock: context.reference.stock }
  if (!sheet) {
    const board = readBoard(text, reading)
    if (board.status === 'read' && board.length !== undefined) {
      const { length, width, thickness } = board
      return { piece: { kind: 'board', length, width, thickness, name: text.slice(0, 60) }, note: board.note }
    }
    if (board.status === 'read') {
      throw new Refusal(
        'invalid',
        `how long is the board, or is it a sheet? Write 2x4x8 for a board, or add sheet=1/2 ply to ${quoted(text)}`,
      )
    }
  }
  const labelled = sheet ? undefined : readSheet(labelFirst(text, context), reading)
  if (labelled?.status === 'read' && !labelled.measured) return wholeSheet(labelled, text, context)
  const size = readSize(text, reading)
  if (size.status === 'ambiguous') throw new Refusal('ambiguous', size.question)
  const [a, b, more] = size.status === 'read' ? size.lengths : []
  if (a === undefined || b === undefined || more !== undefined) {
    throw new Refusal(
      'invalid',
      `cannot read ${quoted(text)} as stock; write a sheet as 4ft x 8ft sheet=1/2 ply, or a board as 2x4x8`,
    )
  }
  if (!sheet)
    throw new Refusal('invalid', 'which sheet is it? Add sheet=1/2 ply, or the thickness you measured')
  const [length, width] = a >= b ? [a, b] : [b, a]
  const made = sheet.material === undefined ? {} : { material: sheet.material }
  const name = `${sheet.material ?? 'sheet'} ${text}`.slice(0, 60)
  return {
    piece: { kind: 'sheet', length, width, thickness: sheet.thickness, ...made, name },
    note: sheet.note,
  }
}

/** `4ft x 4ft 1/2 ply` as `1/2 ply 4ft x 4ft`, the order in which a sheet is read. */
function labelFirst(text: string, { reference }: Context): string {
  const { chunks, material } = splitLine(text, materialWords(reference.stock.labels))
  const [size, thickness] = chunks
  return chunks.length === 2 && size && thickness?.stock && !size.stock
    ? `${thickness.text} ${material} ${size.text}`
    : text
}

/** `2 1/2 ply`: a count and a thickness, or one thickness. */
const COUNT_OR_THICKNESS = /^([1-9]\d{0,3})\s+(\d+\/\d+.*)$/u

/** A sheet by what it is sold as: `1/2 ply`, `4x8 of 3/4 ply`; of the usual size where none is said. */
function wholeSheet(sheet: SheetRead, text: string, context: Context): StockPiece {
  if (/\bhalf\b|½ sheet/iu.test(text))
    throw new Refusal(
      'ambiguous',
      `half a sheet is cut across or along; write its sides, such as 4ft x 4ft sheet=${sheet.material === undefined ? '1/2 ply' : text.replace(/^.*\bsheets?\s+(?:of\s+)?/iu, '')}`,
    )
  const [, many, rest = ''] = COUNT_OR_THICKNESS.exec(text) ?? []
  if (many !== undefined && Number(many) > 1)
    throw new Refusal(
      'ambiguous',
      `${quoted(text)} could be ${many} sheets of ${rest}, or one that is ${many} and a part thick; write ${many} @ ${rest}, or give the thickness as sheet=`,
    )
  const usual = usualSheet(context)
  const [length, width] = [sheet.length ?? usual?.length, sheet.width ?? usual?.width]
  if (length === undefined || width === undefined)
    throw new Refusal('invalid', `how large is ${quoted(text)}? Write its sides: 4ft x 8ft sheet=1/2 ply`)
  const made = sheet.material === undefined ? {} : { material: sheet.material }
  const size = sheet.length === undefined ? ` taken as ${usual?.name}, the usual size` : ''
  const notes = [sheet.note, size === '' ? undefined : `${quoted(text)}${size}`].filter(
    (note) => note !== undefined,
  )
  return {
    piece: { kind: 'sheet', length, width, thickness: sheet.thickness, ...made, name: text.slice(0, 60) },
    ...(notes.length > 0 && { note: notes.join('; ') }),
  }
}
