import { describe, expect, it } from 'vitest'
import { inches } from '../../../src/core/measure/length.ts'
import {
  floorLoad,
  POUND_PER_SQUARE_FOOT,
  soilWeight,
  USUAL_DECK,
} from '../../../src/core/quantities/floorLoad.ts'

describe('soilWeight', () => {
  it('2 ft3 of wet soil: 150 to 200 lb (gardeners’ figures for planters on decks)', () => {
    const { low, high } = soilWeight(inches(24), inches(12), inches(12), 'garden')
    expect(low / 453.59237).toBeCloseTo(150, 6)
    expect(high / 453.59237).toBeCloseTo(200, 6)
  })

  it('1 ft3 of light mix: 40 to 60 lb', () => {
    const { low, high } = soilWeight(inches(12), inches(12), inches(12), 'light')
    expect([low / 453.59237, high / 453.59237].map(Math.round)).toEqual([40, 60])
  })
})

describe('floorLoad', () => {
  it('1 lb/ft2 is 4.8824 kg/m2 (conversion table of the Residential Structural Design Guide)', () => {
    expect(POUND_PER_SQUARE_FOOT).toBeCloseTo(4.8824, 4)
    expect(floorLoad(453.59237, inches(12), inches(12))).toBeCloseTo(4.8824, 4)
  })

  it('a foot of wet soil is more than a deck of 60 lb/ft2 carries', () => {
    const { low } = soilWeight(inches(48), inches(12), inches(12), 'garden')
    expect(floorLoad(low, inches(48), inches(12))).toBeGreaterThan(USUAL_DECK.high)
    expect(USUAL_DECK.low / POUND_PER_SQUARE_FOOT).toBeCloseTo(40, 9)
    expect(() => floorLoad(1, inches(0), inches(12))).toThrow(RangeError)
  })
})
