import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { celsius, equilibriumMoisture, fahrenheit } from '../../../src/core/moisture/equilibrium.ts'
import { EQUILIBRIUM_TABLE, HUMIDITIES } from '../../data/equilibriumMoisture.ts'

const cells = EQUILIBRIUM_TABLE.flatMap(([degrees, moistures]) =>
  moistures.map((moisture, column) => [degrees, HUMIDITIES[column]!, moisture] as const),
)

describe('equilibriumMoisture', () => {
  it('has every cell of the table: 12 temperatures by 19 humidities', () => {
    expect(cells).toHaveLength(228)
  })

  // Wood Handbook (GTR-190), Table 4-2, printed to 0.1: 0.05 of it is the printing.
  it.each(cells)('%d F, %d %%: %d', (degrees, humidity, printed) => {
    expect(Math.abs(equilibriumMoisture(celsius(degrees), humidity) - printed)).toBeLessThanOrEqual(0.07)
  })

  // Woodworkers' rule of thumb, humidity to moisture at room temperature.
  it.each([
    [0, 0],
    [30, 6],
    [50, 9],
    [65, 12],
    [80, 16],
  ])('by rule of thumb %d %% makes %d %%', (humidity, moisture) => {
    expect(Math.abs(equilibriumMoisture(21, humidity) - moisture)).toBeLessThan(0.5)
  })

  // Shop chart in a moisture meter maker's guide, after E. Wengert: every humidity of a band makes the one moisture.
  it.each([
    [19, 25, 5],
    [26, 32, 6],
    [33, 39, 7],
    [40, 46, 8],
    [47, 52, 9],
  ])('from %d to %d %% it is about %d %%', (low, high, moisture) => {
    expect(Math.round(equilibriumMoisture(21, (low + high) / 2))).toBe(moisture)
    expect(Math.abs(equilibriumMoisture(21, low) - moisture)).toBeLessThan(0.75)
    expect(Math.abs(equilibriumMoisture(21, high) - moisture)).toBeLessThan(0.75)
  })

  it('is 0 in dry air, and more in damper and in colder air between freezing and a hot attic', () => {
    const temperature = fc.double({ min: 5, max: 60, noNaN: true })
    const humidity = fc.double({ min: 0, max: 99, noNaN: true })
    fc.assert(
      fc.property(
        temperature,
        humidity,
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (degrees, percent, step) => {
          const here = equilibriumMoisture(degrees, percent)
          expect(equilibriumMoisture(degrees, percent + step)).toBeGreaterThan(here)
          if (percent > 1) expect(equilibriumMoisture(degrees + 5, percent)).toBeLessThan(here)
        },
      ),
    )
    expect(equilibriumMoisture(20, 0)).toBe(0)
    expect(Number.isFinite(equilibriumMoisture(20, 100))).toBe(true)
  })

  it('refuses a humidity past 100 and no temperature', () => {
    expect(() => equilibriumMoisture(20, 101)).toThrow(RangeError)
    expect(() => equilibriumMoisture(20, -1)).toThrow(RangeError)
    expect(() => equilibriumMoisture(Number.NaN, 50)).toThrow(RangeError)
  })

  it('turns Fahrenheit and Celsius into each other', () => {
    expect([celsius(32), celsius(212), celsius(-40)]).toEqual([0, 100, -40])
    expect([fahrenheit(0), fahrenheit(100), fahrenheit(-40)]).toEqual([32, 212, -40])
  })
})
