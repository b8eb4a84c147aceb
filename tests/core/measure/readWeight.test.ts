import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { POUND, readWeight } from '../../../src/core/measure/readWeight.ts'
import { showFloorLoad, showForce, showPressure, showWeight } from '../../../src/core/measure/showWeight.ts'

describe('readWeight', () => {
  it.each([
    ['20kg', 20_000, 'metric'],
    ['20 kilos', 20_000, 'metric'],
    ['45 lb', 45 * POUND, 'inch'],
    ['45lbs.', 45 * POUND, 'inch'],
    ['8 oz', POUND / 2, 'inch'],
    ['500 g', 500, 'metric'],
    ['1,5 t', 1_500_000, 'metric'],
  ])('%s is %d g', (text, grams, units) => {
    expect(readWeight(text)).toEqual({ status: 'read', grams, units })
  })

  it('asks about a bare number', () => {
    expect(readWeight('20')).toMatchObject({ status: 'ambiguous' })
  })

  it.each(['0kg', '-3kg', 'heavy', '20in', '200t', '1e9kg', '', 'kg', '5'.repeat(300)])(
    'refuses %s',
    (text) => {
      expect(readWeight(text).status).toBe('invalid')
    },
  )

  it('reads back what is shown to a tenth', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99_999 }), fc.constantFrom('inch', 'metric'), (grams, units) => {
        const read = readWeight(showWeight(grams, units as 'inch'))
        expect(read.status === 'read' && Math.abs(read.grams - grams)).toBeLessThanOrEqual(50)
      }),
    )
  })
})

describe('what is shown of weight and force', () => {
  it.each([
    [showWeight(450, 'metric'), '450 g'],
    [showWeight(14_270, 'metric'), '14.3 kg'],
    [showWeight(POUND * 31.52, 'inch'), '31.5 lb'],
    [showWeight(POUND / 4, 'inch'), '4 oz'],
    // Borne: down, so that nothing is claimed that is not there.
    [showForce(109.65 * 4.4482216, 'inch'), '109 lb'],
    [showForce(30, 'metric'), '3 kg'],
    [showPressure(100 * 6894.757, 150 * 6894.757, 'inch'), '100 to 150 psi'],
    [showPressure(100 * 6894.757, 150 * 6894.757, 'metric'), '0.69 to 1.03 N/mm²'],
    // 1 lb/ft2 is 4.8824 kg/m2 (conversion tables); carried: up.
    [showFloorLoad(4.8824 * 40.2, 'inch'), '41 lb/sq ft'],
    [showFloorLoad(195.3, 'metric'), '196 kg/m²'],
  ])('%s', (shown, wanted) => {
    expect(shown).toBe(wanted)
  })
})
