import { describe, expect, it } from 'vitest'
import { inches } from '../../src/core/measure/length.ts'
import { drawBox } from '../../src/drawing/box.ts'
import type { Point, Shape } from '../../src/drawing/scene.ts'
import { INCHES, planOf, USUAL } from './corpus.ts'

const apart = ([x, y]: Point, [X, Y]: Point): number => Math.hypot(x - X, y - Y)

const outlinesOf = (shapes: readonly Shape[], of: string): readonly (readonly Point[])[] =>
  shapes.flatMap((shape) => (shape.shape === 'polygon' && shape.of === of ? [shape.points] : []))

describe('the box pulled apart', () => {
  const plan = planOf({
    ...USUAL,
    lid: { kind: 'inset', handle: 'notch' },
    bottom: { on: 'feet', drain: { diameter: inches(1, 2), spacing: inches(6) } },
  })
  const { shapes } = drawBox({ plan }, INCHES)

  it('has the notch of its lid, as long along the front edge as the plan has it', () => {
    const lid = plan.parts.find(({ name }) => name === 'lid panel')
    const [notch] = lid?.cutouts ?? []
    const [drawn] = outlinesOf(shapes, 'finger notch')
    const [top] = outlinesOf(shapes, 'lid panel')
    if (!lid || !notch || !drawn || !top) throw new Error('no notch')
    const side = ([one, other]: readonly Point[]): number => (one && other ? apart(one, other) : Number.NaN)
    expect(side(drawn) / side(top)).toBeCloseTo(notch.size.along / lid.length, 6)
    // Both begin at the front edge.
    const [corner, next] = top
    const [start] = drawn
    if (!corner || !next || !start) throw new Error('no edge')
    expect(apart(corner, start) + apart(start, next)).toBeCloseTo(apart(corner, next), 6)
  })

  it('has every drain hole of its bottom', () => {
    const [drain] = plan.parts.find(({ name }) => name === 'bottom panel')?.cutouts ?? []
    const holes = outlinesOf(shapes, 'drain hole')
    expect(holes).toHaveLength(drain?.at.length ?? Number.NaN)
    expect(holes.length).toBeGreaterThan(3)
  })
})
