import { describe, expect, it } from 'vitest'
import { celsiusText, coverageText, hoursText, volumeText } from '../../src/config/rates.ts'

describe('coverageText against published coverages', () => {
  it.each([
    // Spreading-rate note: 65 % solids at 5 mil (127 um) dry is 208.52 ft2/gal; 650 / 127 um = 5.118 m2/L.
    ['208.52 ft2/gal', 650 / 127, 0.001],
    // Wet film formulae of a coatings institute: 10 mil (254 um) wet is 160.417 ft2/gal; 1000 / 254 m2/L.
    ['160.417 ft2/gal', 1000 / 254, 0.001],
    // Wood Handbook (GTR-190) ch. 16, oil stain on smooth wood: 200 ft2/gal is 4.9 m2/L, 400 is 9.8.
    ['200 ft2/gal', 4.9, 0.05],
    ['400 ft2/gal', 9.8, 0.05],
    // Question and answer on cans: 125 ft2 a quart is 500 a gallon.
    ['125 ft2/qt', 1000 / 81.48, 0.01],
    ['12 m2/L', 12, 1e-9],
  ])('%s in m2/L', (text, coverage, within) => {
    const { low, high } = coverageText.parse(text)
    expect(low).toBe(high)
    expect(Math.abs(low - coverage)).toBeLessThan(within)
  })

  it('keeps a range in order and refuses one that is not', () => {
    const range = coverageText.parse('125-150 ft2/qt')
    const perGallon = coverageText.parse('500-600 ft2/gal')
    expect(range.low).toBeCloseTo(perGallon.low, 12)
    expect(range.high).toBeCloseTo(perGallon.high, 12)
    for (const text of ['400-200 ft2/gal', '200', '200 ft2', '0 m2/L', '200-x ft2/gal', '1.2.3 m2/L'])
      expect(coverageText.safeParse(text).success).toBe(false)
  })
})

describe('hoursText, celsiusText, volumeText', () => {
  it('read times in hours', () => {
    expect(hoursText.parse('30 min')).toEqual({ low: 0.5, high: 0.5 })
    expect(hoursText.parse('6-24 h')).toEqual({ low: 6, high: 24 })
    expect(hoursText.parse('30 d')).toEqual({ low: 720, high: 720 })
    expect(hoursText.safeParse('6 weeks').success).toBe(false)
  })

  it('read temperatures', () => {
    expect(celsiusText.parse('10-32 C')).toEqual({ low: 10, high: 32 })
    expect(celsiusText.parse('-5-30 C')).toEqual({ low: -5, high: 30 })
    expect(celsiusText.safeParse('50-90 F').success).toBe(false)
  })

  it('read cans in mL: a half-pint 236.6, a quart 946.4, 5 gal 18.9 L (oil polyurethane data sheet)', () => {
    expect(volumeText.parse('0.5 pt')).toBeCloseTo(236.6, 1)
    expect(volumeText.parse('1 qt')).toBeCloseTo(946.4, 1)
    expect(volumeText.parse('5 gal') / 1000).toBeCloseTo(18.9, 1)
    expect(volumeText.parse('2.5 L')).toBe(2500)
    expect(volumeText.safeParse('1-2 L').success).toBe(false)
  })
})
