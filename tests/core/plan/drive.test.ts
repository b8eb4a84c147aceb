import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Plan, planSurround } from '../../../src/core/plan.ts'
import { type Drive, drives } from '../../../src/core/plan/drive.ts'
import { type Joint, layJoints } from '../../../src/core/plan/joints.ts'
import { type Assembly, assemble } from '../panelling/assembly.ts'
import { contact, type Solid } from '../panelling/solids.ts'
import { specs } from '../panelling/specs.ts'

type Axis = 0 | 1 | 2

/** Two pieces that touch as the joint says, in the box as it is drawn. */
function touching({ part, onto }: Joint, solids: readonly Solid[]): readonly [Solid, Solid] {
  for (const one of solids.filter(({ name }) => name === part))
    for (const other of solids.filter(({ name }) => name === onto))
      if (contact(one, other) > 0n) return [one, other]
  throw new Error(`no ${part} touches ${onto}`)
}

const middle = (one: Solid, other: Solid, axis: Axis): number =>
  (Math.max(one.low[axis], other.low[axis]) + Math.min(one.high[axis], other.high[axis])) / 2

/** Thicknesses met one behind the other from the middle of the contact, straight out of it to one side. */
function met(solids: readonly Solid[], at: readonly number[], axis: Axis, way: 1 | -1): readonly number[] {
  const next = solids.find(
    ({ low, high }) =>
      (way === 1 ? low : high)[axis] === at[axis] &&
      ([0, 1, 2] as const).every(
        (other) => other === axis || (low[other] < at[other]! && at[other]! < high[other]),
      ),
  )
  if (!next) return []
  const [start, end] = way === 1 ? [next.low[axis], next.high[axis]] : [next.high[axis], next.low[axis]]
  return [
    Math.abs(end - start),
    ...met(
      solids,
      at.map((place, index) => (index === axis ? end : place)),
      axis,
      way,
    ),
  ]
}

/** Pieces of one carried panel are joined before it meets the others, and blocks go on last. */
function around({ part, onto }: Joint, { ends, sides, all }: Assembly): readonly Solid[] {
  const isPart = ({ name }: Solid) => name === part || name === onto
  const both = (solids: readonly Solid[]) => new Set(solids.filter(isPart).map(({ name }) => name)).size === 2
  const solids = [ends[0], sides[0]].find(both) ?? all
  return solids.filter((one) => one.name !== 'corner block' || isPart(one))
}

function isDrawn(drive: Drive, joint: Joint, built: Assembly): boolean {
  const solids = around(joint, built)
  const [one, other] = touching(joint, solids)
  const axis = ([0, 1, 2] as const).find(
    (each) => one.low[each] === other.high[each] || one.high[each] === other.low[each],
  )!
  const at = [0, 1, 2].map((each) => middle(one, other, each as Axis))
  const sum = (sizes: readonly number[]) => sizes.reduce((total, size) => total + size, 0)
  return ([1, -1] as const).some(
    (way) =>
      met(solids, at, axis, way)[0] === drive.receiver &&
      sum(met(solids, at, axis, way === 1 ? -1 : 1)) === drive.held,
  )
}

describe('drives', () => {
  it('go through what is drawn in front of the contact, and into what is drawn behind it', () => {
    fc.assert(
      fc.property(specs, (spec) => {
        const plan = planSurround({ ...spec, braces: 'none' })
        if (plan.status === 'impossible') return fc.pre(false)
        const built = assemble(plan)
        for (const joint of layJoints(plan))
          for (const drive of drives(joint, plan))
            expect(isDrawn(drive, joint, built), `${joint.part} on ${joint.onto}: ${drive.through}`).toBe(
              true,
            )
      }),
      { numRuns: 200 },
    )
  })

  it('offer a strip on a panel both ways, and every other joint the one way that is open', () => {
    for (const corner of ['captured', 'cleated', 'butted'] as const) {
      const plan = planSurround({ ...fc.sample(specs, { numRuns: 1, seed: 7 })[0]!, corner }) as Plan
      for (const joint of layJoints(plan)) {
        const framed =
          /rail|stile|brace/u.test(joint.part) && joint.onto === `${joint.part.split(' ')[0]} panel`
        expect(drives(joint, plan).length, `${joint.part} on ${joint.onto}`).toBe(framed ? 2 : 1)
      }
    }
  })
})
