import { describe, expect, it } from 'vitest'
import { pricesFile } from '../../src/config/prices.ts'
import { itemKey, itemName } from '../../src/core/quantities/shoppingPrices.ts'
import { REGIONS } from '../../src/core/stock/stock.ts'
import { config } from '../room.ts'
import { edited, problemsWith, textOf } from './folder.ts'

const priced = (region: string, name: string): number | undefined =>
  config.prices.find((list) => list.region === region)?.prices.get(itemKey(name))

describe('the example prices', () => {
  it('name themselves examples, with a year, in every region’s money', () => {
    expect(config.prices.map(({ region }) => region).sort()).toEqual([...REGIONS].sort())
    expect(textOf('prices.yaml')).toMatch(/^# Example prices/u)
    for (const { asOf, currency } of config.prices) {
      expect(asOf).toMatch(/^20\d\d$/u)
      expect(currency).toMatch(/^(?:[$£€]|[A-Z]{3})$/u)
    }
    expect(config.spare).toBe(0.1)
  })

  it('have one for every can and bottle, every box and every grit that a list can hold', () => {
    for (const region of REGIONS) {
      const here = <Row extends { readonly region: string }>(rows: readonly Row[]) =>
        rows.filter((row) => row.region === region)
      const names = [
        ...config.finishes.flatMap(({ name }) =>
          here(config.containers).map((can) => itemName(name, can.name)),
        ),
        ...config.glue.adhesives.flatMap(({ name }) =>
          here(config.glue.bottles).map((can) => itemName(name, can.name)),
        ),
        ...here(config.fasteners.sizes).flatMap(({ name, kind, boxes }) =>
          boxes.map((box) => `${name} ${kind}s box of ${box}`),
        ),
        ...[...config.sanding.grits, config.sanding.betweenGrit].map((grit) => `${grit} grit sandpaper`),
        'corner bracket',
      ]
      expect(names.filter((name) => priced(region, name) === undefined)).toEqual([])
    }
  })

  it('ask no more for a smaller can than for a larger one of the same', () => {
    for (const region of REGIONS)
      for (const { name } of config.finishes) {
        const cans = config.containers
          .filter((can) => can.region === region)
          .toSorted((a, b) => a.volume - b.volume)
        const prices = cans.map((can) => priced(region, itemName(name, can.name)) ?? Number.NaN)
        expect(prices).toEqual([...prices].sort((a, b) => a - b))
      }
  })

  it('are whole cents', () => {
    for (const { prices } of config.prices)
      for (const cents of prices.values()) expect(Number.isInteger(cents) && cents > 0).toBe(true)
  })
})

describe('a mistake in prices.yaml', () => {
  it.each([
    [
      'latex paint: { half-pint: 8.00,',
      'latex paint: { half-pint: 8.001,',
      'an amount of whole cents such as 18.5 or 42',
    ],
    ['latex paint: { half-pint: 8.00,', 'latex paint: { half-pint: -8,', 'at least 0'],
    ['latex paint: { half-pint: 8.00,', 'latex paint: { half-pint: dear,', 'expected a number, read "dear"'],
    ['currency: $', 'currency: dollars', 'a sign or a code such as $'],
    ['  part: 0.1', '  part: 10', 'a part of one'],
    ['regions: [AU]', 'regions: [US]', 'one list for US'],
    ['1x2: { 6 ft: 1.76,', '1x2: { 6ft: 1.50, 6 ft: 1.76,', 'a name that nothing else in the list has'],
  ])('%s written as %s is told', (from, to, told) => {
    const problems = problemsWith({ 'prices.yaml': edited('prices.yaml', from, to) })
    expect(problems.join('\n')).toContain(told)
    expect(problems[0]).toMatch(/^prices\.yaml line \d+: /u)
  })

  it('reads a list with one price', () => {
    const list = {
      regions: ['UK'],
      currency: '£',
      asOf: '2030',
      source: 'a shop',
      items: { nails: { '1 kg': 3.5 } },
    }
    const { prices, spare } = pricesFile.parse({ spare: { source: 'a rule', part: '1/4' }, lists: [list] })
    expect(spare).toBe(0.25)
    expect([...(prices[0]?.prices ?? [])]).toEqual([[itemKey('nails 1 kg'), 350]])
  })
})
