import { describe, expect, it } from 'vitest'
import { inches, type Length, millimetres } from '../../../src/core/measure/length.ts'
import { showHours, showPercent, showTemperature } from '../../../src/core/measure/showAir.ts'
import { caliperMark, showCaliper } from '../../../src/core/measure/showCaliper.ts'

describe('what is shown of air and time', () => {
  it.each([
    [showTemperature(20, 'inch'), '68°F'],
    [showTemperature(20, 'metric'), '20°C'],
    [showPercent(8.4449), '8.4 %'],
    [showHours(0.5), '30 min'],
    [showHours(1.001), '61 min'],
    [showHours(2), '2 h'],
    [showHours(2.1), '2.5 h'],
    [showHours(48), '48 h'],
    [showHours(60), '2.5 days'],
  ])('%s', (shown, wanted) => {
    expect(shown).toBe(wanted)
  })
})

describe('showCaliper', () => {
  it.each([
    [showCaliper(inches(1, 32), 'inch'), '0.031 in'],
    [showCaliper(millimetres(0.794), 'metric'), '0.79 mm'],
    [caliperMark(inches(-1, 1000) as Length, 'inch'), '-0.001'],
    // Smaller than the last figure is nothing, not a row of zeros with a digit behind them.
    [caliperMark(millimetres(-0.004), 'metric'), '0'],
  ])('%s', (shown, wanted) => {
    expect(shown).toBe(wanted)
  })
})
