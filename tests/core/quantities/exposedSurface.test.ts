import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { millimetres } from '../../../src/core/measure/length.ts'
import { layGrooves } from '../../../src/core/panelling/grooves.ts'
import { type Plan, planSurround, type Spec } from '../../../src/core/plan.ts'
import { exposedSurfaces, finishedArea, grooveDepth } from '../../../src/core/quantities/exposedSurface.ts'
import { type Assembly, assemble } from '../panelling/assembly.ts'
import { area, type Corner, distance, type Polygon } from '../panelling/polygons.ts'
import { contact, type Solid, solid } from '../panelling/solids.ts'
import { plain, richSpecs, specs } from '../panelling/specs.ts'

const planOf = (spec: Spec): Plan => {
  const plan = planSurround(spec)
  if (plan.status === 'impossible') throw new Error(plan.obstacle.kind)
  return plan
}

/** mm2 of a number of square nanometres. */
const mm2 = (square: bigint): number => Number(square) / 1e12

const surface = ({ low, high }: Solid): bigint => {
  const [x, y, z] = [0, 1, 2].map((axis) => BigInt((high[axis] ?? 0) - (low[axis] ?? 0))) as [
    bigint,
    bigint,
    bigint,
  ]
  return 2n * (x * y + y * z + z * x)
}

/** What is painted in one piece: the four panels of a box that comes apart, or the whole of a glued one. */
const painted = (plan: Plan, { ends, sides, lid, bottom }: Assembly): readonly (readonly Solid[])[] => {
  const walls = [...ends, ...sides]
  return [...(plan.spec.corner === 'butted' ? [walls.flat()] : walls), lid, bottom]
}

/** By name, the skin of every drawn solid less wherever it touches another of the same piece. */
function drawnSkins(pieces: readonly (readonly Solid[])[]): ReadonlyMap<string, bigint> {
  const skins = new Map<string, bigint>()
  for (const piece of pieces)
    for (const one of piece) {
      const touched = piece.reduce((sum, other) => sum + (other === one ? 0n : contact(one, other)), 0n)
      skins.set(one.name, (skins.get(one.name) ?? 0n) + surface(one) - touched)
    }
  return skins
}

/** How many plans were drawn and counted twice. */
function onPlans(check: (plan: Plan) => void, change: Partial<Spec> = {}): number {
  let drawn = 0
  fc.assert(
    fc.property(specs, (spec) => {
      const plan = planSurround({ ...spec, ...change })
      if (plan.status === 'impossible') return
      drawn += 1
      check(plan)
    }),
    { numRuns: 150 },
  )
  return drawn
}

const near = (found: number, drawn: number): void =>
  expect(Math.abs(found - drawn)).toBeLessThanOrEqual(1e-9 * Math.max(1, drawn))

describe('what is to be finished, against the box drawn as solids', () => {
  it('is the skin of every part less what touches it in the piece that is painted', () => {
    const drawn = onPlans(
      (plan) => {
        const skins = drawnSkins(painted(plan, assemble(plan)))
        const found = exposedSurfaces(plan)
        expect(found.map(({ name }) => name).sort()).toEqual([...skins.keys()].sort())
        for (const { name, exposed } of found) near(exposed, mm2(skins.get(name) ?? 0n))
        const total = [...skins.values()].reduce((sum, each) => sum + each, 0n)
        near(finishedArea(found, 'all'), mm2(total))
      },
      { braces: 'none', grooves: 0 },
    )
    expect(drawn).toBeGreaterThan(100)
  })

  it('holds with every corner, a front of its own, lid, bottom, drain holes and cord notch', () => {
    let drawn = 0
    fc.assert(
      fc.property(richSpecs, (spec) => {
        const plan = planSurround({
          ...spec,
          braces: 'none',
          grooves: 0,
          front: spec.front && { height: spec.front.height },
        })
        if (plan.status === 'impossible') return
        // Joints reckon a cleat of a halved box as glued all along, past the slots behind its ends.
        if (plan.spec.corner === 'halved' && plan.bottom?.cleats) return
        drawn += 1
        const skins = drawnSkins(painted(plan, assemble(plan)))
        for (const { name, exposed } of exposedSurfaces(plan))
          near(exposed, mm2(skins.get(name) ?? 0n) + (name === 'bottom panel' ? drained(plan) : 0))
      }),
      { numRuns: 200 },
    )
    expect(drawn).toBeGreaterThan(80)
  })

  it('leaves out, for the outside alone, just what looks into the box', () => {
    onPlans(
      (plan) => {
        const built = assemble(plan)
        const pieces = painted(plan, built)
        const inward = pieces.flatMap((piece) =>
          piece.map((one) =>
            one.name === 'corner block'
              ? (drawnSkins([piece]).get(one.name) ?? 0n) / 2n
              : innerFace(one, piece, plan),
          ),
        )
        const total = inward.reduce((sum, each) => sum + each, 0n)
        const found = exposedSurfaces(plan)
        near(finishedArea(found, 'all') - finishedArea(found, 'outside'), mm2(total))
      },
      { braces: 'none', grooves: 0 },
    )
  })

  it('counts the walls of grooves between the rails, drawn board by board', () => {
    let grooved = 0
    onPlans(
      (plan) => {
        const drawn = drawGrooves(plan)
        if (!drawn) return
        grooved += 1
        const found = exposedSurfaces(plan)
        for (const name of ['end panel', 'side panel'] as const)
          near(found.find((each) => each.name === name)?.exposed ?? 0, mm2(drawn.get(name) ?? 0n))
      },
      { braces: 'none' },
    )
    expect(grooved).toBeGreaterThan(30)
  })
})

