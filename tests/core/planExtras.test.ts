import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inches, type Length, ZERO } from '../../src/core/measure/length.ts'
import { type Plan, planSurround, type Spec } from '../../src/core/plan.ts'
import { drives } from '../../src/core/plan/drive.ts'
import { layJoints } from '../../src/core/plan/joints.ts'
import { cutoutsArea, type Place } from '../../src/core/plan/part.ts'
import { fastenJoint } from '../../src/core/quantities/fastener.ts'
import { weighPlan } from '../../src/core/quantities/weight.ts'
import { type Assembly, assemble } from './panelling/assembly.ts'
import { band, type Opening } from './panelling/openings.ts'
import { type Corner, dot } from './panelling/polygons.ts'
import {
  bounds,
  collisions,
  contact,
  move,
  overlap,
  type Point,
  type Solid,
  solid,
  sweep,
  volumeIn,
} from './panelling/solids.ts'
import { lengths, plain, richSpecs } from './panelling/specs.ts'
import { fasteners } from './quantities/shippedFasteners.ts'

/** Runs a check on many boxes with whatever may be asked of them; those that cannot be built are passed over. */
function holds(check: (plan: Plan, built: Assembly) => void, change: Partial<Spec> = {}): void {
  let built = 0
  fc.assert(
    fc.property(richSpecs, (spec) => {
      const plan = planSurround({ ...spec, ...change })
      if (plan.status === 'impossible') return
      built += 1
      check(plan, assemble(plan))
    }),
    { numRuns: 120 },
  )
  expect(built).toBeGreaterThan(40)
}

const planned = (change: Partial<Spec>): Plan => {
  const plan = planSurround({ ...plain, ...change })
  if (plan.status === 'impossible') throw new Error(plan.obstacle.kind)
  return plan
}

const volumeOf = (one: Solid): bigint => volumeIn(one, one)
const sum = (amounts: readonly bigint[]): bigint => amounts.reduce((total, each) => total + each, 0n)

/** Cubic nanometres by the parts list, round holes and braces left out. */
const listedVolume = ({ parts }: Plan): bigint =>
  sum(
    parts
      .filter(({ name }) => !name.endsWith('brace'))
      .map(({ count, length, width, thickness, cutouts = [] }) => {
        const cut = cutouts
          .filter(({ round }) => !round)
          .map(({ parts: of, at, size }) => BigInt(of * at.length) * BigInt(size.along) * BigInt(size.across))
        return (BigInt(count) * BigInt(length) * BigInt(width) - sum(cut)) * BigInt(thickness)
      }),
  )

