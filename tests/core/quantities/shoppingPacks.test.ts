import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Pack, packFor } from '../../../src/core/quantities/shoppingPacks.ts'

const pack = (holds: number, cost: number): Pack => ({ holds, cost })

describe('packFor', () => {
  it.each([
    ['the small one holds it', 90, [pack(100, 8), pack(200, 13)], [1, 0]],
    ['two small ones cost more than one large', 150, [pack(100, 8), pack(200, 13)], [0, 1]],
    ['a large and a small one', 250, [pack(100, 8), pack(200, 13)], [1, 1]],
    ['the large one is dearer for what it holds', 200, [pack(100, 8), pack(200, 17)], [2, 0]],
    ['the same money: less left over', 100, [pack(100, 8), pack(150, 8)], [1, 0]],
    ['the same money and as much left: fewer packs', 200, [pack(100, 8), pack(200, 16)], [0, 1]],
    ['nothing', 0, [pack(100, 8)], [0]],
  ])('%s', (_, amount, packs, counts) => {
    expect(packFor(amount, packs)).toEqual(counts)
  })

  it('weighs what is left over, where that costs', () => {
    expect(packFor(110, [pack(100, 10), pack(200, 10)], 1)).toEqual([0, 1])
    expect(packFor(110, [pack(60, 10), pack(300, 10)], 1)).toEqual([2, 0])
  })

  it('buys by the thousand without trying every way', () => {
    expect(packFor(1_000_000, [pack(100, 8), pack(1000, 30)])).toEqual([0, 1000])
    expect(packFor(1_000_050, [pack(100, 8), pack(1000, 30)])).toEqual([1, 1000])
  })

  it('holds the amount, and never for less when more is needed', () => {
    const packs = fc.array(
      fc.record({ holds: fc.integer({ min: 1, max: 50 }), cost: fc.integer({ min: 0, max: 90 }) }),
      {
        minLength: 1,
        maxLength: 4,
      },
    )
    fc.assert(
      fc.property(
        packs,
        fc.integer({ min: 0, max: 400 }),
        fc.integer({ min: 0, max: 40 }),
        (sold, amount, more) => {
          const cost = (of: number) =>
            packFor(of, sold).reduce((sum, count, index) => sum + count * (sold[index]?.cost ?? 0), 0)
          const held = packFor(amount, sold).reduce(
            (sum, count, index) => sum + count * (sold[index]?.holds ?? 0),
            0,
          )
          expect(held).toBeGreaterThanOrEqual(amount)
          expect(cost(amount + more)).toBeGreaterThanOrEqual(cost(amount))
        },
      ),
    )
  })

  it.each([[[]], [[pack(0, 1)]], [[pack(Number.NaN, 1)]]])('throws for packs that hold nothing', (packs) => {
    expect(() => packFor(1, packs)).toThrow('no containers to fill')
  })
})
