import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Length, inches, millimetres } from '../../../src/core/measure/length.ts'
import { planSurround } from '../../../src/core/plan.ts'
import { blockWeight, weighPlan } from '../../../src/core/quantities/weight.ts'
import { assemble } from '../panelling/assembly.ts'
import type { Solid } from '../panelling/solids.ts'
import { plain, specs } from '../panelling/specs.ts'

const kilograms = (width: number, length: number, thickness: number, density: number) =>
  blockWeight(millimetres(length), millimetres(width), millimetres(thickness), density) / 1000

describe('blockWeight', () => {
  // Birch plywood manufacturer's data sheet: nominal thickness, kg/m3, kg a sheet.
  it.each([
    [1220, 2440, 18, 685, 36.7],
    [1220, 2440, 12, 695, 24.8],
    [1220, 2440, 9, 710, 19.0],
    [1220, 2440, 24, 680, 48.6],
    [1220, 2440, 6.5, 670, 13.0],
    [1525, 3050, 18, 685, 57.3],
    [1525, 3050, 30, 672, 93.8],
  ])('birch plywood %d x %d x %d mm at %d kg/m3: %d kg', (width, length, thickness, density, printed) => {
    expect(Math.abs(kilograms(width, length, thickness, density) - printed)).toBeLessThanOrEqual(0.06)
  })

  it('24 pieces of 2x4 by 8 ft at 16.3 kg/ft3: 7 ft3, 114.1 kg (how-to page on weighing lumber)', () => {
    const perCubicMetre = 16.3 / 0.3048 ** 3
    const grams = 24 * blockWeight(inches(96), inches(7, 2), inches(3, 2), perCubicMetre)
    expect(Math.abs(grams / 1000 - 114.1)).toBeLessThan(0.05)
  })
})

describe('weighPlan', () => {
  const densities = { sheet: 577, strip: 470 }

  const gramsOf = ({ name, low, high }: Solid): number => {
    const cubic = [0, 1, 2].reduce((volume, axis) => volume * ((high[axis]! - low[axis]!) / 1e6), 1)
    return (cubic * (name.endsWith('panel') ? densities.sheet : densities.strip)) / 1e6
  }
  const gramsIn = (solids: readonly Solid[]): number => solids.reduce((sum, one) => sum + gramsOf(one), 0)

  it('weighs each panel as it is carried and the whole, as the box drawn in solids does', () => {
    fc.assert(
      fc.property(specs, (spec) => {
        const plan = planSurround({ ...spec, braces: 'none' })
        if (plan.status === 'impossible') return fc.pre(false)
        const { ends, sides, all } = assemble(plan)
        const weight = weighPlan(plan, densities)
        expect(weight.end / gramsIn(ends[0])).toBeCloseTo(1, 9)
        expect(weight.side / gramsIn(sides[0])).toBeCloseTo(1, 9)
        expect(weight.total / gramsIn(all)).toBeCloseTo(1, 9)
        expect(weight.parts.map(({ name }) => name)).toEqual(plan.parts.map(({ name }) => name))
      }),
    )
  })

  it('adds a brace by the area that it covers', () => {
    const [bare, braced] = (['none', 'all'] as const).map((braces) => planSurround({ ...plain, braces }))
    if (bare?.status !== 'planned' || braced?.status !== 'planned') throw new Error('no plan')
    const more = weighPlan(braced, densities).total - weighPlan(bare, densities).total
    const grams = braced.faces.reduce(
      (sum, { brace }) => sum + 2 * blockWeight(brace!.edge, plain.width, plain.strip, densities.strip),
      0,
    )
    expect(more).toBeCloseTo(grams, 6)
    for (const { brace } of braced.faces) expect(brace!.edge).toBeLessThan(brace!.length)
  })

  it('is heavier in heavier wood and in a bigger box, and refuses wood of no weight', () => {
    const plan = planSurround(plain)
    const higher = planSurround({ ...plain, height: (plain.height + 1e8) as Length })
    if (plan.status !== 'planned' || higher.status !== 'planned') throw new Error('no plan')
    const { total } = weighPlan(plan, densities)
    expect(weighPlan(plan, { ...densities, strip: 600 }).total).toBeGreaterThan(total)
    expect(weighPlan(higher, densities).total).toBeGreaterThan(total)
    expect(() => weighPlan(plan, { ...densities, sheet: 0 })).toThrow(RangeError)
  })
})
