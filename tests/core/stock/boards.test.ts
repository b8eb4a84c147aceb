import { describe, expect, it } from 'vitest'
import { boardNames, findBoard } from '../../../src/core/stock/boards.ts'
import { REGIONS } from '../../../src/core/stock/stock.ts'
import { shop } from './fixture.ts'

describe('findBoard', () => {
  it.each(['2x4', '2X4', ' 2 x 4 ', '2×4', '2 × 4'])('finds "%s" however it is written', (name) => {
    expect(findBoard(name, 'US', shop)).toBe(shop.boards[0])
  })

  it('finds names with a fraction and with words', () => {
    expect(findBoard('5/4 x 6', 'US', shop)).toBe(shop.boards[1])
    expect(findBoard('38x89  cls', 'UK', shop)).toBe(shop.boards[4])
  })

  it('finds an alias, and says what it is an alias of', () => {
    expect(findBoard('4x2', 'UK', shop)).toMatchObject({ aliasOf: '47x100', thickness: 47e6, width: 100e6 })
  })

  it('finds nothing where the region has no such board', () => {
    expect(findBoard('2x4', 'UK', shop)).toBeUndefined()
    expect(findBoard('4x2', 'US', shop)).toBeUndefined()
    expect(findBoard('', 'US', shop)).toBeUndefined()
  })
})

describe('boardNames', () => {
  it('lists the rack in its own order without aliases', () => {
    expect(boardNames('US', shop)).toEqual(['2x4', '5/4x6'])
    expect(boardNames('UK', shop)).toEqual(['47x100', '38x89 CLS'])
    expect(boardNames('AU', shop)).toEqual([])
  })

  it('lists names that are found', () => {
    for (const region of REGIONS)
      for (const name of boardNames(region, shop)) expect(findBoard(name, region, shop)?.name).toBe(name)
  })
})
