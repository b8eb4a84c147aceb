import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { celsius, fahrenheit } from '../../../src/core/moisture/equilibrium.ts'
import { ABOVE_DEW, dewPoint } from '../../../src/core/quantities/dryingDewPoint.ts'

const inFahrenheit = (air: number, humidity: number): number => fahrenheit(dewPoint(celsius(air), humidity))

describe('dewPoint', () => {
  // A dew point calculation chart for coatings, in whole degrees Fahrenheit, cut down to whole ones and up to two lower in dry air.
  it.each([
    [90, [47, 57, 67, 77, 87]],
    [80, [44, 54, 63, 73, 82]],
    [70, [40, 50, 60, 68, 78]],
    [65, [38, 47, 57, 66, 76]],
    [60, [36, 45, 55, 64, 73]],
    [50, [31, 40, 50, 59, 67]],
    [40, [26, 35, 43, 52, 61]],
    [30, [20, 28, 36, 44, 52]],
  ])('%s %% humidity at 50 to 90 F', (humidity, printed) => {
    for (const [index, dew] of printed.entries()) {
      const over = inFahrenheit(50 + 10 * index, humidity) - dew
      expect(over).toBeGreaterThan(-1.3)
      expect(over).toBeLessThan(2.5)
    }
  })

  it.each([
    // A paint maker's page on the dew point, a manual on conditions for coating, a physics answer by the same formula.
    ['75 F, 35 %: 45 F', celsius(75), 35, celsius(45), 0.5],
    ['16 C, 71 %: 11 C', 16, 71, 11, 0.5],
    ['22 C, 78 %: 17.98 C', 22, 78, 17.98, 0.05],
  ])('%s', (_, air, humidity, dew, rounding) => {
    expect(Math.abs(dewPoint(air, humidity) - dew)).toBeLessThan(rounding)
  })

  // The chart's own example: at 70 F and 65 % the dew point is 57 F, and no coat goes on anything under 62 F.
  it('the example printed beneath it', () => {
    expect(Math.floor(inFahrenheit(70, 65))).toBe(57)
    expect(Math.floor(fahrenheit(dewPoint(celsius(70), 65) + ABOVE_DEW))).toBe(62)
  })

  it('is the air itself when that is full, and lower the drier it is', () => {
    fc.assert(
      fc.property(fc.integer({ min: -20, max: 45 }), fc.integer({ min: 2, max: 100 }), (air, humidity) => {
        expect(dewPoint(air, 100)).toBeCloseTo(air, 9)
        expect(dewPoint(air, humidity - 1)).toBeLessThan(dewPoint(air, humidity))
        expect(dewPoint(air, humidity)).toBeLessThanOrEqual(air + 1e-9)
      }),
    )
  })

  it.each([0, -1, 101, Number.NaN])('throws for %s %%', (humidity) => {
    expect(() => dewPoint(20, humidity)).toThrow('humidity must be above 0')
  })
})
