import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Plan, planSurround, type Spec } from '../../src/core/plan.ts'
import { layJoints } from '../../src/core/plan/joints.ts'
import { type Assembly, assemble } from './panelling/assembly.ts'
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
import { specs } from './panelling/specs.ts'

/** Runs a check on the assembled box of many plans; every spec from `specs` must have a plan. */
function holds(check: (plan: Plan, built: Assembly) => void, corner?: Spec['corner']): void {
  fc.assert(
    fc.property(specs, (spec) => {
      const plan = planSurround(corner ? { ...spec, corner } : spec)
      if (plan.status === 'impossible') return fc.pre(plan.obstacle.kind === 'noRoomForBlocks')
      check(plan, assemble(plan))
    }),
    { numRuns: 400 },
  )
}

const far = 100_000_000_000
const ring = (built: Assembly): readonly Solid[] => built.all.filter(({ name }) => name !== 'corner block')

describe('a plan built as solids', () => {
  it('has no two parts in the same place', () => {
    holds((_, { all }) => expect(collisions(all, all)).toEqual([]))
  })

  it('fills exactly the outside that it names, with the parts listed and no others', () => {
    holds((plan, { all }) => {
      const { low, high } = bounds(all)
      expect([high[0] - low[0], high[1] - low[1]]).toEqual([plan.outside.length, plan.outside.width])
      expect([low[2], high[2]]).toEqual([0, plan.spec.height])
    })
  })

  it('leaves the object its clearance on every side', () => {
    holds((plan, built) => {
      const { object, clearance } = plan.spec
      const [length, width] =
        object.shape === 'round' ? [object.diameter, object.diameter] : [object.length, object.width]
      const room = solid(
        'object and clearance',
        [0, 0, 0],
        [length + 2 * clearance, width + 2 * clearance, plan.panelHeight],
      )
      expect(collisions([room], ring(built))).toEqual([])
      // Room to spare would be as wrong: a nanometre more on any side meets a panel.
      for (const by of [
        [1, 0, 0],
        [-1, 0, 0],
        [0, 1, 0],
        [0, -1, 0],
      ] as const) {
        expect(collisions([move(room, by)], ring(built)).length).toBeGreaterThan(0)
      }
    })
  })

  it('closes all four corners at the height of the stiles and at both rails', () => {
    holds((plan, { all }) => {
      const wall = plan.spec.sheet + plan.spec.strip
      const { length, width } = plan.inside
      const heights = [0, plan.panelHeight / 2, plan.panelHeight - 1].map(Math.floor)
      for (const [x, y] of [
        [-wall, -wall],
        [length, -wall],
        [-wall, width],
        [length, width],
      ] as const) {
        for (const z of heights) {
          const corner = solid('corner', [x, y, z], [wall, wall, 1])
          const filled = all.reduce((volume, one) => volume + volumeIn(one, corner), 0n)
          expect(filled).toBe(BigInt(wall) * BigInt(wall))
        }
      }
    })
  })

  it('shows on each face the opening that a brace is laid in, that far from the end of the panel', () => {
    holds((plan, { ends, sides, all }) => {
      const [end, side] = plan.faces
      expect(openingOf(plan, all, 1, (one) => one.low[0] < 0 && one.high[0] === -plan.spec.sheet)).toEqual(
        end.opening.width,
      )
      expect(openingOf(plan, all, 0, ({ low, high }) => low[1] < 0 && high[1] === -plan.spec.sheet)).toEqual(
        side.opening.width,
      )
      const rails = ends[0].filter(({ name }) => name === 'end rail')
      expect((rails[1]?.low[2] ?? 0) - (rails[0]?.high[2] ?? 0)).toBe(end.opening.height)
      expect(side.opening.height).toBe(end.opening.height)
      const panel = sides[0].find(({ name }) => name === 'side panel') as Solid
      const stile = all.find(
        ({ name, low, high }) => /^(corner|side) stile$/u.test(name) && low[0] < 0 && high[1] <= 0,
      ) as Solid
      expect(stile.high[0] - panel.low[0]).toBe(side.covered)
      const endPanel = ends[0].find(({ name }) => name === 'end panel') as Solid
      const endStile = ends[0].find(({ name }) => name === 'end stile') as Solid
      expect(endStile.high[1] - endPanel.low[1]).toBe(end.covered)
    })
  })

  it('touches where its joints say, over just that area', () => {
    holds((plan, { all }) => {
      const told = new Map<string, bigint>()
      for (const { part, onto, count, length, width } of layJoints({ ...plan, faces: withoutBraces(plan) })) {
        const pair = [part, onto].sort().join(' + ')
        told.set(pair, (told.get(pair) ?? 0n) + BigInt(count) * BigInt(length) * BigInt(width))
      }
      const found = contacts(all)
      for (const [pair, area] of told) expect([pair, found.get(pair)]).toEqual([pair, area])
      const loose = [...found.keys()].filter((pair) => !told.has(pair)).sort()
      expect(LOOSE[plan.spec.corner]).toEqual(expect.arrayContaining(loose))
    })
  })
})

