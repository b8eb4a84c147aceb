import { minus, type Length } from '../core/measure/length.ts'
import type { Part, Plan } from '../core/plan.ts'

/** A place in the box: along it, across it, up; the inside begins at 0, 0, 0. Nanometres. */
export type Place = readonly [x: number, y: number, z: number]

/** A part of the box, square to its sides. */
export interface Solid {
  readonly part: Part
  readonly low: Place
  readonly high: Place
}

/** What is carried as one when the box is apart. */
export interface Carried {
  readonly name: 'left end' | 'right end' | 'front' | 'back' | 'lid' | 'bottom'
  readonly solids: readonly Solid[]
}

/** The part of a name, where the plan has it. */
export const partOf = (plan: Plan, name: string): Part | undefined =>
  plan.parts.find((part) => part.name === name)

/**
 * The parts of a plan in their places, as they are carried. Each lies against the panel that it is fixed to and is centred on
 * the inside, as the plan's sizes have it. Braces are left out: they are no solids square to the box.
 */
export function placeParts(plan: Plan): readonly Carried[] {
  const left = endSolids(plan)
  const hasFront = partOf(plan, 'front panel') !== undefined
  const side = sideSolids(plan, 'side')
  return [
    { name: 'left end', solids: left },
    { name: 'right end', solids: left.map((one) => mirrored(one, 0, plan.inside.length)) },
    { name: 'front', solids: hasFront ? sideSolids(plan, 'front') : side },
    { name: 'back', solids: side.map((one) => mirrored(one, 1, plan.inside.width)) },
    { name: 'lid', solids: lidSolids(plan) },
    { name: 'bottom', solids: bottomSolids(plan) },
  ]
}

const solid = (part: Part, low: Place, size: Place): Solid => ({
  part,
  low,
  high: [low[0] + size[0], low[1] + size[1], low[2] + size[2]],
})

function mirrored({ part, low, high }: Solid, axis: 0 | 1, about: number): Solid {
  const flip = (point: Place, other: Place): Place =>
    axis === 0 ? [about - other[0], point[1], point[2]] : [point[0], about - other[1], point[2]]
  return { part, low: flip(low, high), high: flip(high, low) }
}

/** Where something `long` starts when it is centred on an inside. */
const centred = (inside: Length, long: Length): number => minus(inside, long) / 2

function endSolids(plan: Plan): readonly Solid[] {
  const panel = partOf(plan, 'end panel')
  if (!panel) return []
  const { inside, spec } = plan
  const outer = -panel.thickness - spec.strip
  const along = (part: Part, x: number, z: number, deep: number, tall: number): Solid =>
    solid(part, [x, centred(inside.width, part.length), z], [deep, part.length, tall])
  const frame = (name: string, place: (part: Part) => readonly Solid[]) => placed(plan, name, place)
  const rails = frame('end rail', (part) =>
    [0, panel.width - part.width].map((z) => along(part, outer, z, part.thickness, part.width)),
  )
  const railStart = rails[0]?.low[1] ?? 0
  const railEnd = rails[0]?.high[1] ?? 0
  const edge = centred(inside.width, panel.length)
  return [
    along(panel, -panel.thickness, 0, panel.thickness, panel.width),
    ...rails,
    ...frame('end stile', (part) =>
      [railStart, railEnd - part.width].map((y) =>
        solid(part, [outer, y, spec.width], [part.thickness, part.width, part.length]),
      ),
    ),
    ...cornerStiles(plan, outer, edge),
    ...inner(plan, 'end').map(([part, z]) => along(part, 0, z, part.thickness, part.width)),
  ]
}

/** Captured corners: on the edges of the end panel, flush with its frame; the one in front as high as the front. */
function cornerStiles(plan: Plan, outer: number, edge: number): readonly Solid[] {
  const { spec, inside, fit } = plan
  const back = partOf(plan, 'corner stile')
  if (spec.corner !== 'captured' || !back) return []
  const front = partOf(plan, 'front stile') ?? back
  const stile = (part: Part, y: number): Solid =>
    solid(part, [outer, y, spec.width + fit], [part.width, part.thickness, part.length])
  return [stile(front, edge - front.thickness), stile(back, inside.width - edge)]
}