describe('a whole box built as solids', () => {
  it('has no two parts in the same place', () => {
    holds((_, { all }) => expect(collisions(all, all)).toEqual([]))
  })

  it('is made of just the volume that its parts list comes to', () => {
    holds((plan, { all }) => expect(sum(all.map(volumeOf))).toBe(listedVolume(plan)))
  })

  it('weighs what it is drawn with, each piece that is carried and the whole', () => {
    const densities = { sheet: 577, strip: 470 }
    const grams = (solids: readonly Solid[]) =>
      solids.reduce(
        (all, one) =>
          all +
          (Number(volumeOf(one)) / 1e18) *
            (one.name.endsWith('panel') ? densities.sheet : densities.strip) *
            1e-6,
        0,
      )
    holds((plan, { ends, sides, lid, bottom, all }) => {
      const bare = { ...plan, parts: plan.parts.filter(({ name }) => !name.endsWith('brace')) }
      const weight = weighPlan(bare, densities)
      const drained = plan.bottom?.drain ? cutoutsArea({ cutouts: [plan.bottom.drain] }) : 0
      const holes = (drained * (plan.spec.sheet / 1e6) * densities.sheet) / 1e6
      expect(weight.total / (grams(all) - holes)).toBeCloseTo(1, 9)
      const of = (name: string) => weight.carried.find((each) => each.name === name)
      if (plan.lid) expect(of('lid')?.each).toBeCloseTo(grams(lid), 6)
      if (plan.bottom) expect(of('bottom')?.each).toBeCloseTo(grams(bottom) - holes, 6)
      if (plan.faces[2]) expect(of('front')?.each).toBeCloseTo(grams(sides[0]), 6)
      else expect((of('side')?.each ?? 0) * 2).toBeCloseTo(grams([...sides[0], ...sides[1]]), 5)
      expect((of('end')?.each ?? 0) * 2).toBeCloseTo(grams([...ends[0], ...ends[1]]), 5)
    })
  })

  it('touches where its joints say, over just that area', () => {
    holds((plan, { all }) => {
      const told = new Map<string, bigint>()
      const drawn = layJoints({ ...plan, faces: withoutBraces(plan) })
      for (const { part, onto, count, length, width } of drawn) {
        if (part === 'corner bracket') continue
        const pair = [part, onto].sort().join(' + ')
        told.set(pair, (told.get(pair) ?? 0n) + BigInt(count) * BigInt(length) * BigInt(width))
      }
      const found = contacts(all)
      for (const [pair, area] of told) expect([pair, found.get(pair)]).toEqual([pair, area])
    })
  })

  it('is as large outside as it says, an overlapping lid as much larger as its gap and rim', () => {
    holds((plan, { ends, sides, lid }) => {
      const { low, high } = bounds([...ends, ...sides].flat())
      expect([high[0] - low[0], high[1] - low[1]]).toEqual([plan.outside.length, plan.outside.width])
      expect([low[2], high[2]]).toEqual([0, plan.spec.height])
      if (plan.lid?.kind !== 'overlapping') return
      const over = 2 * (plan.lid.gap + plan.spec.strip)
      const rim = bounds(lid)
      expect(rim.high[0] - rim.low[0]).toBe(plan.outside.length + over)
      expect(rim.high[1] - rim.low[1]).toBe(plan.outside.width + over)
    })
  })

  it('packs as flat as its pieces are thick', () => {
    const thick = (solids: readonly Solid[], axis: 0 | 1 | 2): number => {
      if (solids.length === 0) return 0
      const { low, high } = bounds(solids)
      return high[axis] - low[axis]
    }
    holds((plan, { ends, sides, lid, bottom }) => {
      // A captured corner stile hooks round the piece beneath it, which takes no height of its own.
      if (plan.spec.corner === 'captured') return
      const stack =
        thick(ends[0], 0) +
        thick(ends[1], 0) +
        thick(sides[0], 1) +
        thick(sides[1], 1) +
        thick(lid, 2) +
        thick(bottom, 2)
      expect(plan.flatStack).toBe(stack)
    })
  })
})

const withoutBraces = ({ faces }: Plan): Plan['faces'] => {
  const bare = faces.map(({ brace: _, ...face }) => face)
  const [end, side, ...front] = bare
  if (!end || !side) throw new Error('no faces')
  return [end, side, ...front]
}

function contacts(all: readonly Solid[]): ReadonlyMap<string, bigint> {
  const found = new Map<string, bigint>()
  for (const [index, one] of all.entries())
    for (const other of all.slice(index + 1)) {
      const area = contact(one, other)
      const pair = [one.name, other.name].sort().join(' + ')
      if (area > 0n) found.set(pair, (found.get(pair) ?? 0n) + area)
    }
  return found
}

const WAYS: readonly Point[] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
]
const far = 100_000_000_000
const scaled = (way: Point, by: number): Point => [way[0] * by, way[1] * by, way[2] * by]

/** The ways in which a body can be drawn right off the others in one straight pull. */
const waysOff = (body: readonly Solid[], others: readonly Solid[]): readonly string[] =>
  WAYS.filter(
    (way) => !body.some((one) => others.some((other) => overlap(sweep(one, scaled(way, far)), other))),
  ).map(String)

/** The ways in which a body can be shifted by `by` and meets nothing. */
const waysToShift = (body: readonly Solid[], others: readonly Solid[], by: number): readonly string[] =>
  WAYS.filter(
    (way) =>
      collisions(
        body.map((one) => move(one, scaled(way, by))),
        others,
      ).length === 0,
  ).map(String)

