import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readConfig } from '../../../src/config.ts'
import { acrossFace, findSpecies, growthOf, shrinkageOf } from '../../../src/core/moisture/species.ts'
import { CONFIG } from '../../config/folder.ts'

const { species } = readConfig(CONFIG)

/** Wood Handbook (GTR-190): growth for 1 % from Table 13-5, p. 13-17; percent shrinkage from Table 4-3, p. 4-6. */
const PRINTED = [
  ['red alder', 0.00151, 0.00256, 4.4, 7.3],
  ['white ash', 0.00169, 0.00274, 4.9, 7.8],
  ['quaking aspen', 0.00119, 0.00234, 3.5, 6.7],
  ['basswood', 0.0023, 0.0033, 6.6, 9.3],
  ['American beech', 0.0019, 0.00431, 5.5, 11.9],
  ['paper birch', 0.00219, 0.00304, 6.3, 8.6],
  ['yellow birch', 0.00256, 0.00338, 7.3, 9.5],
  ['black cherry', 0.00126, 0.00248, 3.7, 7.1],
  ['eastern cottonwood', 0.00133, 0.00327, 3.9, 9.2],
  ['American elm', 0.00144, 0.00338, 4.2, 9.5],
  ['sweetgum', 0.00183, 0.00365, 5.3, 10.2],
  ['sycamore', 0.00172, 0.00296, 5.0, 8.4],
  ['black walnut', 0.0019, 0.00274, 5.5, 7.8],
  ['hackberry', 0.00165, 0.00315, 4.8, 8.9],
  ['pecan hickory', 0.00169, 0.00315, 4.9, 8.9],
] as const

describe('growthOf', () => {
  it.each(PRINTED)(
    '%s: %d quarter-sawn, %d flat-sawn, from %d and %d percent',
    (_, radial, tangential, across, along) => {
      // Printed to five places, and one of the 30 is one off in the last.
      expect(Math.abs(growthOf(across) - radial)).toBeLessThanOrEqual(0.000011)
      expect(Math.abs(growthOf(along) - tangential)).toBeLessThanOrEqual(0.000011)
    },
  )

  it('gives all but one of the printed growths to the last place', () => {
    const pairs = PRINTED.flatMap(
      ([, ...[r, t, across, along]]) =>
        [
          [r, across],
          [t, along],
        ] as const,
    )
    const off = pairs.filter(([printed, shrinkage]) => growthOf(shrinkage).toFixed(5) !== printed.toFixed(5))
    expect(pairs).toHaveLength(30)
    expect(off).toHaveLength(1)
  })

  it('is turned round by shrinkageOf', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 20, noNaN: true }), (shrinkage) => {
        expect(shrinkageOf(growthOf(shrinkage))).toBeCloseTo(shrinkage, 9)
      }),
    )
  })
})

describe('the woods as shipped', () => {
  it.each(PRINTED)('%s stands as printed', (name, radial, tangential, across, along) => {
    expect(findSpecies(name, species)).toMatchObject({
      growth: { radial, tangential, fromMemory: false },
      shrinkage: { radial: across, tangential: along },
    })
  })

  it('are found by other names and whatever the capitals', () => {
    expect(findSpecies(' spf ', species)?.name).toBe('spruce-pine-fir')
    expect(findSpecies('Cherry', species)?.name).toBe('black cherry')
    expect(findSpecies('balsa', species)).toBeUndefined()
  })

  it('agree with a flooring trade list on Douglas-fir and southern pine flat-sawn', () => {
    expect(findSpecies('Douglas-fir', species)?.growth?.tangential).toBeCloseTo(0.00267, 5)
    expect(findSpecies('southern pine', species)?.growth?.tangential).toBe(0.00265)
  })

  it('say which growths are from memory', () => {
    expect(findSpecies('spruce-pine-fir', species)?.growth?.fromMemory).toBe(true)
    expect(findSpecies('hem-fir', species)?.growth?.fromMemory).toBe(false)
  })

  it('grow more flat-sawn than quarter-sawn, and half way between where the rings run aslant', () => {
    for (const { growth } of species) {
      if (!growth) continue
      expect(acrossFace(growth, 'flat')).toBeGreaterThan(acrossFace(growth, 'quarter'))
      expect(acrossFace(growth, 'rift')).toBeCloseTo((growth.radial + growth.tangential) / 2, 12)
    }
  })
})
