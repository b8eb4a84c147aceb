import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fillContainers } from '../../../src/core/quantities/containers.ts'
import { fillBoxes } from '../../../src/core/quantities/fastenerBoxes.ts'
import {
  listShopping,
  type ShoppingList,
  type Sold,
  type Wanted,
} from '../../../src/core/quantities/shoppingList.ts'
import { itemKey } from '../../../src/core/quantities/shoppingPrices.ts'

const sold = (item: string, holds: number, price?: number): Sold => ({ item, holds, price })

const sheets = (amount: number, price?: number): Wanted => ({
  thing: 'ply 4x8',
  amount,
  by: 'piece',
  sold: [sold('ply 4x8', 1, price)],
  spared: true,
})
const brads = (amount: number, ...prices: readonly (number | undefined)[]): Wanted => ({
  thing: 'brads',
  amount,
  by: 'box',
  sold: [sold('brads box of 100', 100, prices[0]), sold('brads box of 500', 500, prices[1])],
  spared: false,
})
const paint = (amount: number, ...prices: readonly (number | undefined)[]): Wanted => ({
  thing: 'paint',
  amount,
  by: 'volume',
  sold: [
    sold('paint 500 mL', 500, prices[0]),
    sold('paint 1 L', 1000, prices[1]),
    sold('paint 5 L', 5000, prices[2]),
  ],
  spared: false,
})

const hand = (things: Readonly<Record<string, number>> = {}): ReadonlyMap<string, number> =>
  new Map(Object.entries(things).map(([item, count]) => [itemKey(item), count]))

const rows = ({ items }: ShoppingList) => items.map(({ item, need, have, buy }) => [item, need, have, buy])

describe('listShopping', () => {
  it('adds up in whole cents, with what is bought over apart', () => {
    const list = listShopping([sheets(3, 3999), brads(120, 799, 2999), paint(1200, 1550, 2225)], hand(), 0.1)
    expect(rows(list)).toEqual([
      ['ply 4x8', 3, 0, 3],
      ['brads box of 100', 2, 0, 2],
      ['paint 500 mL', 1, 0, 1],
      ['paint 1 L', 1, 0, 1],
    ])
    expect(list).toMatchObject({ cost: 3 * 3999 + 2 * 799 + 1550 + 2225, spareCost: 3999, missing: [] })
  })

  it('uses what is on hand first, whole or begun, the largest first', () => {
    const list = listShopping(
      [sheets(3, 4000), brads(120, 800, 3000), paint(1200, 1500, 2000)],
      hand({ 'ply 4x8': 2, brads: 30, 'paint 1 L': 1 }),
      0,
    )
    expect(rows(list)).toEqual([
      ['ply 4x8', 3, 2, 1],
      ['brads box of 100', 1, 0, 1],
      ['brads', 30, 30, 0],
      ['paint 500 mL', 1, 0, 1],
      ['paint 1 L', 1, 1, 0],
    ])
    expect(list.cost).toBe(4000 + 800 + 1500)
  })

  it('buys nothing, and spares nothing, where all of it is on hand, and uses no more than it takes', () => {
    const list = listShopping(
      [sheets(2, 4000), brads(50, 800)],
      hand({ 'ply 4x8': 9, 'brads box of 100': 9 }),
      0.5,
    )
    expect(rows(list)).toEqual([
      ['ply 4x8', 2, 2, 0],
      ['brads box of 100', 1, 1, 0],
    ])
    expect(list).toMatchObject({ cost: 0, spareCost: 0, missing: [] })
  })

  it('lists what has no price and says so, and buys it as the trade does', () => {
    const list = listShopping([sheets(2), brads(120), paint(1200), sheets(0)], hand(), 0)
    expect(list.missing).toEqual(
      ['ply 4x8', 'brads box of 500', 'paint 1 L', 'paint 500 mL'].sort(byPlace(list)),
    )
    expect(list.cost).toBe(0)
    const boxes = fillBoxes(120, [100, 500], 0).boxes
    expect(rows(list)).toContainEqual([`brads box of ${boxes[0]?.size}`, boxes[0]?.count, 0, boxes[0]?.count])
    const cans = fillContainers(
      1200,
      [500, 1000, 5000].map((volume) => ({ region: 'UK', name: `${volume}`, volume })),
    )
    expect(cans.map(({ count }) => count)).toEqual([1, 1])
  })

  it('leaves sizes without a price alone where another has one', () => {
    expect(rows(listShopping([brads(120, 800)], hand(), 0))).toEqual([['brads box of 100', 2, 0, 2]])
    expect(listShopping([paint(1200, undefined, 2000)], hand(), 0).missing).toEqual([])
  })

  it('counts what the channel has taken from its own stock as on hand', () => {
    expect(rows(listShopping([{ ...sheets(2), taken: 2 }], hand(), 0.1))).toEqual([['ply 4x8', 2, 2, 0]])
  })

  it('never costs more with more on hand, and needs the same', () => {
    const wanted = fc.record({
      sheets: fc.integer({ min: 0, max: 9 }),
      brads: fc.integer({ min: 0, max: 2000 }),
      paint: fc.integer({ min: 0, max: 9000 }),
      prices: fc.array(fc.integer({ min: 0, max: 9999 }), { minLength: 6, maxLength: 6 }),
    })
    const names = [
      'ply 4x8',
      'brads',
      'brads box of 100',
      'brads box of 500',
      'paint 500 mL',
      'paint 1 L',
      'paint 5 L',
    ]
    const things = fc.array(fc.integer({ min: 0, max: 4 }), {
      minLength: names.length,
      maxLength: names.length,
    })
    fc.assert(
      fc.property(
        wanted,
        things,
        fc.nat(names.length - 1),
        fc.integer({ min: 1, max: 3 }),
        (want, there, more, by) => {
          const [a, b, c, d, e, f] = want.prices
          const all = [sheets(want.sheets, a), brads(want.brads, b, c), paint(want.paint, d, e, f)]
          const onHand = (extra: number) =>
            hand(
              Object.fromEntries(
                names.map((name, at) => [name, (there[at] ?? 0) + (at === more ? extra : 0)]),
              ),
            )
          const before = listShopping(all, onHand(0), 0.1)
          const after = listShopping(all, onHand(by), 0.1)
          expect(after.cost).toBeLessThanOrEqual(before.cost)
          expect(after.spareCost).toBeLessThanOrEqual(before.spareCost)
          for (const { need, have, buy } of after.items) expect(need).toBe(have + buy)
          const sum = after.items.reduce((total, { buy, price = 0 }) => total + buy * price, 0)
          expect(after.cost).toBe(sum)
        },
      ),
    )
  })
})

const byPlace =
  ({ items }: ShoppingList) =>
  (one: string, other: string): number =>
    items.findIndex(({ item }) => item === one) - items.findIndex(({ item }) => item === other)
