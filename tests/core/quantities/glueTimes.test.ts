import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { celsius } from '../../../src/core/moisture/equilibrium.ts'
import { glueTimes } from '../../../src/core/quantities/glueTimes.ts'
import { adhesive, glue } from './shippedGlue.ts'

const [yellow, white] = [adhesive('yellow glue'), adhesive('white glue')]

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
