import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type FinishNeed, type FinishRequest, finishNeeded } from '../../../src/core/quantities/finish.ts'
import type { ContainerCount } from '../../../src/core/quantities/containers.ts'
import { CANS, covering, GALLON, SQUARE_FOOT } from './products.ts'

const METRE = 1_000_000

function need(change: Partial<FinishRequest>): FinishNeed {
  const product = covering(400)
  const outcome = finishNeeded({
    area: 0,
    product,
    surface: 'smooth',
    region: 'US',
    containers: CANS,
    ...change,
  })
  if (outcome.status !== 'needed') throw new Error(outcome.reason)
  return outcome
}

const cans = (containers: readonly ContainerCount[]): string =>
  containers.map(({ count, name }) => `${count} ${name}`).join(' + ')

describe('published finish quantities, no waste added', () => {
  // A paint estimating guide: a room of 10 x 15 x 9 ft less a door of 20 and a window of 15 ft2, 350 ft2 to the gallon,
  // "1.2 gallons: 1 gallon and 1 quart"; its ceiling of 150 ft2, ".43: 2 quarts". A fence guide: 1000 ft2 at 200.
  it.each([
    ['walls of 415 ft2 at 350', 2 * (10 + 15) * 9 - 20 - 15, 350, 1.2, '1 gallon + 1 quart'],
    ['ceiling of 150 ft2 at 350', 10 * 15, 350, 0.43, '2 quart'],
    ['fence of 1000 ft2 at 200', 1000, 200, 5, '1 5-gallon pail'],
    ['wall of 50 x 10 ft at 500', 50 * 10, 500, 1, '1 gallon'],
  ])('%s', (_, feet, rate, gallons, containers) => {
    const needed = need({ area: feet * SQUARE_FOOT, product: covering(rate) })
    expect(Math.abs(needed.volume / GALLON - gallons)).toBeLessThan(0.015)
    expect(cans(needed.containers)).toBe(containers)
  })

  // UK answers on paint cans: 2.5 L is 30 m2 of gloss or 32 m2 of eggshell, 5 L is 60 m2 of flat.
  it.each([
    ['gloss', 30, 12, 2500, '1 2.5 L'],
    ['eggshell', 32, 12.8, 2500, '1 2.5 L'],
    ['flat', 60, 12, 5000, '1 5 L'],
  ])('%s, UK', (_, metres, rate, volume, containers) => {
    const product = { ...covering(1), smooth: { low: rate, high: rate } }
    const needed = need({ area: metres * METRE, product, region: 'UK' })
    expect(needed.volume).toBeCloseTo(volume, 6)
    expect(cans(needed.containers)).toBe(containers)
  })
})

describe('finishNeeded', () => {
  it('buys by the low end of the coverage, with the waste added, and says both', () => {
    const product = { ...covering(300, 400), waste: { smooth: 0.1, rough: 0.25 }, coats: 2 }
    const needed = need({ area: 150 * SQUARE_FOOT, product })
    expect(needed).toMatchObject({ coats: 2, waste: 0.1, coverage: product.smooth.low })
    expect(needed.perCoat).toBeCloseTo(GALLON / 2, 6)
    expect(needed.volume).toBeCloseTo(GALLON * 1.1, 6)
  })

  it('takes the rough coverage and waste for rough wood', () => {
    const product = { ...covering(400), rough: { low: 5, high: 6 }, waste: { smooth: 0.1, rough: 0.25 } }
    expect(need({ area: 10 * METRE, product, surface: 'rough' })).toMatchObject({ coverage: 5, volume: 2500 })
  })

  it('does not guess where no source covers rough wood', () => {
    const request = { area: METRE, surface: 'rough', region: 'US', containers: CANS } as const
    expect(finishNeeded({ ...request, product: covering(400) })).toEqual({
      status: 'unknown',
      reason: 'no source says how far test paint goes on rough wood',
    })
  })

  it('needs nothing for no area and for no coats', () => {
    expect(need({ area: 0 })).toMatchObject({ volume: 0, containers: [] })
    expect(need({ area: METRE, coats: 0 })).toMatchObject({ volume: 0, containers: [] })
  })

  it.each([
    ['area', { area: -1 }],
    ['area', { area: Number.NaN }],
    ['coats', { coats: Number.POSITIVE_INFINITY }],
  ])('refuses an impossible %s', (name, change) => {
    expect(() => need(change)).toThrow(new RegExp(`^${name} must be a finite number`))
  })

  it('scales with area and coats, and buys at least the volume', () => {
    const area = fc.double({ min: 0.1, max: 80, noNaN: true })
    fc.assert(
      fc.property(area, fc.integer({ min: 1, max: 5 }), (metres, coats) => {
        const once = need({ area: metres * METRE, coats: 1 })
        const needed = need({ area: metres * METRE, coats })
        expect(needed.volume).toBeCloseTo(once.volume * coats, 6)
        expect(need({ area: 2 * metres * METRE, coats }).volume).toBeCloseTo(2 * needed.volume, 6)
        const bought = needed.containers.reduce((sum, { millilitres, count }) => sum + millilitres * count, 0)
        expect(bought).toBeGreaterThan(needed.volume - 0.02)
      }),
    )
  })

  it('leaves what it is given alone', () => {
    const containers = Object.freeze([...CANS].map((can) => Object.freeze(can)))
    expect(need({ area: METRE, containers }).containers).toHaveLength(1)
  })
})
