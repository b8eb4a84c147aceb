import { describe, expect, it } from 'vitest'
import { inches } from '../../../src/core/measure/length.ts'
import { type Plan, planSurround, type Spec } from '../../../src/core/plan.ts'
import { layJoints } from '../../../src/core/plan/joints.ts'
import { plain } from '../panelling/specs.ts'

const joints = (change: Partial<Spec>) => layJoints(planSurround({ ...plain, ...change }) as Plan)

// That areas are right is shown with solids in planSolids.test.ts; braces are not among those.
describe('layJoints', () => {
  it('glues every face joint of a captured box and screws none', () => {
    const found = joints({})
    expect(found.map(({ part, onto, count }) => `${count} ${part} on ${onto}`)).toEqual([
      '4 end rail on end panel',
      '4 side rail on side panel',
      '4 end stile on end panel',
      '4 corner stile on end panel',
      '4 corner stile on end stile',
    ])
    expect(found.every(({ fixing }) => fixing === 'glued')).toBe(true)
  })

  it('never fixes an end to a side where the box has to come apart, but by screws', () => {
    const across = (corner: Spec['corner']) =>
      joints({ corner }).filter(({ part, onto }) => {
        const ofEnd = (name: string) => /^end|^corner stile/u.test(name)
        return ofEnd(part) !== ofEnd(onto)
      })
    expect(across('captured')).toEqual([])
    expect(across('cleated').map(({ part, fixing }) => [part, fixing])).toEqual([['corner block', 'screwed']])
    expect(across('butted').length).toBe(5)
  })

  it('lays a brace on its panel over its area: long edge by width', () => {
    // A square opening 12 x 12 in and a strip 1 1/2 in wide: the lozenge is the opening less the two triangles beside it.
    const object = { shape: 'rectangle', length: inches(17), width: inches(12) } as const
    const found = joints({ object, braces: 'ends' }).find(({ part }) => part === 'end brace')
    const area = ((found?.length ?? 0) / inches(1)) * ((found?.width ?? 0) / inches(1))
    // Each triangle has legs 12 and 12 - u, where u is the strip's length along the stile: u cos(slope) = w.
    const slope = Math.PI / 4 - Math.asin(1.5 / Math.hypot(12, 12))
    const u = 1.5 / Math.cos(slope)
    expect(area).toBeCloseTo(144 - 12 * (12 - u), 7)
    expect([found?.count, found?.width]).toEqual([2, inches(3, 2)])
  })
})
