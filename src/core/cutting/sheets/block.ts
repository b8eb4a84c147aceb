/** The axis along which the children of a block lie side by side: 0 for x (the length), 1 for y (the width). */
export type Axis = 0 | 1

/**
 * A rectangle of a sheet, kerf included. Either one part (`part` >= 0), or a row of children along one axis with all
 * that is free gathered behind the last: guillotine cuts let the children of a row change places, so one gap is enough.
 */
export class Block {
  parent: Block | undefined
  length: number
  width: number
  along: Axis = 0
  /** Free extent along `along`, over the whole other side. */
  gap = 0
  part = -1
  turned = false
  children: Block[] = []

  constructor(length: number, width: number, parent: Block | undefined) {
    this.length = length
    this.width = width
    this.parent = parent
  }
}

/** An empty row of the given size: all gap. */
export const emptyRow = (length: number, width: number, along: Axis, parent: Block | undefined): Block => {
  const row = new Block(length, width, parent)
  row.along = along
  row.gap = along === 0 ? length : width
  return row
}

const partBlock = (part: number, turned: boolean, length: number, width: number, parent: Block): Block => {
  const block = new Block(length, width, parent)
  block.part = part
  block.turned = turned
  return block
}

/** A copy that shares nothing with the original. */
export const copyBlock = (from: Block, parent: Block | undefined): Block => {
  const copy = new Block(from.length, from.width, parent)
  copy.along = from.along
  copy.gap = from.gap
  copy.part = from.part
  copy.turned = from.turned
  const children = from.children
  for (let index = 0; index < children.length; index++)
    copy.children.push(copyBlock(children[index] as Block, copy))
  return copy
}

const extent = (block: Block, along: Axis): number => (along === 0 ? block.length : block.width)

const addRow = (parent: Block, along: Axis, length: number, width: number): Block => {
  const row = emptyRow(length, width, along, parent)
  parent.children.push(row)
  parent.gap -= extent(row, parent.along)
  return row
}

const addPart = (row: Block, part: number, turned: boolean, length: number, width: number): void => {
  row.children.push(partBlock(part, turned, length, width, row))
  row.gap -= row.along === 0 ? length : width
}

/**
 * Puts a part in the gap of `row`. `across` false: a strip as wide as the part is split off the gap first; true: the
 * whole gap is first cut the other way.
 */
export const placePart = (
  row: Block,
  part: number,
  turned: boolean,
  length: number,
  width: number,
  across: boolean,
): void => {
  const along = row.along
  const other: Axis = along === 0 ? 1 : 0
  const side = along === 0 ? width : length
  const full = along === 0 ? row.width : row.length
  if (side === full) {
    addPart(row, part, turned, length, width)
    return
  }
  const size = along === 0 ? length : width
  if (across && size !== row.gap) {
    let stack = row
    if (row.children.length === 0 && row.parent === undefined) {
      row.along = other
      row.gap = full
    } else {
      stack = along === 0 ? addRow(row, other, row.gap, full) : addRow(row, other, full, row.gap)
    }
    const strip =
      other === 1 ? addRow(stack, along, stack.length, width) : addRow(stack, along, length, stack.width)
    addPart(strip, part, turned, length, width)
    return
  }
  const strip = along === 0 ? addRow(row, other, length, full) : addRow(row, other, full, width)
  addPart(strip, part, turned, length, width)
}

/** Lifts a row that is all of its parent into the grandparent, where its children lie the same way. */
const lift = (row: Block): void => {
  const only = row.children[0] as Block
  const parent = row.parent
  if (parent === undefined) {
    row.along = only.along
    row.gap = only.gap
    row.children = only.children
    for (const child of row.children) child.parent = row
    return
  }
  parent.children.splice(parent.children.indexOf(row), 1, ...only.children)
  for (const child of only.children) child.parent = parent
  parent.gap += only.gap
}

/** Takes a block out of its row; rows left empty go too, and their room joins the gap above. */
export const removeBlock = (block: Block): void => {
  let gone = block
  let row = block.parent
  while (row !== undefined) {
    const children = row.children
    children[children.indexOf(gone)] = children[children.length - 1] as Block
    children.pop()
    row.gap += extent(gone, row.along)
    if (children.length > 0) break
    gone = row
    row = row.parent
  }
  if (row !== undefined && row.gap === 0 && row.children.length === 1 && row.children[0]?.part === -1)
    lift(row)
}
