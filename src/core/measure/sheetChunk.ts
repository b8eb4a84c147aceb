import Fraction from 'fraction.js'
import { findBoard } from '../stock/boards.ts'
import { findSheetSize } from '../stock/sheets.ts'
import type { Amount } from './amount.ts'
import { FOOT, type Length, nanometres, times } from './length.ts'
import type { Ambiguous, ReadingSettings } from './reading.ts'
import { lengthOf } from './resolve.ts'
import { isMaterial, thicknessOf } from './sheetThickness.ts'
import type { Chunk, Part, StockContext } from './stockPart.ts'
import { FT, IN, MM } from './unit.ts'
import { couldBe, inMillimetres, inUnit, quoted, ambiguous } from './wording.ts'

/** The least sides of a whole sheet: smaller ones are offcuts and project panels, and share their names with boards. */
const WHOLE = { short: 1_190_000_000, long: 1_500_000_000 }

/** Names of sheets in feet go to 16; a side in mm is at least 300. */
const MOST_FEET = 16
const LEAST_MILLIMETRES = 300

/** True for `4x8`, `5x5`, `8x4`: two numbers that name a whole sheet where the person buys. */
export function isWholeSheet(first: Amount, second: Amount, settings: ReadingSettings): boolean {
  if ([first, second].some(({ number }) => number.form !== 'whole' || number.value.compare(MOST_FEET) > 0))
    return false
  const size = findSheetSize(
    `${first.number.value.toFraction()}x${second.number.value.toFraction()}`,
    settings.region,
    settings.stock,
  )
  return (
    size !== undefined &&
    Math.min(size.length, size.width) >= WHOLE.short &&
    Math.max(size.length, size.width) >= WHOLE.long
  )
}

/** The question about `4x8` alone: the sheet, or so many inches. */
export const sheetOrSize = (first: Amount, second: Amount): Ambiguous => {
  const [a, b] = [first, second].map(({ number }) => number.value.toFraction())
  return couldBe(`${a}x${b}`, [`${a}ft x ${b}ft`, `${a}in x ${b}in`], 'the name of a sheet, or a size')
}

/** A sheet by its sides, in feet or mm, and its thickness where a third number gives it: `4x8`, `4x8x3/4`, `1220x2440`. */
export function sheetChunk(
  context: StockContext,
  { amounts }: Chunk,
  panel: boolean,
): Part | Ambiguous | undefined {
  const [first, second, third] = amounts
  if (!first || !second || amounts.length > 3) return undefined
  if (third && isWholeSheet(first, second, context.settings) && isInchFraction(third))
    return sheetOrBlock(first, second, third)
  if (third)
    return isSheetName(first, second, context.settings, panel) && isThickness(third)
      ? withThickness(context, first, second, third)
      : undefined
  if (!panel) return undefined
  if (first.size && second.size) return typedSides(context, [first, second])
  return isPair(first, second) ? sides(context, first, second) : undefined
}

const isInchFraction = ({ number, unit }: Amount): boolean => unit === IN && number.form === 'fraction'

/** `4x8x3/4"`: the mark may be that of the thickness alone, or of all three. */
function sheetOrBlock(first: Amount, second: Amount, third: Amount): Ambiguous | undefined {
  if (first.unit || second.unit) return undefined
  const thickness = third.number.value.toFraction()
  const name = `${first.text}x${second.text}`
  return couldBe(
    `${name}x${third.text}`,
    [`${name}x${thickness}`, `${first.text}in x ${second.text}in x ${thickness}in`],
    'a sheet, or a size',
  )
}

const isSheetName = (first: Amount, second: Amount, settings: ReadingSettings, panel: boolean): boolean =>
  isPair(first, second) && (panel || isWholeSheet(first, second, settings))

const isThickness = ({ number, unit, size, doubt }: Amount): boolean =>
  !doubt &&
  (unit
    ? unit === MM && size !== undefined && size.compare(MM.size.mul(50)) <= 0
    : number.form === 'fraction')

/** Two bare whole numbers, both feet or both mm. */
function isPair(first: Amount, second: Amount): boolean {
  const pair = [first, second]
  if (
    pair.some(
      ({ unit, number, doubt }) => unit || doubt || number.form !== 'whole' || number.value.compare(1) < 0,
    )
  )
    return false
  return (
    pair.every(({ number }) => number.value.compare(MOST_FEET) <= 0) ||
    pair.every(({ number }) => number.value.compare(LEAST_MILLIMETRES) >= 0)
  )
}

function withThickness(
  context: StockContext,
  first: Amount,
  second: Amount,
  third: Amount,
): Part | undefined {
  const flat = sides(context, first, second)
  if (!flat) return undefined
  const thickness = thicknessOf(third, context.words, context.settings)
  return {
    ...flat,
    lengths: [...flat.lengths, thickness.actual],
    thickness,
    note: thickness.note ?? flat.note,
  }
}

