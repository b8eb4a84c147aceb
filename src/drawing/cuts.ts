import type { CutTree, Rectangle } from '../core/cutting/problem.ts'

/** One cut across a rectangle of a sheet, with the middle of its kerf; numbered in an order that can be sawn. */
export interface NumberedCut {
  readonly number: number
  readonly across: 'x' | 'y'
  /** Along the axis, from the low corner of the sheet. */
  readonly at: number
  /** From where to where the cut runs, along the other axis. */
  readonly from: number
  readonly to: number
}

/** The cuts of a layout in an order that can be sawn: each piece is parted before the pieces that come of it. */
export function numberCuts(tree: CutTree, piece: Rectangle, kerf: number): readonly NumberedCut[] {
  const cuts: NumberedCut[] = []
  const visit = (node: CutTree, { x, y, length, width }: Rectangle): void => {
    if (node.kind !== 'cut') return
    const { across, at } = node
    const isLengthwise = across === 'x'
    const [start, from, reach] = isLengthwise ? [x, y, width] : [y, x, length]
    cuts.push({ number: cuts.length + 1, across, at: start + at + kerf / 2, from, to: from + reach })
    const rest = (isLengthwise ? length : width) - at - kerf
    visit(node.first, isLengthwise ? { x, y, length: at, width } : { x, y, length, width: at })
    if (rest <= 0) return
    visit(
      node.second,
      isLengthwise
        ? { x: x + at + kerf, y, length: rest, width }
        : { x, y: y + at + kerf, length, width: rest },
    )
  }
  visit(tree, piece)
  return cuts
}