describe('halved corners', () => {
  const bare = { corner: 'halved', lid: undefined, bottom: undefined } as const

  it('let a side be lifted straight off both ends, and no other way', () => {
    holds((_, { ends, sides: [front, back] }) => {
      expect(waysOff(front, [...ends.flat(), ...back])).toEqual(['0,0,1'])
      expect(waysOff(back, [...ends.flat(), ...front])).toEqual(['0,0,1'])
      expect(waysOff(ends[0], [...ends[1], ...front, ...back])).toEqual(['0,0,-1'])
    }, bare)
  })

  it('hold a side by its slots in every level way beyond the play', () => {
    holds((plan, { ends, sides: [front] }) => {
      expect(waysToShift(front, ends.flat(), plan.spec.fit + 1)).toEqual(['0,0,1'])
    }, bare)
  })

  it('leave half the play on either side of the sheet, to a nanometre, and stand every panel on the floor', () => {
    holds((plan, { ends, sides }) => {
      const half = Math.floor(plan.spec.fit / 2)
      for (const way of WAYS.filter(([, , z]) => z === 0))
        expect(
          collisions(
            sides[0].map((one) => move(one, scaled(way, half))),
            ends.flat(),
          ),
        ).toEqual([])
      for (const panel of [...ends, ...sides]) expect(bounds(panel).low[2]).toBe(0)
    }, bare)
  })

  // Worked on paper: 17 x 13 in with 1 in a side, 15 in high, sheet 1/2, strip 1/2 x 1 1/2, play 1/32.
  it('run past each other by a strip width and are slotted to half the height', () => {
    const plan = planned({ corner: 'halved' })
    const [end, side] = plan.parts
    expect([end?.length, side?.length]).toEqual([inches(15 + 2 * 2), inches(19 + 2 * 2)])
    expect(plan.halving).toEqual({ tail: inches(3, 2), slot: inches(17, 32), slack: inches(1, 64) })
    expect(end?.cutouts?.[0]).toMatchObject({
      kind: 'slot',
      parts: 2,
      size: { along: inches(17, 32), across: inches(15, 2) },
    })
    // Tail and sheet are 2 in; the slot begins a sixty-fourth before the sheet, from either end.
    const starts = side?.cutouts?.[0]?.at.map(({ along }) => along)
    expect(starts).toEqual([inches(2 * 64 - 33, 64), inches(23 * 64 - 2 * 64 - 1, 64)])
  })

  it('warn where there is no play at all', () => {
    expect(planned({ corner: 'halved', fit: ZERO }).warnings).toEqual([{ kind: 'noFit' }])
  })
})

describe('a lid', () => {
  it('lifts straight off and no other way', () => {
    let lids = 0
    holds((_, { lid, ends, sides, bottom }) => {
      if (lid.length === 0) return
      lids += 1
      expect(waysOff(lid, [...ends, ...sides, bottom].flat())).toEqual(['0,0,1'])
    })
    expect(lids).toBeGreaterThan(10)
  })

  it('lies on something all round: on its ledgers, or on the walls', () => {
    holds((plan, { lid, all }) => {
      if (!plan.lid) return
      const resting = all.filter((one) => !lid.includes(one))
      expect(waysToShift(lid, resting, 1)).not.toContain('0,0,-1')
    })
  })

  it('stays out of a box with a lower front, and takes no notch in a rim', () => {
    const low = planSurround({ ...plain, front: { height: inches(10) }, lid: { kind: 'inset' } })
    expect(low).toMatchObject({ obstacle: { kind: 'lidOnSlope', height: plain.height } })
    const rim = planSurround({ ...plain, lid: { kind: 'overlapping', handle: 'notch' } })
    expect(rim).toMatchObject({ obstacle: { kind: 'notchInRim' } })
  })

  it('has its gap on every side and no more', () => {
    holds((plan, { lid, ends, sides, bottom }) => {
      if (!plan.lid) return
      const others = [...ends, ...sides, bottom].flat()
      for (const way of WAYS.filter(([, , z]) => z === 0)) {
        const by = (more: number) =>
          collisions(
            lid.map((one) => move(one, scaled(way, (plan.lid?.gap ?? 0) + more))),
            others,
          ).length
        expect([by(0), by(1) > 0]).toEqual([0, true])
      }
    })
  })
})

