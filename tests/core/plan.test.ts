import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches, type Length, millimetres, ZERO } from '../../src/core/measure/length.ts'
import { type NoPlan, type Plan, planSurround, type Spec } from '../../src/core/plan.ts'
import { lengths, plain, specs } from './panelling/specs.ts'

const planned = (spec: Spec): Plan => {
  const plan = planSurround(spec)
  if (plan.status === 'impossible') throw new Error(`no plan: ${plan.obstacle.kind}`)
  return plan
}

const obstacle = (change: Partial<Spec>): NoPlan['obstacle'] | undefined => {
  const plan = planSurround({ ...plain, ...change })
  return plan.status === 'impossible' ? plan.obstacle : undefined
}

const rows = (plan: Plan): readonly string[] =>
  plan.parts.map(({ label, count, name, length, width, thickness }) => {
    const [long, wide, thick] = [length, width, thickness].map((size) => size / inches(1, 32))
    return `${label} ${count} ${name} ${long} x ${wide} x ${thick}`
  })

describe('planSurround', () => {
  // Worked on paper in thirty-seconds of an inch: 17 x 13 in with 1 in a side, 15 in high, 1/2 in sheet, strips 1/2 x 1 1/2.
  it('lists the parts of a captured box', () => {
    expect(rows(planned(plain))).toEqual([
      'A 2 end panel 512 x 480 x 16',
      'B 2 side panel 608 x 480 x 16',
      'C 4 end rail 512 x 48 x 16',
      'D 4 side rail 672 x 48 x 16',
      'E 4 end stile 384 x 48 x 16',
      'F 4 corner stile 382 x 48 x 16',
    ])
  })

  it('lists blocks in a cleated box, and lays the end frames over the side frames', () => {
    expect(rows(planned({ ...plain, corner: 'cleated' }))).toEqual([
      'A 2 end panel 512 x 480 x 16',
      'B 2 side panel 608 x 480 x 16',
      'C 4 end rail 544 x 48 x 16',
      'D 4 side rail 640 x 48 x 16',
      'E 4 end stile 384 x 48 x 16',
      'F 4 side stile 384 x 48 x 16',
      'G 4 corner block 384 x 48 x 16',
    ])
  })

  it('needs no blocks in a butted box', () => {
    const names = planned({ ...plain, corner: 'butted' }).parts.map(({ name }) => name)
    expect(names).toEqual(['end panel', 'side panel', 'end rail', 'side rail', 'end stile', 'side stile'])
  })

  it('gives the overall sizes', () => {
    const plan = planned(plain)
    expect(plan.inside).toEqual({ length: inches(19), width: inches(15) })
    expect(plan.outside).toEqual({ length: inches(21), width: inches(17) })
    expect([plan.lip, plan.fit, plan.flatStack]).toEqual([inches(1, 2), inches(1, 32), inches(4)])
    const cleated = planned({ ...plain, corner: 'cleated' })
    expect([cleated.lip, cleated.fit, cleated.flatStack]).toEqual([ZERO, ZERO, inches(5)])
    expect(planned({ ...plain, corner: 'butted' }).flatStack).toEqual(inches(4))
  })

  it('keeps its named sizes and its parts list the same', () => {
    fc.assert(
      fc.property(specs, (spec) => {
        const plan = planSurround(spec)
        if (plan.status === 'impossible') return
        const length = (name: string) => plan.parts.find((part) => part.name === name)?.length
        expect([length('end panel'), length('side panel')]).toEqual([
          plan.endPanelLength,
          plan.sidePanelLength,
        ])
        expect([length('end rail'), length('side rail')]).toEqual([plan.endRailLength, plan.sideRailLength])
        expect(length('end stile')).toBe(plan.endStileLength)
        expect(length('corner stile') ?? length('side stile')).toBe(plan.cornerStileLength)
        expect(plan.parts.map(({ label }) => label).join('')).toBe('ABCDEFGHI'.slice(0, plan.parts.length))
      }),
    )
  })

  it('measures a round object by its diameter both ways', () => {
    const diameter = inches(16)
    const round = planned({ ...plain, object: { shape: 'round', diameter } })
    const square = planned({ ...plain, object: { shape: 'rectangle', length: diameter, width: diameter } })
    expect({ ...round, spec: plain }).toEqual({ ...square, spec: plain })
  })

  it.each([
    ['none', []],
    ['ends', ['end brace']],
    ['sides', ['side brace']],
    ['all', ['end brace', 'side brace']],
  ] as const)('braces %s', (braces, names) => {
    const plan = planned({ ...plain, braces })
    const found = plan.parts.filter(({ name }) => name.endsWith('brace'))
    expect(found.map(({ name }) => name)).toEqual(names)
    expect(found.every(({ count, material }) => count === 2 && material === 'strip')).toBe(true)
    expect(plan.faces.filter(({ brace }) => brace).map(({ name }) => `${name} brace`)).toEqual(names)
  })

  it('cuts a brace from a blank that reaches over the opening of its face', () => {
    // The end face opens 13 x 12 in: a strip 1 1/2 in wide on that diagonal is sqrt(169 + 144 - 2.25) in tip to tip.
    const end = planned({ ...plain, braces: 'ends' }).parts.find(
      ({ name }) => name === 'end brace',
    ) as Plan['parts'][number]
    expect((end.length / inches(1)) ** 2).toBeCloseTo(310.75, 5)
    // The side face opens 18 x 12 in.
    const side = planned({ ...plain, braces: 'all' }).parts.find(
      ({ name }) => name === 'side brace',
    ) as Plan['parts'][number]
    expect((side.length / inches(1)) ** 2).toBeCloseTo(465.75, 5)
  })
})

