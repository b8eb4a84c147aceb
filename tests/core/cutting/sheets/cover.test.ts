import { describe, expect, it } from 'vitest'
import { coverCost } from '../../../../src/core/cutting/sheets/cover.ts'
import type { SheetType } from '../../../../src/core/cutting/sheets/job.ts'

const sheet = (price: number, limit = Number.POSITIVE_INFINITY): SheetType => ({
  id: `at ${price}`,
  length: 1,
  width: 1,
  area: 1,
  price,
  limit,
  trim: 0,
})

describe('coverCost', () => {
  it('takes whole sheets of one kind', () => {
    expect(coverCost([sheet(100)], [10], 21, 0)).toBe(300)
    expect(coverCost([sheet(100)], [10], 20, 0)).toBe(200)
  })

  it('takes the cheapest mix of whole sheets', () => {
    expect(coverCost([sheet(1000), sheet(600)], [4, 2], 5, 0)).toBe(1600)
    expect(coverCost([sheet(1000), sheet(700)], [4, 2], 5, 0)).toBe(1700)
    expect(coverCost([sheet(7), sheet(5), sheet(3)], [5, 3, 2], 11, 0)).toBe(16)
  })

  it('uses what is on hand first and buys the rest', () => {
    expect(coverCost([sheet(0, 2), sheet(50)], [3, 4], 13, 0)).toBe(100)
  })

  it('is infinite when all there is holds too little', () => {
    expect(coverCost([sheet(5, 2)], [3], 7, 0)).toBe(Number.POSITIVE_INFINITY)
  })

  it('passes over sheets that hold nothing', () => {
    expect(coverCost([sheet(1), sheet(9)], [0, 2], 3, 0)).toBe(18)
  })

  it('does not round a sum up for an error of floating point', () => {
    expect(coverCost([sheet(10)], [0.3], 0.1 + 0.2, 0)).toBe(10)
  })
})