describe('a bottom', () => {
  it('comes out as it went in: upward past no ledgers or blocks, on feet always by lifting the box off', () => {
    holds(
      (plan, { bottom, ends, sides }) => {
        if (!plan.bottom) return
        const ways = waysOff(bottom, [...ends, ...sides].flat())
        const shutIn = plan.lid?.kind === 'inset' || plan.spec.corner === 'cleated'
        expect(ways.includes('0,0,1')).toBe(!shutIn)
        expect(ways.includes('0,0,-1')).toBe(plan.bottom.on === 'feet')
      },
      { gap: inches(1, 16) },
    )
  })

  it('drains clear of cleats and feet, no two holes nearer than half a hole, none further apart than asked', () => {
    let drained = 0
    holds((plan, { bottom, ends, sides }) => {
      const drain = plan.bottom?.drain
      const asked = plan.spec.bottom?.drain
      if (!plan.bottom || !drain || !asked) return
      drained += 1
      const [x, y] = [
        (plan.inside.length - plan.bottom.length) / 2,
        (plan.inside.width - plan.bottom.width) / 2,
      ]
      const radius = drain.size.along / 2
      const holes = drain.at.map(({ along, across }) =>
        // A nanometre inward, for centres and radii are rounded.
        solid(
          'hole',
          [x + along - radius + 1, y + across - radius + 1, -1],
          [drain.size.along - 2, drain.size.along - 2, plan.spec.width + plan.spec.strip + 2],
        ),
      )
      const strips = [...ends, ...sides, bottom].flat().filter(({ name }) => /cleat|foot/u.test(name))
      expect(collisions(holes, strips)).toEqual([])
      const gaps = drain.at.flatMap((one, index) =>
        drain.at.slice(index + 1).map((other) => apart(one, other)),
      )
      for (const gap of gaps) expect(gap).toBeGreaterThanOrEqual(1.5 * drain.size.along - 2)
      expect(Math.max(drain.spacing.along, drain.spacing.across)).toBeLessThanOrEqual(asked.spacing)
    })
    expect(drained).toBeGreaterThan(5)
  })

  it('says the widest drain hole that will do, and it does', () => {
    fc.assert(
      fc.property(richSpecs, lengths(20, 200), lengths(40, 300), (spec, diameter, spacing) => {
        const drain = (wide: Length) =>
          planSurround({
            ...spec,
            lid: undefined,
            bottom: { on: 'feet', drain: { diameter: wide, spacing } },
          })
        const plan = drain(diameter)
        if (plan.status === 'planned' || plan.obstacle.kind !== 'drainWide') return
        expect(drain(plan.obstacle.diameterAtMost).status === 'planned' || spec.cord !== undefined).toBe(true)
        const wider = drain((plan.obstacle.diameterAtMost + 1) as Length)
        expect(wider).toMatchObject({ obstacle: { kind: 'drainWide' } })
      }),
    )
  })
})

const apart = (one: Place, other: Place): number =>
  Math.hypot(one.along - other.along, one.across - other.across)

