import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches, type Length, millimetres, minus, plus } from '../../../src/core/measure/length.ts'
import { type Driven, INTO } from '../../../src/core/quantities/fastenerBite.ts'
import { chooseFastener, type FastenerChoice } from '../../../src/core/quantities/fastenerLength.ts'
import { FASTENER_KINDS } from '../../../src/core/quantities/fastenerSize.ts'
import { REGIONS } from '../../../src/core/stock/stock.ts'
import { fasteners } from './shippedFasteners.ts'

const driven = (over: Partial<Driven>): Driven => ({
  kind: 'brad',
  region: 'US',
  held: inches(1, 2),
  receiver: inches(15, 32),
  into: 'face',
  glued: true,
  ...over,
})

function chosen(over: Partial<Driven>): FastenerChoice {
  const choice = chooseFastener(driven(over), fasteners)
  if (choice.status !== 'chosen') throw new Error(choice.reason)
  return choice
}

const named = ({ size }: FastenerChoice) => [size.name, size.length] as const

describe('chooseFastener: published choices', () => {
  // US Army TM 55-607 on blocking and bracing: the nail must not splinter the far face. Nominal 1 in is 3/4, 2 in is 1 1/2.
  it.each([
    ['6d for 1 in onto 2 in', inches(3, 4), inches(3, 2), '6d'],
    ['8d for 2 in onto 2 in', inches(3, 2), inches(3, 2), '8d'],
  ])('%s', (_, held, receiver, name) => {
    expect(chosen({ kind: 'nail', glued: false, held, receiver }).size.name).toBe(name)
  })

  // Woodworkers' questions and the answers given: 2.5 times the top piece as a guide, never more than both less 1/8 in.
  it.each([
    ['3/4 onto a 2x4: 1 1/2 to 2 in', inches(3, 4), inches(3, 2), inches(2)],
    ['3/4 onto 3/4: 1 1/4 in', inches(3, 4), inches(3, 4), inches(5, 4)],
  ])('screw, %s', (_, held, receiver, length) => {
    expect(chosen({ kind: 'screw', glued: false, held, receiver }).size.length).toBe(length)
  })

  it('three times the held piece into a deep one (US Navy, Patternmaker)', () => {
    const choice = chosen({ held: inches(1, 2), receiver: inches(20), into: 'edge', glued: false })
    expect(named(choice)).toEqual(['18 gauge', inches(3, 2)])
    expect(choice.grip).toBe('full')
  })
})

