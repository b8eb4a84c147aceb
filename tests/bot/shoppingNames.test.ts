import { describe, expect, it } from 'vitest'
import {
  boxOf,
  fastenerGauge,
  fastenerThing,
  gritThing,
  namedSize,
  sheetThing,
  stockThing,
} from '../../src/bot/shoppingNames.ts'
import { inches, millimetres } from '../../src/core/measure/length.ts'
import { itemKey, itemName } from '../../src/core/quantities/shoppingPrices.ts'
import { REGIONS } from '../../src/core/stock/stock.ts'
import { config } from '../room.ts'

describe('names on a shopping list', () => {
  it.each([
    [inches(1, 2), '1/2 in'],
    [inches(23, 32), '23/32 in'],
    [inches(5, 2), '2 1/2 in'],
    [millimetres(12), '12 mm'],
    [millimetres(6.5), '6.5 mm'],
  ])('%s is %s, whoever asks', (length, name) => {
    expect(namedSize(length)).toBe(name)
  })

  it('of the channel’s own stock begin with its label', () => {
    expect(stockThing({ label: 'S1', name: 'plywood 4ft x 8ft' })).toBe('S1 plywood 4ft x 8ft')
    expect(stockThing({ label: 'S1' })).toBe('S1')
  })

  it.each(REGIONS)('in %s stay apart, in whatever order their words are typed', (region) => {
    const here = <Row extends { readonly region: string }>(rows: readonly Row[]) =>
      rows.filter((row) => row.region === region)
    const { labels, sizes, boards, lengths } = config.stock
    const names = new Set([
      ...here(labels).flatMap((label) => here(sizes).map(({ name }) => itemName(sheetThing(label), name))),
      ...here(boards).flatMap(({ name }) => here(lengths).map((length) => itemName(name, length.name))),
      ...here(config.fasteners.sizes).flatMap((size) => [
        fastenerThing(size),
        ...size.boxes.flatMap((box) =>
          [fastenerThing(size), fastenerGauge(size)].map((each) => itemName(each, boxOf(box))),
        ),
      ]),
      ...config.finishes.flatMap(({ name }) =>
        here(config.containers).map((can) => itemName(name, can.name)),
      ),
      ...config.glue.adhesives.flatMap(({ name }) =>
        here(config.glue.bottles).map((can) => itemName(name, can.name)),
      ),
      ...config.sanding.grits.map(gritThing),
    ])
    expect(names.size).toBeGreaterThan(300)
    const seen = new Map<string, string>()
    for (const name of names) {
      expect([name, seen.get(itemKey(name))]).toEqual([name, undefined])
      seen.set(itemKey(name), name)
    }
  })
})
