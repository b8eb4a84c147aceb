import { type Block, removeBlock } from './block.ts'
import { type OpenSheet, ownSheet, type Packing, refreshGaps } from './packing.ts'
import type { Random } from './random.ts'

const collect = (packing: Packing, block: Block): number => {
  if (block.part >= 0) {
    const part = block.part
    packing.left[part] = (packing.left[part] as number) + 1
    packing.leftCount++
    packing.leftWeight += packing.weight[part] as number
    return 1
  }
  let count = 0
  for (const child of block.children) count += collect(packing, child)
  return count
}

const areaOf = (packing: Packing, block: Block): number =>
  block.part >= 0
    ? (packing.sizes.area[block.part] as number)
    : block.children.reduce((sum, child) => sum + areaOf(packing, child), 0)

/** Takes all parts out of a row of an own sheet; the row stays, bare. */
export const clearRow = (packing: Packing, sheet: OpenSheet, row: Block): void => {
  sheet.used -= areaOf(packing, row)
  collect(packing, row)
  row.children = []
  row.gap = row.along === 0 ? row.length : row.width
}

/** Takes a whole sheet away; its parts are without a place again. */
export const dropSheet = (packing: Packing, index: number): void => {
  const sheets = packing.sheets
  const sheet = sheets[index] as (typeof sheets)[number]
  collect(packing, sheet.root)
  packing.opened[sheet.type] = (packing.opened[sheet.type] as number) - 1
  packing.cost -= packing.job.sheets[sheet.type]?.price as number
  sheets[index] = sheets[sheets.length - 1] as (typeof sheets)[number]
  sheets.pop()
}

const listBlocks = (block: Block, blocks: Block[]): void => {
  for (const child of block.children) {
    blocks.push(child)
    listBlocks(child, blocks)
  }
}

const countParts = (block: Block): number =>
  block.part >= 0 ? 1 : block.children.reduce((sum, child) => sum + countParts(child), 0)

/** Takes random blocks out of one sheet, up to about `wanted` parts; tells how many parts came out. */
export const thin = (packing: Packing, index: number, wanted: number, random: Random): number => {
  const sheet = ownSheet(packing, index)
  let out = 0
  for (let turn = 0; turn < 2 * wanted && out < wanted && sheet.root.children.length > 0; turn++) {
    const blocks: Block[] = []
    listBlocks(sheet.root, blocks)
    const block = blocks[random.below(blocks.length)] as Block
    if (countParts(block) > wanted - out + 1) continue
    sheet.used -= areaOf(packing, block)
    out += collect(packing, block)
    removeBlock(block)
  }
  refreshGaps(packing.sizes, sheet)
  return out
}

/** A sheet index, one with more room left more likely: the best of two drawn. */
const drawSheet = (packing: Packing, random: Random): number => {
  const first = random.below(packing.sheets.length)
  const second = random.below(packing.sheets.length)
  const fill = (index: number): number => {
    const sheet = packing.sheets[index] as Packing['sheets'][number]
    return sheet.used / (packing.job.sheets[sheet.type]?.area as number)
  }
  return fill(first) <= fill(second) ? first : second
}

/** Takes about `wanted` parts out of a few sheets. An emptied sheet is given back. */
export const ruin = (packing: Packing, wanted: number, random: Random): void => {
  let out = 0
  for (let turn = 0; turn < 8 && out < wanted && packing.sheets.length > 0; turn++) {
    const index = drawSheet(packing, random)
    const share = 1 + random.below(wanted - out)
    out += thin(packing, index, share, random)
    if (packing.sheets[index]?.root.children.length === 0) dropSheet(packing, index)
  }
}
