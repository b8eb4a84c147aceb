import { describe, expect, it } from 'vitest'
import { inches, millimetres } from '../../../src/core/measure/length.ts'
import { findSheetLabel, findSheetSize, materials, sheetLabels } from '../../../src/core/stock/sheets.ts'
import { shop } from './fixture.ts'

describe('findSheetLabel', () => {
  it('finds what a label means for a material in a region', () => {
    expect(findSheetLabel('plywood', inches(3, 4), 'US', shop)?.actual).toBe(inches(23, 32))
    expect(findSheetLabel('mdf', inches(3, 4), 'US', shop)?.actual).toBe(inches(3, 4))
  })

  it('finds nothing for a label, a material or a region that the shop lacks', () => {
    expect(findSheetLabel('plywood', millimetres(12), 'US', shop)).toBeUndefined()
    expect(findSheetLabel('OSB', inches(3, 4), 'US', shop)).toBeUndefined()
    expect(findSheetLabel('plywood', inches(3, 4), 'AU', shop)).toBeUndefined()
  })
})

describe('sheetLabels and materials', () => {
  it('list labels thinnest first and leave the tables as they were', () => {
    const before = structuredClone(shop)
    expect(sheetLabels('plywood', 'US', shop).map(({ label }) => label)).toEqual([inches(1, 2), inches(3, 4)])
    expect(shop).toEqual(before)
  })

  it('list each material of a region once', () => {
    expect(materials('US', shop)).toEqual(['plywood', 'MDF'])
    expect(materials('EU', shop)).toEqual([])
  })
})

describe('findSheetSize', () => {
  it.each([
    ['4x8', 'US', 2438.4],
    ['4 x 8', 'US', 2438.4],
    ['1220×2440', 'UK', 2440],
    ['8x4', 'UK', 2440],
  ] as const)('finds %s in %s, the longer side first', (name, region, length) => {
    const size = findSheetSize(name, region, shop)
    expect(size?.length).toBe(millimetres(length))
    expect(size?.width).toBeLessThan(size?.length ?? 0)
  })

  it('finds nothing where the region has no such size', () => {
    expect(findSheetSize('8x4', 'US', shop)).toBeUndefined()
  })
})
