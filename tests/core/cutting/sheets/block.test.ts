import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type Block,
  copyBlock,
  emptyRow,
  placePart,
  removeBlock,
} from '../../../../src/core/cutting/sheets/block.ts'

const rows = (block: Block): Block[] => (block.part >= 0 ? [] : [block, ...block.children.flatMap(rows)])
const leaves = (block: Block): Block[] => (block.part >= 0 ? [block] : block.children.flatMap(leaves))

/** Every child as wide as its row, and children and gap together as long. */
const expectSound = (root: Block): void => {
  for (const row of rows(root)) {
    const along = (block: Block) => (row.along === 0 ? block.length : block.width)
    const across = (block: Block) => (row.along === 0 ? block.width : block.length)
    const total = row.children.reduce((sum, child) => sum + along(child), row.gap)
    expect(total).toBe(along(row))
    expect(row.gap).toBeGreaterThanOrEqual(0)
    for (const child of row.children) {
      expect(across(child)).toBe(across(row))
      expect(child.parent).toBe(row)
    }
  }
}

/** Lays or takes away by whim; `moves` are read as choices. */
const shuffle = (root: Block, moves: readonly number[]): void => {
  moves.forEach((move, index) => {
    const blocks = leaves(root)
    if (move % 4 === 0 && blocks.length > 0) {
      const block = blocks[move % blocks.length] as Block
      removeBlock(move % 8 === 0 && block.parent?.parent ? block.parent : block)
    } else {
      const gaps = rows(root).filter((row) => row.gap > 0)
      const row = gaps[move % Math.max(1, gaps.length)]
      const length = 1 + (move % 9)
      const width = 1 + ((move >> 3) % 7)
      const roomLength = row?.along === 0 ? row.gap : (row?.length ?? 0)
      const roomWidth = row?.along === 0 ? row.width : (row?.gap ?? 0)
      if (row && length <= roomLength && width <= roomWidth)
        placePart(row, index, false, length, width, move % 2 === 1)
    }
  })
}

describe('a block', () => {
  it('stays whole however parts are laid and taken out', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(10_000), { maxLength: 60 }), (moves) => {
        const root = emptyRow(30, 20, 0, undefined)
        shuffle(root, moves)
        expectSound(root)
      }),
      { seed: 2 },
    )
  })

  it('is all gap again when all is taken out', () => {
    const root = emptyRow(30, 20, 0, undefined)
    shuffle(root, [1, 2, 3, 5, 6, 7, 9, 10, 11, 13])
    for (let block = leaves(root)[0]; block !== undefined; block = leaves(root)[0]) removeBlock(block)
    expectSound(root)
    expect(root.children).toEqual([])
  })

  it('is copied without sharing anything', () => {
    const root = emptyRow(30, 20, 0, undefined)
    shuffle(root, [1, 2, 3, 5, 6, 7])
    const before = leaves(root).length
    const copy = copyBlock(root, undefined)
    for (const block of leaves(copy)) removeBlock(block)
    expect(leaves(root)).toHaveLength(before)
    expectSound(root)
  })
})
