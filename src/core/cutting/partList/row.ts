import type { ReadingSettings } from '../../measure/reading.ts'
import { findBoard } from '../../stock/boards.ts'
import type { LineRead, ListedPart } from './listedPart.ts'
import { MOST_COPIES, problemOf } from './listedPart.ts'
import type { NoSides, Sides } from './sizes.ts'
import { readSides } from './sizes.ts'
import type { Column, Heading } from './table.ts'
import { isMaterial, isNumber, materialWords } from './words.ts'

/** The cells of a row by what they hold. */
export type Cells = Partial<Record<Column | 'note', string>>

const WHOLE = /^\d+$/u

/** Cells under a header; a bare number takes the unit of its heading. */
export function cellsUnder(headings: readonly Heading[], row: readonly string[]): Cells {
  const cells: Cells = {}
  headings.forEach(({ column, unit }, at) => {
    const cell = row[at] ?? ''
    if (column === undefined || cell === '') return
    cells[column] = unit !== '' && /[\d¼-¾⅐-⅞]$/u.test(cell) && column !== 'count' ? `${cell}${unit}` : cell
  })
  return cells
}

const isSizeCell = (cell: string): boolean =>
  cell
    .split(/\s+/u)
    .every(
      (word, at) =>
        isNumber(word) || (at > 0 && /^(?:x|×|by|mm|cm|in|ins|inch(?:es)?|ft|feet|["'])$/iu.test(word)),
    )

/** The count among numbers: the only bare whole number among others with units, or the first of three or more bare ones when it is the least. */
function findCount(numbers: readonly string[]): number | undefined {
  const bare = numbers.flatMap((cell, at) => (WHOLE.test(cell) ? [at] : []))
  if (bare.length === 1) return bare[0]
  const values = numbers.map(Number.parseFloat)
  const isLeast = WHOLE.test(numbers[0] ?? '') && values.every((value, at) => at === 0 || value > values[0]!)
  return isLeast && numbers.length > 2 ? 0 : undefined
}

/** Cells of a row without a header: label and material are words; numbers are count, length, width, thickness. */
export function guessCells(row: readonly string[], settings: ReadingSettings): Cells | undefined {
  const filled = row.filter((cell) => cell !== '')
  const words = filled.filter((cell) => !isSizeCell(cell))
  const numbers = filled.filter(isSizeCell)
  if (numbers.length < 2 || words.some((cell) => /\d\s*(?:@|[x×*])|(?:[x×*]|qty)\s*\d/iu.test(cell)))
    return undefined
  const named = materialWords(settings.stock.labels)
  const isStock = (cell: string): boolean => cell.split(/\s+/u).some((word) => isMaterial(word, named))
  const material = words.findLast((cell, at) => (at > 0 || filled[0] !== cell) && isStock(cell))
  const label = words.filter((cell) => cell !== material).join(', ')
  const at = findCount(numbers)
  const isOpen = at === undefined && (numbers.length > 2 || numbers.every((cell) => WHOLE.test(cell)))
  if (isOpen) return { label }
  const [length, width, thickness] = numbers.filter((_, place) => place !== at)
  const cells: Cells = { label }
  if (material !== undefined) cells.material = material
  if (at !== undefined) {
    cells.count = numbers[at]!
    if (numbers.every((cell) => WHOLE.test(cell))) cells.note = `${numbers[at]} read as the count`
  }
  if (length !== undefined) cells[/[x×]/iu.test(length) ? 'size' : 'length'] = length
  if (width !== undefined) cells[cells.size === undefined ? 'width' : 'thickness'] = width
  if (thickness !== undefined) cells.thickness = thickness
  return cells
}

function readCellSides(
  { size, length, width, thickness }: Cells,
  settings: ReadingSettings,
): Sides | NoSides {
  const flat = size ?? [length, width].filter((side) => side !== undefined).join(' x ')
  const sides = readSides(flat, settings, true)
  if (sides.status !== 'read' || thickness === undefined) return sides
  const thick = readSides(thickness, { ...settings, units: sides.units }, true)
  return thick.status === 'read' ? { ...sides, thickness: thick.length } : thick
}

function readCount(cell: string | undefined): number | undefined {
  const count = cell === undefined ? 1 : WHOLE.test(cell) ? Number(cell) : Number.NaN
  return count >= 1 && count <= MOST_COPIES ? count : undefined
}

/** A row that names a board and gives no other width is of that board. */
function sectionOf(
  { material = '' }: Cells,
  { width, thickness, board }: Sides,
  { region, stock }: ReadingSettings,
): Pick<ListedPart, 'width' | 'thickness' | 'board'> {
  const named = board === undefined && width === undefined ? findBoard(material, region, stock) : undefined
  return named
    ? { width: named.width, thickness: named.thickness, board: named.name }
    : { width, thickness, board }
}

/** Reads the cells of one row as a part. */
export function readCells(cells: Cells, settings: ReadingSettings): LineRead {
  if (cells.length === undefined && cells.size === undefined)
    return problemOf('does not say which number is the count; put a header above: part, count, length, width')
  const count = readCount(cells.count)
  if (count === undefined)
    return problemOf(`has "${cells.count}" for a count; write a whole number from 1 to ${MOST_COPIES}`)
  const sides = readCellSides(cells, settings)
  if (sides.status !== 'read') return sides
  const { length, note, units } = sides
  const part: Omit<ListedPart, 'line'> = {
    label: cells.label || undefined,
    count,
    counted: cells.count !== undefined,
    length,
    ...sectionOf(cells, sides, settings),
    material: cells.material || sides.material,
    note: [cells.note, note].filter(Boolean).join('; ') || undefined,
  }
  return { status: 'part', part, units }
}
