import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches, millimetres, nanometres } from '../../../src/core/measure/length.ts'
import type { ReadingSettings } from '../../../src/core/measure/reading.ts'
import { readLength } from '../../../src/core/measure/readLength.ts'
import type { Purpose } from '../../../src/core/measure/round.ts'
import { type ShowSettings, showLength, stepOf } from '../../../src/core/measure/show.ts'
import { shop } from '../stock/fixture.ts'

const reading: ReadingSettings = { region: 'US', kerf: inches(1, 8), stock: shop }

const settings = fc.record({
  units: fc.constantFrom('inch' as const, 'metric' as const),
  tape: fc.constantFrom(16 as const, 32 as const, 64 as const),
  millimetreStep: fc.constantFrom(1 as const, 0.5 as const),
  feet: fc.boolean(),
})

/** What a reader takes for a length of wood: 0.1 mm to 20 m. */
const length = fc
  .oneof(fc.integer({ min: 120_000, max: 19_000_000_000 }), fc.integer({ min: 120_000, max: 3_000_000 }))
  .map(nanometres)

/** Without the miss, as a person would type it back. */
const withoutMiss = (shown: string): string => shown.replace(/ \([+-][\d.]+\)$/, '')

describe('what showLength prints', () => {
  it('is read back as the mark itself', () => {
    fc.assert(
      fc.property(
        length,
        settings,
        fc.constantFrom<Purpose>('into', 'cover', 'mark'),
        (exact, how, purpose) => {
          const shown = withoutMiss(showLength(exact, how, purpose))
          const read = readLength(shown, reading)
          if (read.status !== 'read') throw new Error(`${shown} is ${read.status}`)
          expect(read.units).toBe(how.units)
          const step = stepOf(how)
          // Below one step of the tape a decimal is shown, which may round up to a mark of its own.
          if (exact >= step) expect(withoutMiss(showLength(read.length, how, purpose))).toBe(shown)
          if (read.length % step === 0) expect(Math.abs(read.length - exact)).toBeLessThanOrEqual(step)
          else expect(Math.abs(read.length - exact)).toBeLessThanOrEqual(millimetres(0.013))
        },
      ),
      { numRuns: 1000 },
    )
  })

  it('needs no rounding the second time', () => {
    const how: ShowSettings = { units: 'inch', tape: 16, millimetreStep: 1, feet: true }
    const read = readLength('7 ft 11 7/8 in', reading)
    expect(read).toMatchObject({ status: 'read', length: inches(767, 8) })
    expect(showLength(inches(767, 8), how)).toBe('7 ft 11 7/8 in')
  })
})