/** What touches but is left out of the joints: stile ends, and what has to come apart. */
const LOOSE: Readonly<Record<Spec['corner'], readonly string[]>> = {
  captured: [
    'corner stile + end rail',
    'corner stile + side panel',
    'corner stile + side rail',
    'end panel + side panel',
    'end panel + side rail',
    'end rail + end stile',
    'end rail + side rail',
    'end stile + side rail',
  ],
  cleated: [
    'corner block + corner block',
    'end panel + side panel',
    'end panel + side rail',
    'end panel + side stile',
    'end rail + end stile',
    'end rail + side rail',
    'end stile + side stile',
    'side rail + side stile',
  ],
  butted: ['end rail + end stile', 'side rail + side stile'],
  halved: ['end panel + side panel', 'end rail + end stile', 'side rail + side stile'],
  bracketed: [],
}

const withoutBraces = ({ faces: [end, side] }: Plan): Plan['faces'] => {
  const { brace: _, ...plainEnd } = end
  const { brace: __, ...plainSide } = side
  return [plainEnd, plainSide]
}

function contacts(all: readonly Solid[]): ReadonlyMap<string, bigint> {
  const found = new Map<string, bigint>()
  for (const [index, one] of all.entries()) {
    for (const other of all.slice(index + 1)) {
      const area = contact(one, other)
      const pair = [one.name, other.name].sort().join(' + ')
      if (area > 0n) found.set(pair, (found.get(pair) ?? 0n) + area)
    }
  }
  return found
}

/** Clear width at half height of the strips in one outer layer, along x (0) or y (1). */
function openingOf(plan: Plan, all: readonly Solid[], axis: 0 | 1, layer: (one: Solid) => boolean): number {
  const middle = plan.panelHeight / 2
  const stiles = all.filter(
    (one) => /stile$/u.test(one.name) && layer(one) && one.low[2] < middle && one.high[2] > middle,
  )
  const centre = (axis === 0 ? plan.inside.length : plan.inside.width) / 2
  const before = Math.max(...stiles.filter(({ high }) => high[axis] < centre).map(({ high }) => high[axis]))
  const after = Math.min(...stiles.filter(({ low }) => low[axis] > centre).map(({ low }) => low[axis]))
  return after - before
}

const WAYS: readonly Point[] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
]

const scaled = (way: Point, by: number): Point => [way[0] * by, way[1] * by, way[2] * by]

/** The ways in which a body can be drawn right off the others in one straight pull. */
const waysOff = (body: readonly Solid[], others: readonly Solid[]): readonly string[] =>
  WAYS.filter(
    (way) => !body.some((one) => others.some((other) => overlap(sweep(one, scaled(way, far)), other))),
  ).map(String)

/** The ways in which a body can be shifted by a hair more than the fit. */
const waysToShift = (body: readonly Solid[], others: readonly Solid[], fit: number): readonly string[] =>
  WAYS.filter(
    (way) =>
      collisions(
        body.map((one) => move(one, scaled(way, fit + 1))),
        others,
      ).length === 0,
  ).map(String)

