import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { planSurround } from '../../src/core/plan.ts'
import { placeParts } from '../../src/drawing/solids.ts'
import { assemble } from '../core/panelling/assembly.ts'
import type { Solid } from '../core/panelling/solids.ts'
import { richSpecs } from '../core/panelling/specs.ts'

/** Pieces of one panel that was drawn with slots, put together again: the box round each name in one assembly. */
function outlines(solids: readonly Solid[], isWhole: (name: string) => boolean): readonly string[] {
  const panels = new Map<string, number[]>()
  const others: string[] = []
  for (const { name, low, high } of solids) {
    // A handle stands anywhere near the middle: it is told by its size.
    if (name === 'handle') others.push(`${name} ${high.map((value, axis) => value - (low[axis] ?? 0))}`)
    else if (!isWhole(name)) others.push(`${name} ${low} ${high}`)
    else {
      const known = panels.get(name) ?? [...low, ...high]
      const grown = known.map((value, index) =>
        index < 3 ? Math.min(value, low[index] ?? value) : Math.max(value, high[index - 3] ?? value),
      )
      panels.set(name, grown)
    }
  }
  return [...others, ...[...panels].map(([name, box]) => `${name} ${box}`)].sort()
}

const isPanel = (name: string): boolean => name.endsWith('panel')

describe('the parts of a plan in their places', () => {
  it('are where a person would put them, told apart from the drawing', () => {
    fc.assert(
      fc.property(richSpecs, (spec) => {
        const plan = planSurround(spec)
        if (plan.status === 'impossible') return fc.pre(false)
        const built = assemble(plan)
        const drawn = placeParts(plan)
        const of = (name: string) =>
          (drawn.find((each) => each.name === name)?.solids ?? []).map(({ part, low, high }) => ({
            name: part.name,
            low,
            high,
          }))
        const pairs = [
          [of('left end'), built.ends[0]],
          [of('right end'), built.ends[1]],
          [of('front'), built.sides[0]],
          [of('back'), built.sides[1]],
          [of('lid'), built.lid],
          [of('bottom'), built.bottom],
        ] as const
        for (const [one, other] of pairs)
          expect(outlines(rounded(one), isPanel)).toEqual(outlines(rounded(other), isPanel))
      }),
      { numRuns: 200 },
    )
  })
})

/** Halves of an odd nanometre may go either way. */
const rounded = (solids: readonly Solid[]): readonly Solid[] =>
  solids.map(({ name, low, high }) => ({
    name,
    low: [tenths(low[0]), tenths(low[1]), tenths(low[2])],
    high: [tenths(high[0]), tenths(high[1]), tenths(high[2])],
  }))
const tenths = (value: number): number => Math.round(value / 10 + 0.26) * 10
