import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { planSurround } from '../../src/core/plan.ts'
import { placeParts } from '../../src/drawing/solids.ts'
import { assemble } from '../core/panelling/assembly.ts'
import { bounds, type Solid } from '../core/panelling/solids.ts'
import { richSpecs } from '../core/panelling/specs.ts'

/** A panel that was put together in pieces, round its slots and notches, as the one block that it was; the handle left out. */
function whole(solids: readonly Solid[]): readonly Solid[] {
  const panels = [...new Set(solids.map(({ name }) => name).filter((name) => name.endsWith('panel')))]
  return [
    ...solids.filter(({ name }) => !name.endsWith('panel') && name !== 'handle'),
    ...panels.map((name) => ({ ...bounds(solids.filter((one) => one.name === name)), name })),
  ]
}

/** Halves of an odd nanometre may go either way. */
const HAIR = 2

const isSame = (one: Solid, other: Solid): boolean =>
  one.name === other.name &&
  [...one.low, ...one.high].every(
    (value, index) => Math.abs(value - ([...other.low, ...other.high][index] ?? Number.NaN)) <= HAIR,
  )

/** What of `some` has nothing like it among `others`. */
const unlike = (some: readonly Solid[], others: readonly Solid[]): readonly Solid[] =>
  some.filter((one) => !others.some((other) => isSame(one, other)))

describe('the parts of a plan in their places', () => {
  it('are where a person would put them, told apart from the drawing', () => {
    fc.assert(
      fc.property(richSpecs, (spec) => {
        const plan = planSurround(spec)
        if (plan.status === 'impossible') return fc.pre(false)
        const built = assemble(plan)
        const drawn = placeParts(plan)
        const of = (name: string): readonly Solid[] =>
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
        for (const [one, other] of pairs) {
          expect(one.length === 0).toBe(other.length === 0)
          expect(unlike(whole(one), whole(other))).toEqual([])
          expect(unlike(whole(other), whole(one))).toEqual([])
        }
      }),
      { numRuns: 200 },
    )
  })
})