describe('a cord notch', () => {
  it('is clear of the frame outside, of blocks, strips, bottom and lid inside, and of a brace', () => {
    let cut = 0
    holds((plan, { ends, sides, all }) => {
      const notch = plan.cord?.notch
      const place = notch?.at[0]
      if (!plan.cord || !notch || !place) return
      cut += 1
      const { sheet, strip } = plan.spec
      const assembly = plan.cord.face === 'end' ? ends[0] : plan.cord.face === 'front' ? sides[0] : sides[1]
      const panel = bounds(assembly.filter(({ name }) => name.endsWith('panel')))
      // From the face of the frame to as deep inside as a strip is thick.
      const depth = strip + sheet + strip
      const hole =
        plan.cord.face === 'end'
          ? solid(
              'notch',
              [-sheet - strip, panel.low[1] + place.along, place.across],
              [depth, notch.size.along, notch.size.across],
            )
          : solid(
              'notch',
              [
                panel.low[0] + place.along,
                plan.cord.face === 'front' ? -sheet - strip : plan.inside.width - strip,
                place.across,
              ],
              [notch.size.along, depth, notch.size.across],
            )
      expect(collisions([hole], all)).toEqual([])
      expect(isUnderBrace(plan)).toBe(true)
    })
    expect(cut).toBeGreaterThan(10)
  })

  it('says how high it may be, and that does', () => {
    let said = 0
    fc.assert(
      fc.property(richSpecs, lengths(10, 80), lengths(50, 900), (spec, width, height) => {
        const cut = (high: Length) => planSurround({ ...spec, cord: { face: 'side', width, height: high } })
        const plan = cut(height)
        if (plan.status === 'planned' || plan.obstacle.kind !== 'noRoomForCord') return
        const { heightAtMost, widthAtMost } = plan.obstacle
        if (heightAtMost <= 0 || width > widthAtMost) return
        said += 1
        expect(cut(heightAtMost).status).toBe('planned')
        expect(cut((heightAtMost + 1) as Length).status).toBe('impossible')
      }),
    )
    expect(said).toBeGreaterThan(10)
  })
})

/** Every corner of the notch lies on or under the lower edge of the brace that crosses its panel, if one does. */
function isUnderBrace(plan: Plan): boolean {
  const face = plan.faces.find(({ name }) => name === plan.cord?.face)
  const notch = plan.cord?.notch
  const place = notch?.at[0]
  if (!face?.brace || !notch || !place) return true
  const opening: Opening = { ...face.opening, strip: plan.spec.width }
  const [, lower] = band(opening, face.brace.slope, 'right')
  const corners: readonly Corner[] = [0, notch.size.along].flatMap((x) =>
    [0, notch.size.across].map(
      (z): Corner => [place.along + x - face.covered, place.across + z - plan.spec.width],
    ),
  )
  return corners.every((corner) => dot(lower.normal, corner) >= lower.bound - 2)
}

describe('a front of its own', () => {
  it('that is as the back is makes the same box', () => {
    fc.assert(
      fc.property(richSpecs, (spec) => {
        const [without, same] = [
          planSurround({ ...spec, front: undefined }),
          planSurround({ ...spec, front: {} }),
        ]
        if (without.status === 'impossible' || same.status === 'impossible') {
          expect(without.status).toBe(same.status)
          return
        }
        expect(listedVolume(same)).toBe(listedVolume(without))
        const area = (plan: Plan) =>
          layJoints(plan).reduce(
            (all, { count, length, width }) => all + count * (length / 1e6) * (width / 1e6),
            0,
          )
        expect(area(same) / area(without)).toBeCloseTo(1, 9)
        expect(same.outside).toEqual(without.outside)
      }),
    )
  })

  it('may be lower, never higher, and keeps a stile between its rails', () => {
    const front = (height: Length) => planSurround({ ...plain, front: { height } })
    expect(front((plain.height + 1) as Length)).toMatchObject({
      obstacle: { kind: 'frontTall', height: plain.height },
    })
    const low = front(inches(3))
    expect(low).toMatchObject({ obstacle: { kind: 'tooLow', face: 'front', heightAbove: inches(49, 16) } })
    expect(front((inches(49, 16) + 1) as Length).status).toBe('planned')
  })

  it('has a brace and grooves of its own', () => {
    const plan = planned({ braces: 'sides', grooves: 5, front: { braced: false, grooves: 0 } })
    expect(plan.faces.map(({ name, count, grooves, brace }) => [name, count, grooves, !!brace])).toEqual([
      ['end', 2, 5, false],
      ['side', 1, 5, true],
      ['front', 1, 0, false],
    ])
  })
})