describe('chooseFastener', () => {
  it('a strip onto its panel: 3/4 in, and the glue has to hold', () => {
    const choice = chosen({})
    expect(named(choice)).toEqual(['18 gauge', inches(3, 4)])
    expect(choice).toMatchObject({ grip: 'with glue', bite: inches(1, 4) })
    expect(chooseFastener(driven({ glued: false }), fasteners)).toMatchObject({
      status: 'impossible',
      reason: 'receiver thin',
      withGlue: true,
      receiverAtLeast: inches(5, 8),
    })
  })

  it('names a wider piece, a thinner one, or nothing', () => {
    expect(chooseFastener(driven({ width: millimetres(2) }), fasteners)).toEqual({
      status: 'impossible',
      reason: 'narrow',
      widthAtLeast: inches(95, 400),
    })
    expect(chooseFastener(driven({ held: inches(3) }), fasteners)).toEqual({
      status: 'impossible',
      reason: 'held thick',
      heldAtMost: inches(2),
    })
    expect(chooseFastener(driven({ receiver: millimetres(4) }), fasteners)).toMatchObject({
      reason: 'receiver thin',
      heldAtMost: undefined,
    })
  })

  it('goes half an inch deeper into end grain', () => {
    const into = (end: 'face' | 'end') =>
      chosen({ kind: 'nail', held: inches(1, 2), receiver: inches(9), into: end })
    expect(into('face').size.name).toBe('4d')
    expect(into('end').size.name).toBe('6d')
  })

  it('takes the lightest gauge that is made for the piece, of those that grip alike', () => {
    const held = (thickness: Length) =>
      chosen({ held: thickness, receiver: inches(20), into: 'edge' }).size.name
    expect(held(inches(1, 4))).toBe('23 gauge')
    expect(held(inches(1, 2))).toBe('18 gauge')
    expect(held(inches(3, 4))).toBe('16 gauge')
    expect(chosen({ kind: 'screw', held: inches(1, 2), receiver: inches(20) }).size.name).toBe('#6')
  })

  it('refuses a thickness of nothing', () => {
    expect(() => chosen({ held: inches(0) })).toThrow(RangeError)
    expect(() => chosen({ receiver: inches(0) })).toThrow(RangeError)
  })

  it('never leaves the tip less than 1/8 in inside, over random joints', () => {
    let chose = 0
    fc.assert(
      fc.property(anyJoint, (joint) => {
        const choice = chooseFastener(joint, fasteners)
        if (choice.status !== 'chosen') return
        chose += 1
        const { size, bite } = choice
        expect(size).toMatchObject({ kind: joint.kind, region: joint.region })
        expect(plus(joint.held, bite)).toBe(size.length)
        expect(minus(joint.receiver, bite)).toBeGreaterThanOrEqual(inches(1, 8))
        expect(bite).toBeGreaterThanOrEqual(joint.glued ? inches(1, 4) : inches(1, 2))
        expect(size.diameter * 5).toBeLessThanOrEqual(joint.width ?? Infinity)
      }),
      { numRuns: 1000 },
    )
    expect(chose).toBeGreaterThan(200)
  })

  it('finds one wherever any size sold would do, over random joints', () => {
    fc.assert(
      fc.property(anyJoint, (joint) => {
        const bite =
          joint.into === 'end' ? 0.75 : joint.into === 'edge' && joint.kind === 'screw' ? 0.5 : 0.25
        const would = fasteners.sizes.some(
          ({ kind, region, length, diameter, heldUpTo = Infinity }) =>
            kind === joint.kind &&
            region === joint.region &&
            heldUpTo >= joint.held &&
            diameter * 5 <= (joint.width ?? Infinity) &&
            length - joint.held >= bite * 25_400_000 &&
            length <= joint.held + joint.receiver - 3_175_000,
        )
        expect(chooseFastener({ ...joint, glued: true }, fasteners).status).toBe(
          would ? 'chosen' : 'impossible',
        )
      }),
      { numRuns: 1000 },
    )
  })

  it('does not go by the order of the table', () => {
    const turned = { ...fasteners, sizes: [...fasteners.sizes].reverse() }
    fc.assert(
      fc.property(anyJoint, (joint) => {
        expect(chooseFastener(joint, turned)).toEqual(chooseFastener(joint, fasteners))
      }),
      { numRuns: 500 },
    )
  })

  it('what it says would do does, over random joints', () => {
    let refused = 0
    fc.assert(
      fc.property(anyJoint, (joint) => {
        const choice = chooseFastener(joint, fasteners)
        if (choice.status === 'chosen') return
        refused += 1
        const again = (over: Partial<Driven>) => chooseFastener({ ...joint, ...over }, fasteners)
        if (choice.reason === 'narrow') {
          expect(again({ width: choice.widthAtLeast })).not.toMatchObject({ reason: 'narrow' })
          expect(again({ width: (choice.widthAtLeast - 1) as Length })).toMatchObject({ reason: 'narrow' })
        }
        if (choice.reason === 'held thick')
          expect(again({ held: choice.heldAtMost, receiver: inches(20), width: undefined }).status).toBe(
            'chosen',
          )
        if (choice.reason !== 'receiver thin') return
        expect(again({ receiver: choice.receiverAtLeast }).status).toBe('chosen')
        expect(again({ receiver: (choice.receiverAtLeast - 1) as Length }).status).toBe('impossible')
        if (choice.heldAtMost !== undefined) expect(again({ held: choice.heldAtMost }).status).toBe('chosen')
        expect(again({ glued: true }).status === 'chosen').toBe(choice.withGlue)
      }),
      { numRuns: 1000 },
    )
    expect(refused).toBeGreaterThan(100)
  })
})

const size = (low: number, high: number) =>
  fc.integer({ min: low * 1_000_000, max: high * 1_000_000 }).map((count) => count as Length)

const anyJoint: fc.Arbitrary<Driven> = fc.record({
  kind: fc.constantFrom(...FASTENER_KINDS),
  region: fc.constantFrom(...REGIONS),
  held: size(3, 60),
  receiver: fc.oneof(size(3, 40), size(40, 200)),
  into: fc.constantFrom(...INTO),
  glued: fc.boolean(),
  width: fc.option(size(2, 60), { nil: undefined }),
})
