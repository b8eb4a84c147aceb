import type { CutTree, Placement, Rectangle, SheetLayout } from '../problem.ts'
import type { Axis, Block } from './block.ts'
import type { Job } from './job.ts'
import type { OpenSheet } from './packing.ts'

/** Names the next part of a type: its id, and whether its own length is the type's width. */
export type NamePart = (type: number) => { readonly id: string; readonly swapped: boolean }

/** What is read off while a sheet is taken apart. Sizes in the problem's unit. */
interface Reading {
  readonly job: Job
  readonly name: NamePart
  readonly placements: Placement[]
  readonly offcuts: Rectangle[]
}

const rest = (reading: Reading, region: Rectangle): CutTree => {
  const keepable = reading.job.keepable * reading.job.unit
  if (Math.min(region.length, region.width) >= keepable && region.length > 0 && region.width > 0)
    reading.offcuts.push(region)
  return { kind: 'rest' }
}

const partLeaf = (reading: Reading, block: Block, region: Rectangle): CutTree => {
  const { id, swapped } = reading.name(block.part)
  const turned = block.turned !== swapped
  reading.placements.push({ ...region, part: id, turned })
  return { kind: 'part', part: id, turned }
}

const split = (region: Rectangle, along: Axis, at: number, kerf: number): readonly [Rectangle, Rectangle] =>
  along === 0
    ? [
        { ...region, length: at },
        { ...region, x: region.x + at + kerf, length: region.length - at - kerf },
      ]
    : [
        { ...region, width: at },
        { ...region, y: region.y + at + kerf, width: region.width - at - kerf },
      ]

const extentOf = (block: Block, along: Axis): number => (along === 0 ? block.length : block.width)

/** Equal extents side by side, the largest first: one fence setting serves them all. */
const inOrder = (row: Block): Block[] =>
  [...row.children].sort((a, b) => extentOf(b, row.along) - extentOf(a, row.along))

const takeApart = (reading: Reading, block: Block, region: Rectangle): CutTree =>
  block.part >= 0 ? partLeaf(reading, block, region) : takeRow(reading, block, inOrder(block), 0, region)

const takeRow = (
  reading: Reading,
  row: Block,
  children: Block[],
  index: number,
  region: Rectangle,
): CutTree => {
  const child = children[index]
  if (child === undefined) return rest(reading, region)
  if (index === children.length - 1 && row.gap === 0) return takeApart(reading, child, region)
  const kerf = reading.job.kerf * reading.job.unit
  const at = extentOf(child, row.along) * reading.job.unit - kerf
  const [first, second] = split(region, row.along, at, kerf)
  return {
    kind: 'cut',
    across: row.along === 0 ? 'x' : 'y',
    at,
    first: takeApart(reading, child, first),
    second: takeRow(reading, row, children, index + 1, second),
  }
}

/** An open sheet as a layout: placements and offcuts from the corner of the untrimmed sheet, cuts for the trimmed one. */
export const readLayout = (job: Job, sheet: OpenSheet, name: NamePart, count: number): SheetLayout => {
  const stock = job.sheets[sheet.type] as Job['sheets'][number]
  const reading: Reading = { job, name, placements: [], offcuts: [] }
  const length = (stock.length - job.kerf) * job.unit
  const width = (stock.width - job.kerf) * job.unit
  const cuts = takeApart(reading, sheet.root, { x: stock.trim, y: stock.trim, length, width })
  return { stock: stock.id, count, placements: reading.placements, offcuts: reading.offcuts, cuts }
}
