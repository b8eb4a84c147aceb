import { describe, expect, it } from 'vitest'
import type { LaidGroup } from '../../src/bot/laidJob.ts'
import { costOf, gapOf, isOptimal, leastPieces, sharing, wasteOf } from '../../src/bot/layoutValue.ts'
import type { StockItem } from '../../src/core/cutting/job.ts'
import type { Length } from '../../src/core/measure/length.ts'

const length = (value: number) => value as Length

const item = (about: Partial<StockItem>): StockItem => ({
  label: 'S',
  kind: 'sheet',
  length: length(100),
  width: length(50),
  thickness: length(10),
  ...about,
})

interface Sums {
  readonly value: number
  readonly lowerBound: number
  readonly priced: boolean
}

/** Two sheets of 100 x 50, each with one part of 60 x 50 and a kept offcut of 30 x 50. */
const sheets = ({ value = 200, lowerBound = 200, priced = true }: Partial<Sums> = {}): LaidGroup => ({
  group: {
    kind: 'sheet',
    thickness: length(10),
    material: undefined,
    stock: [item({})],
    priced,
    problem: {
      parts: [{ id: 'P', length: 60, width: 50, count: 2, turnable: true }],
      stock: [{ id: 'S', length: 100, width: 50, price: 100 }],
      kerf: 10,
      trim: 0,
      keepable: 20,
    },
  },
  layouts: [
    {
      stock: 'S',
      count: 2,
      placements: [{ part: 'P', turned: false, x: 0, y: 0, length: 60, width: 50 }],
      offcuts: [{ x: 70, y: 0, length: 30, width: 50 }],
      cuts: { kind: 'rest' },
    },
  ],
  pieces: 2,
  value,
  lowerBound,
  optimal: value === lowerBound,
  milliseconds: 1,
})

/** Five strips of 4 from boards 100 long and 20 wide, three to a board: two boards, one strip's width of the second kept. */
const strips = ({ value = 80, lowerBound = 80, priced = true }: Partial<Sums> = {}): LaidGroup => ({
  group: {
    kind: 'strip',
    thickness: length(4),
    width: length(10),
    stock: [item({ label: 'B', kind: 'board', width: length(20) })],
    priced,
    problem: {
      parts: [{ id: 'Q', length: 45, count: 10 }],
      stock: [{ id: 'B', length: 100, price: 40, strips: 3 }],
      kerf: 2,
      trim: 0,
      keepable: 20,
    },
  },
  layouts: [{ stock: 'B', count: 5, parts: ['Q', 'Q'], offcut: 6 }],
  pieces: 2,
  value,
  lowerBound,
  optimal: value === lowerBound,
  milliseconds: 1,
})

const job = (...groups: readonly LaidGroup[]) => ({ groups })

describe('gapOf', () => {
  it('is nothing where all is proven', () => expect(gapOf(job(sheets(), strips()))).toBe(0))

  it('is over the cost of everything where prices are known', () => {
    // 280 paid, 230 proven.
    expect(gapOf(job(sheets({ lowerBound: 150 }), strips()))).toBeCloseTo(50 / 230, 12)
  })

  it('is that of the group furthest over where they are not: square metres of sheet and board do not add up', () => {
    const unpriced = job(
      sheets({ priced: false, value: 1e6, lowerBound: 0.9e6 }),
      strips({ priced: false, value: 30, lowerBound: 20 }),
    )
    expect(gapOf(unpriced)).toBeCloseTo(0.5, 12)
  })

  it('is nothing where nothing is the least', () =>
    expect(gapOf(job(sheets({ value: 100, lowerBound: 0 })))).toBe(0))
})

describe('what is proven', () => {
  it('is the sum of groups that share nothing', () => {
    expect(isOptimal(job(sheets(), strips()))).toBe(true)
    expect(costOf(job(sheets(), strips()))).toEqual({ cost: 280, least: 280 })
    expect(isOptimal(job(sheets({ lowerBound: 100 })))).toBe(false)
  })

  it('is only the largest of groups that could share a board', () => {
    const both = job(sheets(), strips(), strips({ value: 40, lowerBound: 40 }))
    expect(sharing(both)).toHaveLength(2)
    expect(costOf(both)).toEqual({ cost: 320, least: 280 })
    expect(isOptimal(both)).toBe(false)
    expect(gapOf(both)).toBeCloseTo(40 / 280, 12)
  })

  it('is no cost where a price is missing', () =>
    expect(costOf(job(sheets(), strips({ priced: false })))).toBeUndefined())

  it('is so many pieces that no layout does without', () => {
    expect(leastPieces(job(sheets(), strips()))).toBe(4)
    expect(leastPieces(job(sheets({ lowerBound: 101 })))).toBe(2)
    expect(leastPieces(job(sheets({ value: 0, lowerBound: 0 })))).toBe(0)
  })
})

describe('wasteOf', () => {
  it('counts neither parts nor kept offcuts of sheets', () => {
    // A kerf of 10 in 100.
    expect(wasteOf(job(sheets()))).toBeCloseTo(0.1, 12)
  })

  it('counts the boards of strips whole, but for strips not yet ripped', () => {
    // Two boards of 100 x 20 = 4000. Ten parts of 45 x 4 = 1800, and one strip of 100 x 4 not ripped.
    expect(wasteOf(job(strips()))).toBeCloseTo(1 - (1800 + 400) / 4000, 12)
  })

  it('weighs sheets and boards by their wood', () => {
    const sheetWood = 2 * 100 * 50 * 10
    const boardWood = 2 * 100 * 20 * 10
    const lost = 0.1 * sheetWood + 0.45 * boardWood
    expect(wasteOf(job(sheets(), strips()))).toBeCloseTo(lost / (sheetWood + boardWood), 12)
  })

  it('is nothing of nothing', () => expect(wasteOf(job())).toBe(0))
})
