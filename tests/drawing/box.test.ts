import { describe, expect, it } from 'vitest'
import { boxPicture } from '../../src/bot/pictures.ts'
import { inches } from '../../src/core/measure/length.ts'
import { drawBox } from '../../src/drawing/box.ts'
import { bracketBlocks } from '../../src/drawing/brackets.ts'
import type { Point, Shape } from '../../src/drawing/scene.ts'
import { placeParts } from '../../src/drawing/solids.ts'
import { INCHES, planOf, USUAL } from './corpus.ts'

const apart = ([x, y]: Point, [X, Y]: Point): number => Math.hypot(x - X, y - Y)

const outlinesOf = (shapes: readonly Shape[], of: string): readonly (readonly Point[])[] =>
  shapes.flatMap((shape) => (shape.shape === 'polygon' && shape.of === of ? [shape.points] : []))

describe('the box pulled apart with brackets', () => {
  it('has eight of them, each of two legs, those at the back not wider apart than the box is inside', () => {
    const plan = planOf({ ...USUAL, corner: 'bracketed' })
    const { shapes } = drawBox({ plan }, INCHES)
    // Three faces of each block are drawn.
    expect(outlinesOf(shapes, 'corner bracket')).toHaveLength(8 * 2 * 3)
    const pulled = placeParts(plan)
    const blocks = bracketBlocks(plan, pulled)
    expect(blocks).toHaveLength(8 * 2)
    expect(Math.min(...blocks.map(({ low }) => low[0]))).toBe(0)
    expect(Math.max(...blocks.map(({ high }) => high[0]))).toBe(plan.inside.length)
    expect(Math.min(...blocks.map(({ low }) => low[1]))).toBe(0)
    expect(Math.max(...blocks.map(({ high }) => high[1]))).toBe(plan.inside.width)
    expect(Math.min(...blocks.map(({ low }) => low[2]))).toBe(0)
    expect(Math.max(...blocks.map(({ high }) => high[2]))).toBe(plan.panelHeight)
    expect(shapes).toContainEqual(expect.objectContaining({ text: 'black: corner bracket x 8' }))
    expect(boxPicture(plan, INCHES, USUAL.kerf).alt).toContain('; 8 corner brackets.')
  })

  it('has none where corners have none', () => {
    expect(bracketBlocks(planOf(USUAL), placeParts(planOf(USUAL)))).toEqual([])
  })
})

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