describe('planSurround, changed', () => {
  const isBrace = ({ name }: Plan['parts'][number]) => name.endsWith('brace')

  it('scales every exact size with the spec', () => {
    fc.assert(
      fc.property(specs, fc.integer({ min: 2, max: 7 }), (spec, by) => {
        const once = planSurround(spec)
        const more = planSurround(scale(spec, by))
        if (once.status === 'impossible' || more.status === 'impossible') {
          expect(more.status).toBe(once.status)
          return
        }
        for (const [index, part] of once.parts.entries()) {
          const grown = more.parts[index] as Plan['parts'][number]
          // A brace is rounded to a nanometre before it is scaled.
          expect(Math.abs(grown.length - by * part.length)).toBeLessThanOrEqual(isBrace(part) ? by : 0)
          expect([grown.width, grown.thickness]).toEqual([by * part.width, by * part.thickness])
        }
        expect([more.lip, more.flatStack]).toEqual([by * once.lip, by * once.flatStack])
      }),
    )
  })

  it('only turns inside and outside round when length and width change places', () => {
    fc.assert(
      fc.property(specs, (spec) => {
        const plan = planSurround(spec)
        const turned = planSurround({ ...spec, object: turn(spec.object) })
        if (plan.status === 'impossible' || turned.status === 'impossible') return
        expect(turned.outside).toEqual({ length: plan.outside.width, width: plan.outside.length })
        expect(turned.inside).toEqual({ length: plan.inside.width, width: plan.inside.length })
        expect([turned.endStileLength, turned.lip]).toEqual([plan.endStileLength, plan.lip])
      }),
    )
  })

  it('takes clearance on both sides of everything that runs along a face, and of nothing upright', () => {
    fc.assert(
      fc.property(specs, lengths(1, 60), (spec, more) => {
        const plan = planSurround(spec)
        const roomy = planSurround({ ...spec, clearance: (spec.clearance + more) as Length })
        if (plan.status === 'impossible' || roomy.status === 'impossible') return
        for (const [index, part] of plan.parts.entries()) {
          if (isBrace(part)) continue
          const grown = (roomy.parts[index] as Plan['parts'][number]).length - part.length
          expect([part.name, grown]).toEqual([part.name, /stile|block/u.test(part.name) ? 0 : 2 * more])
        }
      }),
    )
  })

  it('gives the same box for an object that much smaller with clearance that much larger', () => {
    fc.assert(
      fc.property(specs, lengths(1, 40), (spec, by) => {
        const { object } = spec
        if (object.shape === 'round') return
        const smaller = {
          ...object,
          length: (object.length - 2 * by) as Length,
          width: (object.width - 2 * by) as Length,
        }
        const one = planSurround(spec)
        const other = planSurround({ ...spec, object: smaller, clearance: (spec.clearance + by) as Length })
        if (one.status === 'impossible' || other.status === 'impossible') return
        expect(other.parts).toEqual(one.parts)
      }),
    )
  })

  it('takes the play of a corner stile off that stile alone', () => {
    const loose = planned({ ...plain, fit: inches(3, 32) })
    const tight = planned(plain)
    expect(tight.cornerStileLength - loose.cornerStileLength).toBe(inches(1, 8))
    expect(loose.parts.filter(({ name }) => name !== 'corner stile')).toEqual(
      tight.parts.filter(({ name }) => name !== 'corner stile'),
    )
  })

  it('does not change the spec it is given', () => {
    const frozen = Object.freeze({ ...plain, object: Object.freeze(plain.object) })
    expect(planned(frozen).spec).toEqual(plain)
  })
})

