import type { Packing } from './packing.ts'

/** A packing as it was, to go back to. */
export interface Mark {
  readonly sheets: Packing['sheets']
  readonly left: Int32Array
  readonly opened: Int32Array
  readonly leftCount: number
  readonly leftWeight: number
  readonly cost: number
}

/** Remembers a packing. What is written to it afterwards must be under a new stamp. */
export const markPacking = (packing: Packing): Mark => {
  packing.stamp++
  return {
    sheets: packing.sheets.slice(),
    left: packing.left.slice(),
    opened: packing.opened.slice(),
    leftCount: packing.leftCount,
    leftWeight: packing.leftWeight,
    cost: packing.cost,
  }
}

/** Puts a packing back to a mark. */
export const restorePacking = (packing: Packing, mark: Mark): void => {
  packing.stamp++
  packing.sheets = mark.sheets.slice()
  packing.left.set(mark.left)
  packing.opened.set(mark.opened)
  packing.leftCount = mark.leftCount
  packing.leftWeight = mark.leftWeight
  packing.cost = mark.cost
}
