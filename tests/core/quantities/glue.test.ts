import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches } from '../../../src/core/measure/length.ts'
import { gluedArea, glueNeeded } from '../../../src/core/quantities/glue.ts'
import { adhesive, glue } from './shippedGlue.ts'

const yellow = adhesive('yellow glue')
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