function scale(spec: Spec, by: number): Spec {
  const grow = (length: Length): Length => (length * by) as Length
  const { object } = spec
  return {
    ...spec,
    object:
      object.shape === 'round'
        ? { ...object, diameter: grow(object.diameter) }
        : { ...object, length: grow(object.length), width: grow(object.width) },
    height: grow(spec.height),
    clearance: grow(spec.clearance),
    sheet: grow(spec.sheet),
    strip: grow(spec.strip),
    width: grow(spec.width),
    fit: grow(spec.fit),
    kerf: grow(spec.kerf),
  }
}

const turn = (object: Spec['object']): Spec['object'] =>
  object.shape === 'round' ? object : { ...object, length: object.width, width: object.length }

describe('planSurround, impossible', () => {
  it('says which strip or width would give a lip, and both do', () => {
    const none = obstacle({ width: inches(1) })
    expect(none).toEqual({ kind: 'noLip', lip: 0, stripBelow: inches(1, 2), widthAbove: inches(1) })
    expect(obstacle({ width: (inches(1) + 1) as Length })).toBeUndefined()
    expect(obstacle({ width: inches(1), strip: (inches(1, 2) - 1) as Length })).toBeUndefined()
    expect(obstacle({ width: inches(3, 4) })).toMatchObject({ kind: 'noLip', lip: inches(-1, 4) })
  })

  it('needs no lip where corners are cleated or butted, but a hold on the panel', () => {
    for (const corner of ['cleated', 'butted'] as const) {
      expect(obstacle({ corner, width: inches(3, 4) })).toBeUndefined()
      expect(obstacle({ corner, width: inches(1, 2) })).toEqual({
        kind: 'noHold',
        face: 'side',
        widthAbove: inches(1, 2),
      })
      const thick = { corner, sheet: inches(1, 4), width: inches(1, 2) }
      expect(obstacle(thick)).toEqual({ kind: 'noHold', face: 'end', widthAbove: inches(1, 2) })
    }
  })

  it('says what height leaves a stile between the rails', () => {
    const low = obstacle({ height: inches(3) })
    expect(low).toEqual({ kind: 'tooLow', height: inches(3), heightAbove: inches(49, 16) })
    expect(obstacle({ height: inches(49, 16) })?.kind).toBe('tooLow')
    expect(obstacle({ height: (inches(49, 16) + 1) as Length })).toBeUndefined()
  })

  it.each([
    ['end', { length: inches(17), width: inches(1, 2) }, {}, inches(2), inches(3)],
    ['side', { length: inches(1, 4), width: inches(17) }, { clearance: ZERO }, inches(9, 4), inches(3)],
  ] as const)('finds that the stiles of the %s face meet', (face, size, change, shows, showsAbove) => {
    const object = { shape: 'rectangle', ...size } as const
    const found = obstacle({ clearance: inches(1, 4), ...change, object })
    expect(found).toEqual({ kind: 'tooNarrow', face, shows, showsAbove })
    // Stiles that just meet leave no opening either; a nanometre more does.
    const [along, wanted] =
      face === 'end' ? (['width', inches(2)] as const) : (['length', inches(1)] as const)
    const meeting = { clearance: ZERO, object: { ...object, [along]: wanted } }
    expect(obstacle(meeting)).toMatchObject({ kind: 'tooNarrow', shows: showsAbove })
    const wider = { ...object, [along]: (wanted + 1) as Length }
    expect(obstacle({ ...meeting, object: wider })).toBeUndefined()
  })

  it.each([
    ['length', { length: inches(5, 2), width: inches(17) }, inches(3)],
    ['width', { length: inches(17), width: inches(3, 4) }, inches(1)],
  ] as const)('finds no room for two blocks along the inside %s', (along, size, inside) => {
    const object = { shape: 'rectangle', ...size } as const
    const sheet = inches(9, 8)
    const found = obstacle({ corner: 'cleated', clearance: ZERO, object, sheet })
    expect(found).toEqual({ kind: 'noRoomForBlocks', along, inside })
    expect(obstacle({ corner: 'butted', clearance: ZERO, object, sheet })).toBeUndefined()
    const touching = { ...object, [along]: inside }
    expect(obstacle({ corner: 'cleated', clearance: ZERO, object: touching, sheet })).toBeUndefined()
  })

  it('finds a strip too wide for the opening it would cross', () => {
    const low = { height: inches(4), braces: 'all' as const }
    expect(obstacle(low)).toEqual({ kind: 'noRoomForBrace', face: 'end', widthBelow: inches(1) })
    expect(obstacle({ ...low, braces: 'sides' })).toEqual({
      kind: 'noRoomForBrace',
      face: 'side',
      widthBelow: inches(1),
    })
    expect(obstacle({ ...low, braces: 'none' })).toBeUndefined()
  })

  it.each(['height', 'sheet', 'strip', 'width'] as const)('refuses a %s of nothing or less', (what) => {
    for (const value of [0, -1, Number.NaN] as Length[]) {
      expect(obstacle({ [what]: value })).toEqual({ kind: 'notPositive', what, value })
    }
  })

  it('refuses an object of nothing', () => {
    const rectangle = { shape: 'rectangle', length: inches(1), width: ZERO } as const
    expect(obstacle({ object: rectangle })).toEqual({ kind: 'notPositive', what: 'object', value: 0 })
    expect(obstacle({ object: { shape: 'round', diameter: ZERO } })).toMatchObject({ what: 'object' })
  })

  it.each(['clearance', 'fit', 'kerf', 'grooves'] as const)(
    'takes a %s of nothing but never less',
    (what) => {
      expect(obstacle({ [what]: 0 })).toBeUndefined()
      expect(obstacle({ [what]: -1 })).toEqual({ kind: 'negative', what, value: -1 })
    },
  )

  it('answers any spec at all without throwing', () => {
    const size = fc.oneof(
      fc.integer({ min: -5, max: 60 }).map((count) => millimetres(count)),
      fc.constant(ZERO),
    )
    const wild = fc.record({
      object: fc.oneof(
        fc.record({ shape: fc.constant('rectangle' as const), length: size, width: size }),
        fc.record({ shape: fc.constant('round' as const), diameter: size }),
      ),
      height: size,
      clearance: size,
      sheet: size,
      strip: size,
      width: size,
      corner: fc.constantFrom('captured' as const, 'cleated' as const, 'butted' as const),
      braces: fc.constantFrom('ends' as const, 'sides' as const, 'all' as const, 'none' as const),
      grooves: fc.integer({ min: -1, max: 4 }),
      fit: size,
      kerf: size,
    })
    fc.assert(
      fc.property(wild, (spec) => {
        const plan = planSurround(spec)
        if (plan.status === 'impossible') return
        expect(plan.parts.every((part) => part.length > 0 && part.width > 0 && part.thickness > 0)).toBe(true)
      }),
      { numRuns: 2000 },
    )
  })
})

