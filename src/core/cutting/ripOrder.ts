import type { Length } from '../measure/length.ts'

/** Boards of one width that are ripped into strips before anything is crosscut. */
export interface Ripped {
  readonly width: Length
  readonly strip: Length
  readonly kerf: Length
  /** Strips that one board gives. */
  readonly perBoard: number
  /** Strips that are wanted of all the boards. */
  readonly strips: number
}

/** One fence setting, and how many boards are run at it before it is moved. */
export interface RipStep {
  readonly setting: Length
  readonly boards: number
}

/**
 * Fence settings for all boards together, widest first: the strip falls free and cut i is at B - i(s + k). Every board is
 * run at a setting before the next; the last board only as often as strips are wanted. Where too little is left for one more
 * kerf, the last strip is what lies at the fence: the setting is its own thickness.
 */
export function ripOrder({ width, strip, kerf, perBoard, strips }: Ripped): readonly RipStep[] {
  const boards = Math.ceil(strips / perBoard)
  const inLast = strips - (boards - 1) * perBoard
  const most = boards > 1 ? perBoard : Math.max(0, strips)
  return Array.from({ length: most }, (_, index) => {
    const setting = width - (index + 1) * (strip + kerf)
    return {
      setting: (setting > 0 ? setting : strip) as Length,
      boards: index < inLast ? boards : boards - 1,
    }
  })
}
