import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { containersFor, fillContainers } from '../../../src/core/quantities/containers.ts'
import type { Container } from '../../../src/core/quantities/product.ts'
import { CANS, GALLON } from './products.ts'

const QUART = GALLON / 4
const US = CANS.filter(({ region }) => region === 'US')
/** Without pints, as the guide has it. */
const WHOLE = US.filter(({ name }) => !name.endsWith('pint'))
const UK = CANS.filter(({ region }) => region === 'UK')

describe('containersFor', () => {
  it('takes one can for what is needed at all, and none for nothing', () => {
    expect(containersFor(1e-6, US)).toMatchObject([{ name: 'half-pint', count: 1 }])
    expect(containersFor(0, US)).toEqual([])
    expect(containersFor(3 * GALLON, US)).toEqual(fillContainers(3 * GALLON, US))
  })
})

const filled = (volume: number, sold: readonly Container[]): string =>
  fillContainers(volume, sold)
    .map(({ count, name }) => `${count} ${name}`)
    .join(' + ')

describe('fillContainers', () => {
  // Paint estimating guide: under half a gallon over, buy one or two quarts; more than that, the next gallon.
  it.each([
    [0.9, '1 quart'],
    [2, '2 quart'],
    [2.1, '1 gallon'],
    [3, '1 gallon'],
    [4, '1 gallon'],
    [4.9, '1 gallon + 1 quart'],
    [6, '1 gallon + 2 quart'],
    [6.1, '2 gallon'],
    [12, '3 gallon'],
    [19, '1 5-gallon pail'],
    [20.9, '1 5-gallon pail + 1 quart'],
  ])('%s quarts: %s', (quarts, cans) => {
    expect(filled(quarts * QUART, WHOLE)).toBe(cans)
  })

  it.each([
    [200, '1 750 mL'],
    [1500, '2 750 mL'],
    [1600, '1 2.5 L'],
    [3000, '1 2.5 L + 1 750 mL'],
    [4000, '1 5 L'],
    [10_000, '2 5 L'],
  ])('%s mL: %s', (volume, cans) => {
    expect(filled(volume, UK)).toBe(cans)
  })

  it.each([
    [0.2, '1 half-pint'],
    [0.4, '1 pint'],
    [1.4, '1 quart + 1 pint'],
    [1.2, '1 quart + 1 half-pint'],
  ])('%s quarts where pints are sold: %s', (quarts, cans) => {
    expect(filled(quarts * QUART, US)).toBe(cans)
  })

  it('buys large cans for a hall', () => {
    expect(filled(1_000_000_000, UK)).toBe('200000 5 L')
  })

  it('does not buy a can for the rounding of the arithmetic', () => {
    expect(filled((GALLON * (0.1 + 0.2)) / 0.3, US)).toBe('1 gallon')
    expect(filled(1e-9, US)).toBe('')
  })

  it('throws without cans, but needs none for nothing', () => {
    expect(() => fillContainers(1, [])).toThrow('no containers to fill')
    expect(fillContainers(0, [])).toEqual([])
  })

  it('agrees with trying every choice', () => {
    const sizes = fc.uniqueArray(fc.integer({ min: 100, max: 3000 }), { minLength: 1, maxLength: 3 })
    fc.assert(
      fc.property(sizes, fc.integer({ min: 1, max: 6000 }), (volumes, need) => {
        const sold = volumes.map((volume): Container => ({ region: 'UK', name: `${volume}`, volume }))
        const chosen = fillContainers(need, sold)
        const held = chosen.reduce((sum, { count, millilitres }) => sum + count * millilitres, 0)
        const number = chosen.reduce((sum, { count }) => sum + count, 0)
        expect(held).toBeGreaterThanOrEqual(need)
        expect(worth(held - need, number)).toBeCloseTo(leastWorth(need, volumes, 0), 1)
      }),
    )
  })

  it('does not depend on the order of the cans', () => {
    fc.assert(
      fc.property(
        fc.shuffledSubarray([...US], { minLength: 5 }),
        fc.integer({ min: 1, max: 40_000 }),
        (sold, volume) => {
          expect(fillContainers(volume, sold)).toEqual(fillContainers(volume, US))
        },
      ),
    )
  })
})

