import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches } from '../../../src/core/measure/length.ts'
import { type Plan, planSurround, type Spec } from '../../../src/core/plan.ts'
import { diffPlans } from '../../../src/core/plan/difference.ts'
import { plain, specs } from '../panelling/specs.ts'

const planned = (change: Partial<Spec> = {}): Plan => {
  const plan = planSurround({ ...plain, ...change })
  if (plan.status === 'impossible') throw new Error(plan.obstacle.kind)
  return plan
}

describe('diffPlans', () => {
  it('finds nothing between a plan and itself', () => {
    expect(diffPlans(planned(), planned())).toEqual({ parts: [], sizes: [] })
  })

  it('follows a thicker sheet into every part it touches, and into no other', () => {
    const { parts, sizes } = diffPlans(planned(), planned({ sheet: inches(5, 8) }))
    const changes = parts.map(({ label, name, change }) => [label, name, change?.length, change?.thickness])
    expect(changes).toEqual([
      ['A', 'end panel', inches(1, 4), inches(1, 8)],
      ['B', 'side panel', 0, inches(1, 8)],
      ['C', 'end rail', inches(1, 4), 0],
      ['D', 'side rail', inches(1, 4), 0],
    ])
    expect(sizes.map(({ name, change }) => [name, change])).toEqual([
      ['outside length', inches(1, 4)],
      ['outside width', inches(1, 4)],
      ['lip', inches(-1, 8)],
      ['flat stack', inches(1, 2)],
    ])
  })

  it('names parts that come and go, and those that only change their letter', () => {
    const { parts } = diffPlans(
      planned({ braces: 'all', corner: 'cleated' }),
      planned({ braces: 'ends', corner: 'cleated' }),
    )
    expect(parts.map(({ label, name, before, after }) => [label, name, before?.count, after?.count])).toEqual(
      [['I', 'side brace', 2, undefined]],
    )
    const corners = diffPlans(planned({ braces: 'ends' }), planned({ braces: 'ends', corner: 'cleated' }))
    expect(corners.parts.map(({ label, name }) => `${label} ${name}`)).toEqual([
      'C end rail',
      'D side rail',
      'F side stile',
      'G corner block',
      'H end brace',
      'F corner stile',
    ])
    expect(corners.parts.find(({ name }) => name === 'end brace')?.before?.label).toBe('G')
  })

  it('turns round when the plans change places', () => {
    fc.assert(
      fc.property(specs, specs, (one, other) => {
        const [before, after] = [planSurround(one), planSurround(other)]
        if (before.status === 'impossible' || after.status === 'impossible') return
        const there = diffPlans(before, after)
        const back = diffPlans(after, before)
        expect(back.sizes).toEqual(
          there.sizes.map(({ name, before: was, after: is, change }) => ({
            name,
            before: is,
            after: was,
            change: -change,
          })),
        )
        const told = (parts: typeof there.parts) =>
          parts.map(({ name, change }) => [name, change && Math.abs(change.length)]).sort()
        expect(told(back.parts)).toEqual(told(there.parts))
      }),
    )
  })

  it('leads from the earlier list to the later one', () => {
    fc.assert(
      fc.property(specs, specs, (one, other) => {
        const [before, after] = [planSurround(one), planSurround(other)]
        if (before.status === 'impossible' || after.status === 'impossible') return
        const list = new Map(before.parts.map((part) => [part.name, part]))
        for (const { name, after: now } of diffPlans(before, after).parts) {
          if (now) list.set(name, now)
          else list.delete(name)
        }
        const sorted = [...list.values()].sort((a, b) => a.label.localeCompare(b.label))
        expect(sorted).toEqual(after.parts)
      }),
    )
  })
})