/** What round holes, which are not drawn, add in walls and take off both faces. */
function drained({ bottom, spec }: Plan): number {
  if (!bottom?.drain) return 0
  const [across, thick] = [bottom.drain.size.along / 1e6, spec.sheet / 1e6]
  return bottom.drain.at.length * Math.PI * (across * thick - across ** 2 / 2)
}

/** The face of a panel that looks into the box, less what touches it there. */
function innerFace(one: Solid, piece: readonly Solid[], { inside }: Plan): bigint {
  if (!one.name.endsWith('panel')) return 0n
  const axis = one.name === 'end panel' ? 0 : 1
  const at = one.high[axis] === 0 ? 0 : axis === 0 ? inside.length : inside.width
  const [a, b] = [0, 1, 2].filter((each) => each !== axis) as [0 | 1 | 2, 0 | 1 | 2]
  const face = BigInt(one.high[a] - one.low[a]) * BigInt(one.high[b] - one.low[b])
  const touched = piece
    .filter((other) => other !== one && (at === 0 ? other.low[axis] : other.high[axis]) === at)
    .reduce((sum, other) => sum + contact(one, other), 0n)
  return face - touched
}

/**
 * The exposed skin of both kinds of panel with every groove cut right through from edge to edge: a back and the boards on it,
 * each a solid of its own. What is left of a groove under a rail is a closed tunnel that no brush reaches, so its walls and
 * floor are taken off. Undefined where the grooves do not go, and where half a kerf is no whole number of nanometres.
 */
function drawGrooves(plan: Plan): ReadonlyMap<string, bigint> | undefined {
  const { spec, faces } = plan
  if (spec.kerf % 2 !== 0) return undefined
  const depth = grooveDepth(spec.sheet)
  const skins = new Map<string, bigint>()
  for (const [index, face] of faces.entries()) {
    const name = `${face.name} panel`
    const laid =
      spec.grooves === 0
        ? undefined
        : layGrooves({
            panel: face.panel,
            count: spec.grooves,
            kerf: spec.kerf,
            thickness: spec.sheet,
            equalOver: 'between stiles',
            stile: face.covered,
          })
    if (laid?.status === 'impossible') return undefined
    // Flat on the ground, its grooved face up: the frame is laid on it there.
    const frame = frameOn(plan, index as 0 | 1, depth)
    const edges = [0, ...(laid?.fences ?? []).flatMap((fence) => [fence, fence + spec.kerf]), face.panel]
    const boards = Array.from({ length: edges.length / 2 }, (_, at) =>
      solid(
        name,
        [edges[2 * at] ?? 0, 0, 0],
        [(edges[2 * at + 1] ?? 0) - (edges[2 * at] ?? 0), spec.height, depth],
      ),
    )
    const back = solid(name, [0, 0, depth - spec.sheet], [face.panel, spec.height, spec.sheet - depth])
    // The boards and the back are one panel, so that where they touch is no skin.
    const skin = drawnSkins([[back, ...boards, ...frame]]).get(name) ?? 0n
    const [floor, wall] = [BigInt(spec.kerf) * BigInt(spec.width), BigInt(depth) * BigInt(spec.width)]
    const tunnels = BigInt(2 * (laid?.count ?? 0)) * (floor + 2n * wall)
    skins.set(name, 2n * (skin - tunnels - elsewhere(plan, name)))
  }
  return skins
}

/** The strips that lie on the outside of a panel, laid on its upper face. */
function frameOn(plan: Plan, index: 0 | 1, top: number): readonly Solid[] {
  const { spec, faces } = plan
  const { panel, covered } = faces[index]
  const rail = (y: number) => solid('rail', [0, y, top], [panel, spec.width, spec.strip])
  const stile = (x: number) =>
    solid('stile', [x, spec.width, top], [covered, spec.height - 2 * spec.width, spec.strip])
  const loose = index === 1 && spec.corner === 'captured'
  return [rail(0), rail(spec.height - spec.width), ...(loose ? [] : [stile(0), stile(panel - covered)])]
}