function sideSolids(plan: Plan, face: 'side' | 'front'): readonly Solid[] {
  const own = (name: string): string => (partOf(plan, `${face} ${name}`) ? `${face} ${name}` : `side ${name}`)
  const panel = partOf(plan, own('panel'))
  if (!panel) return []
  const { inside, spec } = plan
  const outer = -panel.thickness - spec.strip
  const along = (part: Part, y: number, z: number, deep: number, tall: number): Solid =>
    solid(part, [centred(inside.length, part.length), y, z], [part.length, deep, tall])
  const rails = placed(plan, own('rail'), (part) =>
    [0, panel.width - part.width].map((z) => along(part, outer, z, part.thickness, part.width)),
  )
  const start = rails[0]?.low[0] ?? 0
  const end = rails[0]?.high[0] ?? 0
  const block = face === 'front' && partOf(plan, 'front block') ? 'front block' : 'corner block'
  return [
    along(panel, -panel.thickness, 0, panel.thickness, panel.width),
    ...rails,
    ...placed(plan, spec.corner === 'captured' ? '' : own('stile'), (part) =>
      [start, end - part.width].map((x) =>
        solid(part, [x, outer, spec.width], [part.width, part.thickness, part.length]),
      ),
    ),
    ...placed(plan, block, (part) =>
      [0, inside.length - part.width].map((x) =>
        solid(
          part,
          [x, 0, panel.width - spec.width - part.length],
          [part.width, part.thickness, part.length],
        ),
      ),
    ),
    ...inner(plan, face).map(([part, z]) => along(part, 0, z, part.thickness, part.width)),
  ]
}

const placed = (plan: Plan, name: string, place: (part: Part) => readonly Solid[]): readonly Solid[] => {
  const part = partOf(plan, name)
  return part ? place(part) : []
}

/** Strips on the inside of a wall, with how high they begin: cleats on the floor, ledgers under an inset lid. */
function inner(plan: Plan, face: 'end' | 'side' | 'front'): readonly (readonly [Part, number])[] {
  const { height, sheet, width } = plan.spec
  const cleat = partOf(plan, `${face} cleat`) ?? (face === 'front' ? partOf(plan, 'side cleat') : undefined)
  const ledger =
    partOf(plan, `${face} ledger`) ?? (face === 'front' ? partOf(plan, 'side ledger') : undefined)
  return [
    ...(cleat ? [[cleat, 0] as const] : []),
    ...(ledger ? [[ledger, height - sheet - width] as const] : []),
  ]
}

function lidSolids(plan: Plan): readonly Solid[] {
  const panel = partOf(plan, 'lid panel') ?? partOf(plan, 'cover panel')
  const { lid, inside, spec } = plan
  if (!panel || !lid) return []
  const bottom = lid.kind === 'inset' ? spec.height - spec.sheet : spec.height
  const [x, y] = [centred(inside.length, panel.length), centred(inside.width, panel.width)]
  const top = bottom + panel.thickness
  return [
    ...placed(plan, 'lid rim', (part) =>
      [y, y + panel.width - part.thickness].map((at) =>
        solid(part, [x, at, bottom - part.width], [part.length, part.thickness, part.width]),
      ),
    ),
    ...placed(plan, 'lid rim end', (part) =>
      [x, x + panel.length - part.thickness].map((at) =>
        solid(
          part,
          [at, centred(inside.width, part.length), bottom - part.width],
          [part.thickness, part.length, part.width],
        ),
      ),
    ),
    solid(panel, [x, y, bottom], [panel.length, panel.width, panel.thickness]),
    ...placed(plan, 'handle', (part) => [
      solid(
        part,
        [centred(inside.length, part.length), centred(inside.width, part.thickness), top],
        [part.length, part.thickness, part.width],
      ),
    ]),
  ]
}

function bottomSolids(plan: Plan): readonly Solid[] {
  const panel = partOf(plan, 'bottom panel')
  const { bottom, inside, spec } = plan
  if (!panel || !bottom) return []
  const [x, y] = [centred(inside.length, panel.length), centred(inside.width, panel.width)]
  const z = bottom.feet ? spec.strip : spec.width
  const { starts = [] } = bottom.feet ?? {}
  return [
    ...placed(plan, 'foot', (part) =>
      starts.map((start) => solid(part, [x + start, y, 0], [part.width, part.length, part.thickness])),
    ),
    solid(panel, [x, y, z], [panel.length, panel.width, panel.thickness]),
  ]
}
