import { type Axis, Block, emptyRow } from './block.ts'
import type { SheetType } from './job.ts'
import type { Sizes } from './packing.ts'

/** How one sheet is filled: a part (`index` as in `Sizes`), or two patterns side by side. */
export type Pattern =
  | { readonly index: number }
  | { readonly along: Axis; readonly first: Pattern | undefined; readonly second: Pattern | undefined }

/** All parts of a pattern, indices as in `Sizes`. */
export const listPieces = (pattern: Pattern | undefined): number[] => {
  if (pattern === undefined) return []
  return 'index' in pattern ? [pattern.index] : [...listPieces(pattern.first), ...listPieces(pattern.second)]
}

const sizeOf = (pattern: Pattern | undefined, sizes: Sizes): readonly [number, number] => {
  if (pattern === undefined) return [0, 0]
  if ('index' in pattern) return [sizes.along[pattern.index] as number, sizes.across[pattern.index] as number]
  const [firstLength, firstWidth] = sizeOf(pattern.first, sizes)
  const [secondLength, secondWidth] = sizeOf(pattern.second, sizes)
  return pattern.along === 0
    ? [firstLength + secondLength, Math.max(firstWidth, secondWidth)]
    : [Math.max(firstLength, secondLength), firstWidth + secondWidth]
}

/** A row inside a row, across it, taking `size` of its gap. */
const crossRow = (row: Block, size: number): Block => {
  const inner = row.along === 0 ? emptyRow(size, row.width, 1, row) : emptyRow(row.length, size, 0, row)
  row.children.push(inner)
  row.gap -= size
  return inner
}

const putPart = (row: Block, index: number, length: number, width: number): void => {
  const fills = row.along === 0 ? width === row.width : length === row.length
  const holder = fills ? row : crossRow(row, row.along === 0 ? length : width)
  const block = new Block(length, width, holder)
  block.part = index >> 1
  block.turned = (index & 1) === 1
  holder.children.push(block)
  holder.gap -= holder.along === 0 ? length : width
}

/** Lays a pattern in the gap of a row. */
export const putPattern = (row: Block, pattern: Pattern | undefined, sizes: Sizes): void => {
  if (pattern === undefined) return
  const [length, width] = sizeOf(pattern, sizes)
  if ('index' in pattern) {
    putPart(row, pattern.index, length, width)
    return
  }
  const inner = pattern.along === row.along ? row : crossRow(row, row.along === 0 ? length : width)
  putPattern(inner, pattern.first, sizes)
  putPattern(inner, pattern.second, sizes)
}

/** A pattern laid out on a bare sheet. */
export const drawPattern = (pattern: Pattern | undefined, sheet: SheetType, sizes: Sizes): Block => {
  const root = emptyRow(
    sheet.length,
    sheet.width,
    pattern && 'along' in pattern ? pattern.along : 0,
    undefined,
  )
  putPattern(root, pattern, sizes)
  return root
}