describe('a bigger box', () => {
  it('never takes less material for being higher', () => {
    fc.assert(
      fc.property(richSpecs, lengths(1, 200), (spec, more) => {
        const bare = { ...spec, cord: undefined }
        const low = planSurround(bare)
        const high = planSurround({ ...bare, height: (spec.height + more) as Length })
        if (low.status === 'impossible' || high.status === 'impossible') return
        expect(listedVolume(high) > listedVolume(low)).toBe(true)
      }),
    )
  })

  it('takes just the lid and the bottom more than without, beyond what they take off the blocks', () => {
    fc.assert(
      fc.property(richSpecs, (spec) => {
        const plan = planSurround(spec)
        const bare = planSurround({ ...spec, lid: undefined, bottom: undefined, cord: undefined })
        if (plan.status === 'impossible' || bare.status === 'impossible') return
        const names = new Set(bare.parts.map(({ name }) => name))
        const own = plan.parts.filter(({ name }) => names.has(name) && !name.endsWith('block'))
        const were = bare.parts.filter(({ name }) => !name.endsWith('block'))
        const sizes = (parts: Plan['parts']) =>
          parts.map(({ name, count, length, width }) => [name, count, length, width])
        expect(sizes(own)).toEqual(sizes(were))
      }),
    )
  })
})

describe('fastened', () => {
  it('no point comes through, whatever the thicknesses', () => {
    const grid = [6, 9, 12, 15, 18, 24].flatMap((sheet) =>
      [6, 12, 18, 25].map((strip) => [sheet, strip] as const),
    )
    let driven = 0
    for (const [sheet, strip] of grid)
      for (const corner of ['cleated', 'bracketed', 'halved', 'captured'] as const)
        for (const extras of [
          { lid: { kind: 'inset' }, bottom: { on: 'cleats' } },
          { lid: { kind: 'overlapping', handle: 'strip' }, bottom: { on: 'feet' } },
        ] as const) {
          const millimetres = (amount: number) => (amount * 1_000_000) as Length
          const plan = planSurround({
            ...plain,
            corner,
            ...extras,
            sheet: millimetres(sheet),
            strip: millimetres(strip),
            width: millimetres(sheet + strip + 10),
          })
          if (plan.status === 'impossible') continue
          for (const joint of layJoints(plan))
            for (const { held, receiver, into, width } of drives(joint, plan)) {
              const kind = joint.fixing === 'screwed' ? 'screw' : 'brad'
              const glued = joint.fixing === 'glued'
              const jointLength = joint.holes ? plan.panelHeight : joint.length
              const asked = { kind, region: 'EU', held, receiver, into, width, glued, jointLength } as const
              const found = fastenJoint(asked, fasteners)
              if (found.status === 'impossible') continue
              driven += 1
              expect(found.size.length).toBeLessThanOrEqual(held + receiver - fasteners.rules.tipShort)
              expect(held + receiver).toBeLessThanOrEqual(plan.outside.length)
            }
        }
    expect(driven).toBeGreaterThan(500)
  })

  it('a bracket is screwed into no more than is drawn behind it: panel, and rail where that is free', () => {
    holds(
      (plan, { ends, bottom }) => {
        const joint = layJoints(plan).find(({ part }) => part === 'corner bracket')
        const receiver = joint && drives(joint, plan)[0]?.receiver
        if (receiver === undefined) return
        const { sheet, strip, width } = plan.spec
        const behind = solid(
          'behind',
          [-receiver, 0, 0],
          [receiver, 1, receiver === sheet ? plan.panelHeight : width],
        )
        const filled = sum(ends[0].map((one) => volumeIn(one, behind)))
        // With a bottom the bracket stands elsewhere, but the panel is behind it wherever that is.
        expect(filled).toBe(volumeOf(behind))
        expect(receiver).toBe(plan.bottom !== undefined || plan.lid?.kind === 'inset' ? sheet : sheet + strip)
        expect(bottom.length === 0 || plan.bottom !== undefined).toBe(true)
      },
      { corner: 'bracketed', cord: undefined },
    )
  })
})