/** Sides with units of their own are stock only beside a material: `18mm ply 1220mm x 2440mm`. */
function typedSides({ words, chunks }: StockContext, pair: readonly Amount[]): Part | undefined {
  const named = words.some(isMaterial) && chunks.length > 1
  return named
    ? {
        status: 'read',
        lengths: pair.flatMap(({ size }) => (size ? [lengthOf(size)] : [])),
        unit: pair[0]?.unit ?? IN,
        is: 'sheet',
      }
    : undefined
}

function sides({ settings, words, chunks }: StockContext, first: Amount, second: Amount): Part | undefined {
  const [a, b] = [Number(first.number.value), Number(second.number.value)]
  const name = `${a}x${b}`
  if (a >= LEAST_MILLIMETRES)
    return words.some(isMaterial) || chunks.length > 1
      ? {
          status: 'read',
          lengths: [a, b].map((side) => nanometres(side * 1_000_000)),
          unit: MM,
          is: 'sheet',
          name,
        }
      : undefined
  const lengths = feetOrTable(a, b, name, settings)
  const feet = lengths[0] === times(FOOT, a)
  const size = feet
    ? `${a} ft x ${b} ft`
    : lengths.map((side) => inMillimetres(new Fraction(side))).join(' x ')
  return { status: 'read', lengths, unit: FT, is: 'sheet', name, note: `${name} read as a sheet of ${size}` }
}

/** Sheets named in feet are that many feet in the US; elsewhere they are made in round mm, as the tables say. */
function feetOrTable(a: number, b: number, name: string, settings: ReadingSettings): readonly Length[] {
  const size = settings.region === 'US' ? undefined : findSheetSize(name, settings.region, settings.stock)
  if (!size) return [a, b].map((side) => times(FOOT, side))
  const [short, long] = [size.length, size.width].sort((one, other) => one - other) as [Length, Length]
  return a <= b ? [short, long] : [long, short]
}

const maySplit = (amount: Amount | undefined): boolean =>
  amount?.number.parts !== undefined && (amount.unit === undefined || amount.unit === IN)

/** `4x8 1/2 ply`: the 8 and the 1/2 are two numbers. `2x4 1/2 ply` may be a board and ply, and is asked about. */
export function splitSheet(
  chunks: readonly Chunk[],
  words: readonly string[],
  settings: ReadingSettings,
): readonly Chunk[] | Ambiguous {
  const at = chunks.findIndex(
    ({ amounts }) =>
      amounts.length === 2 && amounts[1]?.number.parts && maySplit(amounts[1]) && !amounts[0]?.unit,
  )
  const chunk = chunks[at]
  const [first, last] = chunk?.amounts ?? []
  if (!chunk || !first || !last?.number.parts) return chunks
  const [whole, rest] = last.number.parts
  const second: Amount = { text: whole.toFraction(), number: { value: whole, form: 'whole' } }
  const thickness: Amount = {
    text: rest.toFraction(),
    number: { ...last.number, value: rest, form: 'fraction' },
  }
  const name = `${first.text}x${second.text}`
  const sheet = isWholeSheet(first, second, settings)
  if (!sheet && !words.some(isMaterial))
    return chunk.tight && !last.unit ? boardAndMore(first, second, last, chunks, settings) : chunks
  if (sheet && words.some(isMaterial))
    return [
      ...chunks.slice(0, at),
      { ...chunk, amounts: [first, second] },
      { amounts: [thickness], after: [], of: true, tight: false },
      ...chunks.slice(at + 1),
    ]
  if (sheet && (!chunk.tight || last.unit)) return chunks
  if (sheet)
    return couldBe(
      `${name} ${thickness.text}`,
      [
        `${name} of ${thickness.text}`,
        [first.number.value, last.number.value].map((value) => inUnit(value, IN)).join(' x '),
      ],
      'a sheet, or a size',
    )
  return ambiguous(
    `${quoted(`${name} ${thickness.text} ply`)} could be a sheet of ${name} ft, or a ${name} and a sheet; write ${name} of ${thickness.text} ply or ${name}`,
  )
}

/** `2x4 1/2` run together: a board and a fraction, or a side of 4 1/2. */
function boardAndMore(
  first: Amount,
  second: Amount,
  last: Amount,
  chunks: readonly Chunk[],
  settings: ReadingSettings,
): readonly Chunk[] | Ambiguous {
  const name = `${first.text}x${second.text}`
  if (!findBoard(name, settings.region, settings.stock)) return chunks
  return couldBe(
    `${name} ${last.number.parts?.[1].toFraction() ?? ''}`,
    [`${inUnit(first.number.value, IN)} x ${inUnit(last.number.value, IN)}`, name],
    'a size, or a board and another number',
  )
}