describe('planSurround, warnings', () => {
  it('finds a lip under an eighth of an inch small', () => {
    const least = inches(1, 8)
    expect(planned({ ...plain, width: inches(9, 8) }).warnings).toEqual([])
    const width = (inches(9, 8) - 1) as Length
    expect(planned({ ...plain, width }).warnings).toEqual([{ kind: 'lipSmall', lip: least - 1, least }])
  })

  it('finds a captured corner without play', () => {
    expect(planned({ ...plain, fit: ZERO }).warnings).toEqual([{ kind: 'noFit' }])
    expect(planned({ ...plain, fit: ZERO, corner: 'butted' }).warnings).toEqual([])
  })

  it('finds corner blocks in the way of the object', () => {
    const cleated = { ...plain, corner: 'cleated' as const }
    expect(planned({ ...cleated, clearance: inches(1, 2) }).warnings).toEqual([])
    expect(planned({ ...cleated, clearance: inches(1, 4) }).warnings).toEqual([
      { kind: 'blockMeetsObject', clearanceAtLeast: inches(1, 2) },
    ])
  })

  it('lets a round object stand clear of blocks that a square one would meet', () => {
    const cleated = { ...plain, corner: 'cleated' as const, clearance: ZERO }
    expect(planned({ ...cleated, object: { shape: 'round', diameter: inches(13) } }).warnings).toEqual([])
  })
})