/** What else is glued to one panel of that name besides the frame on its face, by the box drawn without grooves. */
function elsewhere(plan: Plan, name: string): bigint {
  const piece = painted(plan, assemble(plan)).find((each) => each.some((one) => one.name === name)) ?? []
  const one = piece.find((each) => each.name === name) as Solid
  const axis = name === 'end panel' ? 0 : 1
  return piece
    .filter((other) => other !== one && other.high[axis] > one.low[axis])
    .reduce((sum, other) => sum + contact(one, other), 0n)
}

describe('a brace', () => {
  it('hides its own shape on the panel and shows two long edges, by the shape drawn in the opening', () => {
    let braced = 0
    onPlans(
      (plan) => {
        const found = exposedSurfaces(plan)
        const bareOf = (name: string) => exposedSurfaces(plan).find((each) => each.name === name)
        for (const face of plan.faces) {
          const own = found.find(({ name }) => name === `${face.name} brace`)
          if (!own || !face.brace) continue
          braced += 1
          const shape = drawBrace(plan, face.name)
          const strip = plan.spec.strip / 1e6
          const [one = 0, cut = 0, other = 0, otherCut = 0] = shape.map((corner, at) =>
            distance(corner, shape[(at + 1) % 4] as Corner),
          )
          const loose =
            face.brace.ends === 'stiles' && face.name === 'side' && plan.spec.corner === 'captured'
          const shown = area(shape) + (one + other) * strip + (loose ? (cut + otherCut) * strip : 0)
          expect(Math.abs(own.exposed / 2 - shown) / shown).toBeLessThan(1e-6)
          const without = exposedSurfaces(planOf({ ...plan.spec, braces: 'none' }))
          const panel = without.find(({ name }) => name === `${face.name} panel`)
          const hidden = ((bareOf(`${face.name} panel`)?.bare ?? 0) - (panel?.bare ?? 0)) / 2
          expect(Math.abs(hidden - area(shape)) / area(shape)).toBeLessThan(1e-6)
        }
      },
      { braces: 'all', grooves: 0 },
    )
    expect(braced).toBeGreaterThan(60)
  })
})

/** The four corners of a brace in its opening, mm: a band between opposite corners, cut off by the strips it ends on. */
function drawBrace({ faces, spec }: Plan, name: string): Polygon {
  const face = faces[name === 'end' ? 0 : 1]
  const [wide, high, across] = [face.opening.width, face.opening.height, spec.width].map(
    (each) => each / 1e6,
  ) as [number, number, number]
  const slope = ((face.brace?.slope ?? 0) * Math.PI) / 180
  if (face.brace?.ends === 'rails') {
    // From the lower left corner up to the upper rail, and back from the upper right corner to the lower rail.
    const run = high / Math.tan(slope)
    const corners: Polygon = [
      [0, 0],
      [run, high],
      [wide, high],
      [wide - run, 0],
    ]
    expect(Math.abs((wide - run) * Math.sin(slope) - across)).toBeLessThan(1e-5)
    return corners
  }
  const rise = wide * Math.tan(slope)
  expect(Math.abs((high - rise) * Math.cos(slope) - across)).toBeLessThan(1e-5)
  return [
    [0, 0],
    [wide, rise],
    [wide, high],
    [0, high - rise],
  ]
}

describe('a plan with round numbers', () => {
  it('is counted by hand: a captured box, 500 x 300 inside, 400 high, 10 sheet, 10 x 30 strips, no gap', () => {
    const plan = planOf({
      ...plain,
      object: { shape: 'rectangle', length: millimetres(500), width: millimetres(300) },
      clearance: millimetres(0),
      height: millimetres(400),
      sheet: millimetres(10),
      strip: millimetres(10),
      width: millimetres(30),
      fit: millimetres(0),
    })
    const found = Object.fromEntries(exposedSurfaces(plan).map(({ name, exposed }) => [name, exposed]))
    // Two end panels 320 x 400: two rails of 320 x 30 and two stiles of 340 x 30 on one face, two corner stiles on the edges.
    expect(found['end panel']).toBeCloseTo(
      2 * (2 * 320 * 400 + 2 * 720 * 10 - 2 * 320 * 30 - 2 * 340 * 30 - 2 * 340 * 10),
      6,
    )
    // Side panels carry nothing but their rails, which run 20 past them at each end.
    expect(found['side panel']).toBeCloseTo(2 * (2 * 500 * 400 + 2 * 900 * 10 - 2 * 500 * 30), 6)
    expect(found['side rail']).toBeCloseTo(4 * (2 * 540 * 30 + 2 * 570 * 10 - 500 * 30), 6)
    // A corner stile is glued by 20 of its back; the rest of it, the lip, is painted like its ends.
    expect(found['corner stile']).toBeCloseTo(4 * (2 * 340 * 30 + 2 * 370 * 10 - 340 * 20), 6)
  })
})
