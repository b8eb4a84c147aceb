import { type Block, copyBlock, emptyRow, placePart } from './block.ts'
import type { Job } from './job.ts'

/** One sheet being filled. Shared between packings until it is written to; `stamp` says by which step it may be. */
export interface OpenSheet {
  readonly type: number
  readonly root: Block
  /** Every row with a gap that takes some part. */
  gaps: Block[]
  used: number
  stamp: number
}

/** Sizes of the parts as laid, for quick looping: index 2 * part + (turned ? 1 : 0); an orientation barred is Infinity. */
export interface Sizes {
  readonly along: Float64Array
  readonly across: Float64Array
  readonly area: Float64Array
  /** Lengths as laid, ascending, and for each the least width that any part up to that length has. */
  readonly ascending: Float64Array
  readonly leastWidths: Float64Array
}

/** Whether any part goes in a gap of this size; what no part fits is waste. */
export const takesAny = (sizes: Sizes, length: number, width: number): boolean => {
  let low = 0
  let high = sizes.ascending.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((sizes.ascending[middle] as number) <= length) low = middle + 1
    else high = middle
  }
  return low > 0 && (sizes.leastWidths[low - 1] as number) <= width
}

const readStairs = (along: Float64Array, across: Float64Array): Pick<Sizes, 'ascending' | 'leastWidths'> => {
  const order = [...along.keys()].filter((index) => Number.isFinite(along[index] as number))
  order.sort((a, b) => (along[a] as number) - (along[b] as number))
  let least = Number.POSITIVE_INFINITY
  const leastWidths = Float64Array.from(order, (index) => {
    least = Math.min(least, across[index] as number)
    return least
  })
  return { ascending: Float64Array.from(order, (index) => along[index] as number), leastWidths }
}

/** Reads the sizes of a job's parts. */
export const readSizes = (job: Job): Sizes => {
  const count = job.parts.length
  const along = new Float64Array(2 * count).fill(Number.POSITIVE_INFINITY)
  const across = new Float64Array(2 * count).fill(Number.POSITIVE_INFINITY)
  job.parts.forEach((part, index) => {
    along[2 * index] = part.length
    across[2 * index] = part.width
    if (!part.turnable) return
    along[2 * index + 1] = part.width
    across[2 * index + 1] = part.length
  })
  return {
    along,
    across,
    area: Float64Array.from(job.parts, (part) => part.area),
    ...readStairs(along, across),
  }
}

/** Parts laid on sheets, and parts still without a place. */
export interface Packing {
  readonly job: Job
  readonly sizes: Sizes
  sheets: OpenSheet[]
  /** How many of each part type have no place. */
  readonly left: Int32Array
  /** How many of each sheet type are open. */
  readonly opened: Int32Array
  leftCount: number
  /** Area (in largest sheets), or worth, of the parts without a place. */
  leftWeight: number
  /** What one part without a place counts now, and what it counted first. */
  readonly weight: Float64Array
  readonly base: Float64Array
  cost: number
  stamp: number
  /** Rough steps spent so far, to share the time between searches without a clock. */
  effort: number
}

/** Nothing laid yet. `weight` is what a part without a place counts; its area by default. */
export const emptyPacking = (job: Job, weight?: Float64Array): Packing => {
  const sizes = readSizes(job)
  const largest = Math.max(...job.sheets.map((sheet) => sheet.area))
  const weights = weight ?? sizes.area.map((area) => area / largest)
  const left = Int32Array.from(job.parts, (part) => part.count)
  return {
    job,
    sizes,
    sheets: [],
    left,
    opened: new Int32Array(job.sheets.length),
    leftCount: left.reduce((sum, count) => sum + count, 0),
    leftWeight: left.reduce((sum, count, part) => sum + count * (weights[part] as number), 0),
    weight: weights.slice(),
    base: weights,
    cost: 0,
    stamp: 0,
    effort: 0,
  }
}

/** Opens a bare sheet. */
export const openSheet = (packing: Packing, type: number): OpenSheet => {
  const sheet = packing.job.sheets[type] as Job['sheets'][number]
  const root = emptyRow(sheet.length, sheet.width, 0, undefined)
  const open = { type, root, gaps: [root], used: 0, stamp: packing.stamp }
  packing.sheets.push(open)
  packing.opened[type] = (packing.opened[type] as number) + 1
  packing.cost += sheet.price
  return open
}

const listGaps = (sizes: Sizes, block: Block, gaps: Block[]): void => {
  if (block.part >= 0) return
  const length = block.along === 0 ? block.gap : block.length
  const width = block.along === 0 ? block.width : block.gap
  if (block.gap > 0 && takesAny(sizes, length, width)) gaps.push(block)
  const children = block.children
  for (let index = 0; index < children.length; index++) listGaps(sizes, children[index] as Block, gaps)
}

/** Reads the gaps of a sheet anew after blocks were taken out. */
export const refreshGaps = (sizes: Sizes, sheet: OpenSheet): void => {
  const gaps: Block[] = []
  listGaps(sizes, sheet.root, gaps)
  sheet.gaps = gaps
}

/** The sheet at an index, copied first unless it was made or copied in this step already. */
export const ownSheet = (packing: Packing, index: number): OpenSheet => {
  const sheet = packing.sheets[index] as OpenSheet
  if (sheet.stamp === packing.stamp) return sheet
  const root = copyBlock(sheet.root, undefined)
  const copy = { type: sheet.type, root, gaps: [], used: sheet.used, stamp: packing.stamp }
  refreshGaps(packing.sizes, copy)
  packing.sheets[index] = copy
  return copy
}

/** Where a part would go. */
export interface Place {
  sheet: number
  gap: number
  turned: boolean
  across: boolean
  loss: number
}

/** Counts one part as laid on a sheet. */
export const takePart = (packing: Packing, sheet: OpenSheet, part: number): void => {
  sheet.used += packing.sizes.area[part] as number
  packing.left[part] = (packing.left[part] as number) - 1
  packing.leftCount--
  packing.leftWeight -= packing.weight[part] as number
}

/** Lays one part of a type where `place` says. */
export const layPart = (packing: Packing, part: number, place: Place): void => {
  const sheet = ownSheet(packing, place.sheet)
  const row = sheet.gaps[place.gap] as Block
  const index = 2 * part + (place.turned ? 1 : 0)
  const length = packing.sizes.along[index] as number
  const width = packing.sizes.across[index] as number
  placePart(row, part, place.turned, length, width, place.across)
  refreshGaps(packing.sizes, sheet)
  takePart(packing, sheet, part)
}
