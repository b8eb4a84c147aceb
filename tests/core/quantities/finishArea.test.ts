import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { millimetres } from '../../../src/core/measure/length.ts'
import { exposedArea, type FinishedPart } from '../../../src/core/quantities/finishArea.ts'

const part = (
  material: FinishedPart['material'],
  count: number,
  ...sizes: readonly [number, number, number]
) => {
  const [length, width, thickness] = sizes.map(millimetres)
  return { material, count, length: length!, width: width!, thickness: thickness! }
}

describe('exposedArea', () => {
  it('counts both faces and the edges of a sheet, or one face and the edges', () => {
    const panel = part('sheet', 2, 1000, 500, 12)
    expect(exposedArea([panel], 'all')).toBeCloseTo(2 * (2 * 500_000 + 2 * 1500 * 12), 6)
    expect(exposedArea([panel], 'outside')).toBeCloseTo(2 * (500_000 + 2 * 1500 * 12), 6)
  })

  it('counts the four sides of a strip, since its face shows what it hides of the panel', () => {
    const strip = part('strip', 3, 800, 38, 6)
    expect(exposedArea([strip], 'all')).toBeCloseTo(3 * 2 * 838 * 6, 6)
    expect(exposedArea([strip], 'outside')).toBe(exposedArea([strip], 'all'))
  })

  it('agrees with the solid of a framed panel, face by face', () => {
    // A 600 x 400 x 10 panel under four 40 x 5 strips laid round its rim, none overhanging.
    const parts = [part('sheet', 1, 600, 400, 10), part('strip', 2, 600, 40, 5), part('strip', 2, 320, 40, 5)]
    const faces = 2 * 600 * 400
    const rim = 2 * (600 + 400) * 15
    const window = 2 * (520 + 320) * 5
    const buttedEnds = 4 * 2 * 40 * 5
    expect(exposedArea(parts, 'all')).toBeCloseTo(faces + rim + window + buttedEnds, 6)
  })

  it('is nothing for no parts, and adds up over them', () => {
    expect(exposedArea([], 'all')).toBe(0)
    const size = fc.integer({ min: 1, max: 3000 })
    const any = fc.record({
      material: fc.constantFrom('sheet' as const, 'strip' as const),
      count: size,
      l: size,
      w: size,
      t: size,
    })
    fc.assert(
      fc.property(fc.array(any), (sizes) => {
        const parts = sizes.map(({ material, count, l, w, t }) => part(material, count, l, w, t))
        const apart = parts.reduce((sum, each) => sum + exposedArea([each], 'all'), 0)
        expect(exposedArea(parts, 'all')).toBeCloseTo(apart, 3)
        expect(exposedArea(parts, 'outside')).toBeLessThanOrEqual(exposedArea(parts, 'all'))
      }),
    )
  })
})
