import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { panelMoisture } from '../../../src/core/moisture/panelMoisture.ts'

describe('panelMoisture', () => {
  // Wood panel makers' guide: moisture of MDF and particleboard by humidity.
  it.each([
    [30, 6, 8],
    [45, 7, 9],
    [65, 9, 11],
    [75, 10, 12],
    [90, 15, 16],
  ])('%d %% humidity: %d to %d %%', (humidity, low, high) => {
    expect(panelMoisture(humidity)).toEqual({ low, high })
  })

  it('lies half way between two rows half way between them, and nowhere past the table', () => {
    expect(panelMoisture(55)).toEqual({ low: 8, high: 10 })
    expect(panelMoisture(29.9)).toBeUndefined()
    expect(panelMoisture(90.1)).toBeUndefined()
    expect(panelMoisture(Number.NaN)).toBeUndefined()
  })

  it('never falls as the air gets damper', () => {
    const humidity = fc.double({ min: 30, max: 90, noNaN: true })
    fc.assert(
      fc.property(humidity, humidity, (a, b) => {
        const [dry, damp] = [panelMoisture(Math.min(a, b)), panelMoisture(Math.max(a, b))]
        expect(damp!.low).toBeGreaterThanOrEqual(dry!.low)
        expect(damp!.high).toBeGreaterThanOrEqual(dry!.high)
      }),
    )
  })
})