describe('a captured corner', () => {
  it('lets an end come off straight outward and in no other way', () => {
    holds((plan, { ends: [left, right], sides: [front, back] }) => {
      expect(waysOff(left, [...right, ...front, ...back])).toEqual(['-1,0,0'])
      expect(waysToShift(left, [...right, ...front, ...back], plan.fit)).toEqual(['-1,0,0'])
      expect(waysOff(right, [...left, ...front, ...back])).toEqual(['1,0,0'])
    }, 'captured')
  })

  it('locks both sides in every way while both ends are on, and frees them once one is off', () => {
    holds((plan, { ends: [left, right], sides: [front, back] }) => {
      expect(waysToShift(front, [...left, ...right, ...back], plan.fit)).toEqual([])
      expect(waysToShift(back, [...left, ...right, ...front], plan.fit)).toEqual([])
      expect(waysOff(front, [...right, ...back])).toEqual(['-1,0,0'])
    }, 'captured')
  })

  it('has just the fit between each end of a corner stile and the rails', () => {
    holds((plan, { ends, sides }) => {
      const stile = ends[0].find(({ name }) => name === 'corner stile') as Solid
      const rails = sides[0].filter(({ name }) => name === 'side rail')
      expect(stile.low[2] - (rails[0]?.high[2] ?? 0)).toBe(plan.fit)
      expect((rails[1]?.low[2] ?? 0) - stile.high[2]).toBe(plan.fit)
    }, 'captured')
  })

  it('covers as much of the side panel as its lip', () => {
    holds((plan, { ends, sides }) => {
      const panel = sides[0].find(({ name }) => name === 'side panel') as Solid
      const stile = ends[0].find(({ name, high }) => name === 'corner stile' && high[1] <= 0) as Solid
      expect(stile.high[0] - panel.low[0]).toBe(plan.lip)
      expect(contact(stile, panel)).toBe(BigInt(plan.lip) * BigInt(plan.cornerStileLength))
    }, 'captured')
  })
})

describe('a cleated corner', () => {
  it('lets either end be drawn straight off, or slid up or down, once its screws are out', () => {
    holds((_, { ends: [left, right], sides: [front, back] }) => {
      expect(waysOff(left, [...right, ...front, ...back])).toEqual(['-1,0,0', '0,0,1', '0,0,-1'])
      expect(waysOff(right, [...left, ...front, ...back])).toEqual(['1,0,0', '0,0,1', '0,0,-1'])
    }, 'cleated')
  })

  it('warns of the blocks exactly when they reach into the object', () => {
    let met = 0
    let clear = 0
    holds((plan, { all }) => {
      const meets = all.some((one) => one.name === 'corner block' && reaches(plan, one))
      if (meets) met += 1
      else clear += 1
      expect(plan.warnings.some(({ kind }) => kind === 'blockMeetsObject')).toBe(meets)
    }, 'cleated')
    expect(Math.min(met, clear)).toBeGreaterThan(20)
  })

  it('names a clearance at which the blocks just miss the object, and a hair less does not do', () => {
    let named = 0
    holds((plan) => {
      const warning = plan.warnings.find(({ kind }) => kind === 'blockMeetsObject')
      if (warning?.kind !== 'blockMeetsObject') return
      named += 1
      const meets = (clearance: number) => {
        const other = planSurround({ ...plan.spec, clearance: clearance as Spec['clearance'] })
        if (other.status === 'impossible') throw new Error(other.obstacle.kind)
        return assemble(other).all.some((one) => one.name === 'corner block' && reaches(other, one))
      }
      expect(meets(warning.clearanceAtLeast)).toBe(false)
      expect(meets(warning.clearanceAtLeast - 1)).toBe(true)
    }, 'cleated')
    expect(named).toBeGreaterThan(20)
  })
})

/** Whether a corner block and the object share any room, the object centred in the box; exact. */
function reaches(plan: Plan, block: Solid): boolean {
  const { object, clearance } = plan.spec
  if (object.shape === 'rectangle') {
    return overlap(
      block,
      solid('object', [clearance, clearance, 0], [object.length, object.width, plan.panelHeight]),
    )
  }
  // In half nanometres from the middle, so that an odd diameter has a whole radius.
  const away = ([low, high]: readonly [number, number], inside: number): bigint =>
    BigInt(Math.max(0, 2 * low - inside, inside - 2 * high))
  const x = away([block.low[0], block.high[0]], plan.inside.length)
  const y = away([block.low[1], block.high[1]], plan.inside.width)
  return x * x + y * y < BigInt(object.diameter) ** 2n
}

describe('a butted corner', () => {
  it('stands open from above and below once dry-fitted, as the others do', () => {
    holds((plan, { all }) => {
      const shaft = solid('shaft', [0, 0, -1], [plan.inside.length, plan.inside.width, plan.panelHeight + 2])
      expect(collisions([shaft], all)).toEqual([])
    }, 'butted')
  })
})
