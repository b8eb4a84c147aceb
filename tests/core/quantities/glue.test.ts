import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readConfig } from '../../../src/config.ts'
import { inches, type Length, toMillimetres } from '../../../src/core/measure/length.ts'
import { celsius } from '../../../src/core/moisture/equilibrium.ts'
import { gluedArea, glueNeeded } from '../../../src/core/quantities/glue.ts'
import { planClamps } from '../../../src/core/quantities/glueClamps.ts'
import { findAdhesive } from '../../../src/core/quantities/glueProduct.ts'
import { glueTimes } from '../../../src/core/quantities/glueTimes.ts'
import { CONFIG } from '../../config/folder.ts'

const { glue } = readConfig(CONFIG)
const yellow = findAdhesive('yellow glue', glue.adhesives)!
const white = findAdhesive('white glue', glue.adhesives)!
/** mm2 in a square foot, mL in a US gallon. */
const [SQUARE_FOOT, GALLON] = [92_903.04, 3785.411784]

describe('glueNeeded', () => {
  it('spreads 200 ft2 a gallon (general article on how much glue), and a tenth for waste', () => {
    const need = glueNeeded(200 * SQUARE_FOOT, yellow, 'US', glue)
    expect(need.volume).toBeCloseTo(1.1 * GALLON, 6)
    expect(need.bottles.map(({ name, count }) => [name, count])).toEqual([
      ['gallon', 1],
      ['16 oz', 1],
    ])
  })

  it('lies within a film of 5 to 8 mil, as 6 mil wet is 267 ft2 a gallon', () => {
    const { film } = glueNeeded(SQUARE_FOOT, yellow, 'US', glue)
    expect(film / 25.4).toBeCloseTo(1604.17 / 200, 2)
    // 6 mil: 1604.17 / 6 ft2 a gallon is within what is read in the source.
    expect(1604.17 / 6).toBeGreaterThan(200)
    expect(1604.17 / 6).toBeLessThan(300)
  })

  it('is sold in bottles of 4 oz to a gallon, or 150 to 800 mL (general article; maker’s data sheet)', () => {
    const sizes = (region: 'US' | 'UK') =>
      glue.bottles.filter((bottle) => bottle.region === region).map(({ volume }) => Math.round(volume))
    expect(sizes('US')).toEqual([118, 237, 473, 946, 3785])
    expect(sizes('UK')).toEqual([150, 400, 800, 5000])
    expect(glueNeeded(0, yellow, 'UK', glue)).toMatchObject({ volume: 0, bottles: [] })
    expect(() => glueNeeded(-1, yellow, 'UK', glue)).toThrow(RangeError)
  })

  it('takes more for more, and the bottles hold it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e7, noNaN: true }),
        fc.double({ min: 1, max: 1e6, noNaN: true }),
        (area, more) => {
          const [one, two] = [
            glueNeeded(area, yellow, 'EU', glue),
            glueNeeded(area + more, yellow, 'EU', glue),
          ]
          expect(two.volume).toBeGreaterThan(one.volume)
          const held = two.bottles.reduce((sum, { millilitres, count }) => sum + millilitres * count, 0)
          expect(held).toBeGreaterThanOrEqual(two.volume - 0.011)
        },
      ),
    )
  })

  it('counts one face of every joint', () => {
    const joints = [
      { count: 4, length: inches(10), width: inches(1, 2) },
      { count: 2, length: inches(3), width: inches(1) },
    ]
    expect(gluedArea(joints)).toBeCloseTo(26 * 25.4 ** 2, 6)
  })
})

describe('glueTimes', () => {
  const at = (degrees: number) => glueTimes(yellow, celsius(degrees), glue.timing)

  // Woodworkers' rule for the clamps: 1 h at 70 F, double for every 15 F colder.
  it.each([
    [70, 1, 24],
    [55, 2, 48],
    [40, 4, 96],
    [85, 1, 24],
  ])('at %d F: %d h in the clamps, %d h to full strength', (degrees, clamp, full) => {
    const times = at(degrees)
    if (times.status !== 'timed') throw new Error(times.status)
    expect(times.clamp).toBeCloseTo(clamp, 9)
    expect(times.full).toBeCloseTo(full, 9)
  })

  it('stops yellow glue under 40 F and white under 55 F (article on glue and temperature)', () => {
    expect(at(39.9)).toEqual({ status: 'too cold', lowest: celsius(40) })
    expect(at(40.1).status).toBe('timed')
    expect(glueTimes(white, celsius(54), glue.timing)).toMatchObject({ status: 'too cold' })
    expect(glueTimes(white, celsius(56), glue.timing)).toMatchObject({ open: { low: 5 / 60, high: 0.5 } })
    expect(() => at(Number.NaN)).toThrow(RangeError)
  })

  it('is never quicker in a colder shop', () => {
    const degrees = fc.double({ min: 40, max: 110, noNaN: true })
    fc.assert(
      fc.property(degrees, degrees, (a, b) => {
        const [cold, warm] = [at(Math.min(a, b)), at(Math.max(a, b))]
        if (cold.status !== 'timed' || warm.status !== 'timed') return
        expect(cold.clamp).toBeGreaterThanOrEqual(warm.clamp)
        expect(cold.full).toBeGreaterThanOrEqual(warm.full)
      }),
    )
  })
})

describe('planClamps', () => {
  const plan = (length: Length) => planClamps(length, inches(1), 'soft', glue.clamping)

  it('squeezes softwood with 100 to 150 psi, hardwood with 200 to 300 (maker’s gluing guide)', () => {
    expect(plan(inches(30)).pressure.low / 6894.757).toBeCloseTo(100, 3)
    expect(plan(inches(30)).pressure.high / 6894.757).toBeCloseTo(150, 3)
    const hard = planClamps(inches(30), inches(1), 'hard', glue.clamping)
    expect(hard.pressure.high / 6894.757).toBeCloseTo(300, 3)
    // 30 square inches at 100 psi are 3000 lb, over 4 clamps.
    expect(plan(inches(30)).count).toEqual({ low: 4, high: 5 })
    expect(plan(inches(30)).force.low / 4.4482216).toBeCloseTo(750, 1)
  })

  it('stands 8 to 12 in apart and 2 in from the ends at most, and needs no fewer for a longer joint', () => {
    const size = fc.integer({ min: 1_000_000, max: 3_000_000_000 }).map((count) => count as Length)
    fc.assert(
      fc.property(size, size, (a, b) => {
        const { count } = plan(a)
        expect(count.low).toBeLessThanOrEqual(count.high)
        const between = toMillimetres(a) - 2 * 50.8
        if (count.low > 1) expect(between / (count.low - 1)).toBeLessThanOrEqual(304.8)
        expect(plan(Math.max(a, b) as Length).count.low).toBeGreaterThanOrEqual(
          plan(Math.min(a, b) as Length).count.low,
        )
      }),
    )
    expect(() => plan(inches(0))).toThrow(RangeError)
  })
})