describe('fillContainers where prices are known', () => {
  const priced = (prices: Readonly<Record<string, number>>): readonly Container[] =>
    US.map((can) => ({ ...can, price: prices[can.name] }))
  const usual = { 'half-pint': 800, pint: 1300, quart: 2000, gallon: 4500, '5-gallon pail': 19_000 }

  it.each([
    [1.17, '1 quart + 1 half-pint'],
    [1.3, '1 quart + 1 pint'],
    [2.2, '1 gallon'],
    [4.1, '1 gallon + 1 half-pint'],
    [16.1, '4 gallon + 1 half-pint'],
    [17, '1 5-gallon pail'],
  ])('%s quarts: %s costs least', (quarts, cans) => {
    expect(filled(quarts * QUART, priced(usual))).toBe(cans)
  })

  it('takes the larger can where it costs the same, and the fewer where as much is left', () => {
    expect(filled(QUART, priced({ ...usual, quart: 2000, gallon: 2000 }))).toBe('1 quart')
    expect(filled(1.5 * QUART, priced({ ...usual, pint: 1000, quart: 2000 }))).toBe('1 quart + 1 pint')
    expect(filled(2 * QUART, priced({ ...usual, pint: 1000, quart: 2000, gallon: 9000 }))).toBe('2 quart')
  })

  it('leaves alone what has no price, as long as something has', () => {
    expect(filled(QUART, priced({ gallon: 4500 }))).toBe('1 gallon')
    expect(filled(QUART, priced({}))).toBe('1 quart')
  })

  it('agrees with trying every choice: least money, then least left over, then fewest cans', () => {
    const can = fc.record({
      volume: fc.integer({ min: 100, max: 3000 }),
      price: fc.integer({ min: 0, max: 5000 }),
    })
    const cans = fc.uniqueArray(can, { minLength: 1, maxLength: 4, selector: ({ volume }) => volume })
    fc.assert(
      fc.property(cans, fc.integer({ min: 1, max: 4000 }), (sizes, need) => {
        const sold = sizes.map((each): Container => ({ region: 'UK', name: `${each.volume}`, ...each }))
        const chosen = fillContainers(need, sold)
        const sum = (of: (each: (typeof chosen)[number]) => number) =>
          chosen.reduce((total, each) => total + each.count * of(each), 0)
        const found = [
          sum(({ price = 0 }) => price),
          sum(({ millilitres }) => millilitres) - need,
          sum(() => 1),
        ]
        // Nothing left over may come out as -0, which is no other number.
        expect(found).toEqual(leastMoney(need, sizes, [0, 0, 0]).map((each) => each + 0))
      }),
    )
  })

  it('costs no less for more', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60_000 }),
        fc.integer({ min: 0, max: 20_000 }),
        (volume, more) => {
          const cost = (of: number) =>
            fillContainers(of, priced(usual)).reduce((sum, { count, price = 0 }) => sum + count * price, 0)
          expect(cost(volume + more)).toBeGreaterThanOrEqual(cost(volume))
        },
      ),
    )
  })
})

type Outcome = readonly [cents: number, left: number, cans: number]

/** The best of every choice of cans, each tried in turn until the volume is held. */
function leastMoney(
  need: number,
  sizes: readonly { readonly volume: number; readonly price: number }[],
  [cents, , cans]: Outcome,
): Outcome {
  if (need <= 0) return [cents, -need, cans]
  const [size, ...others] = sizes
  if (!size) return [Number.POSITIVE_INFINITY, 0, 0]
  const taken = leastMoney(need - size.volume, sizes, [cents + size.price, 0, cans + 1])
  const skipped = leastMoney(need, others, [cents, 0, cans])
  const order = taken
    .map((value, index) => value - (skipped[index] ?? 0))
    .find((difference) => difference !== 0)
  return (order ?? 0) < 0 ? taken : skipped
}

/** One can more may cost a quart left over. */
const worth = (left: number, cans: number): number => left + cans * QUART

/** The least worth over every choice of cans: each tried in turn until the volume is held. */
function leastWorth(need: number, volumes: readonly number[], cans: number): number {
  if (need <= 0) return worth(-need, cans)
  const [size, ...others] = volumes
  if (size === undefined) return Number.POSITIVE_INFINITY
  return Math.min(leastWorth(need - size, volumes, cans + 1), leastWorth(need, others, cans))
}
