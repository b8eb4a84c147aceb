import type { Part, PartName, Plan } from '../../../src/core/plan.ts'
import type { Cutout, Place } from '../../../src/core/plan/part.ts'
import { type Point, type Solid, solid } from './solids.ts'

/** A box put together from the parts list, in the assemblies that a person carries. A panel with slots is drawn in pieces. */
export interface Assembly {
  readonly ends: readonly [left: readonly Solid[], right: readonly Solid[]]
  readonly sides: readonly [front: readonly Solid[], back: readonly Solid[]]
  readonly lid: readonly Solid[]
  readonly bottom: readonly Solid[]
  readonly all: readonly Solid[]
}

/**
 * Puts a plan together as a person would: x runs along the box, y across it, z up; the inside starts at 0, 0, 0. Only the
 * sizes in the parts list are taken from the plan. Where each part goes is told here, by what it lies against: the left end and
 * the front are placed, the right end and the back are mirror images. A cord notch is in the left end, the back or the front.
 */
export function assemble(plan: Plan): Assembly {
  const bin = new Bin(plan.parts)
  const inside: Point = [plan.inside.length, plan.inside.width, 0]
  const left = placeEnd(plan, bin, true)
  const right = placeEnd(plan, bin, false).map((one) => mirror(one, 0, inside[0]))
  const front = placeSide(plan, bin, bin.has('front panel') ? 'front' : 'side', false)
  const back = placeSide(plan, bin, 'side', true).map((one) => mirror(one, 1, inside[1]))
  const lid = placeLid(plan, bin)
  const bottom = placeBottom(plan, bin)
  bin.expectAllTaken()
  const all = [...left, ...right, ...front, ...back, ...lid, ...bottom]
  return { ends: [left, right], sides: [front, back], lid, bottom, all }
}

/** The parts by name, counted out as they are used; braces lie flat in an opening and are tested on paper. */
class Bin {
  private readonly parts: readonly Part[]
  private readonly taken = new Map<PartName, number>()
  constructor(parts: readonly Part[]) {
    this.parts = parts
  }
  has(name: PartName): boolean {
    return this.parts.some((one) => one.name === name)
  }
  take(name: PartName, count: number): Part {
    const part = this.parts.find((one) => one.name === name)
    if (!part) throw new Error(`no ${name} in the parts list`)
    this.taken.set(name, (this.taken.get(name) ?? 0) + count)
    return part
  }
  expectAllTaken(): void {
    for (const { name, count } of this.parts)
      if (!name.endsWith('brace') && this.taken.get(name) !== count)
        throw new Error(`${count} ${name} listed, ${this.taken.get(name)} used`)
  }
}

interface Patch {
  readonly low: Place
  readonly high: Place
}

/** What is left of a part in rectangles once its cutouts are out; round holes are left in. */
export function rectangles(part: Part, cutouts: readonly Cutout[]): readonly Patch[] {
  const gone = cutouts
    .filter(({ round }) => !round)
    .flatMap(({ size, at }) =>
      at.map((low) => ({
        low,
        high: { along: low.along + size.along, across: low.across + size.across } as Place,
      })),
    )
  const lines = (side: 'along' | 'across', end: number): readonly number[] =>
    [...new Set([0, end, ...gone.flatMap(({ low, high }) => [low[side], high[side]])])].sort((a, b) => a - b)
  const [x, z] = [lines('along', part.length), lines('across', part.width)]
  return x.slice(1).flatMap((right, i) =>
    z.slice(1).flatMap((top, j): readonly Patch[] => {
      const [left, bottom] = [x[i] as number, z[j] as number]
      const out = gone.some(
        ({ low, high }) =>
          low.along <= left && right <= high.along && low.across <= bottom && top <= high.across,
      )
      return out
        ? []
        : [{ low: { along: left, across: bottom } as Place, high: { along: right, across: top } as Place }]
    }),
  )
}

/** An upright panel along one axis, in pieces, `from` being the low corner of the whole. */
function upright(part: Part, axis: 0 | 1, from: Point, notched: boolean): readonly Solid[] {
  const cutouts = (part.cutouts ?? []).filter(({ kind }) => notched || kind !== 'cord notch')
  return rectangles(part, cutouts).map(({ low, high }) => {
    const at: Point = [
      from[0] + (axis === 0 ? low.along : 0),
      from[1] + (axis === 1 ? low.along : 0),
      from[2] + low.across,
    ]
    const long = high.along - low.along
    const size: Point =
      axis === 0
        ? [long, part.thickness, high.across - low.across]
        : [part.thickness, long, high.across - low.across]
    return solid(part.name, at, size)
  })
}

function placeEnd(plan: Plan, bin: Bin, notched: boolean): readonly Solid[] {
  const panel = bin.take('end panel', 1)
  // Behind the ends of the side panels or past their slots, reaching over both: centred on the inside.
  const panelStart = -(panel.length - plan.inside.width) / 2
  const placed = [...upright(panel, 1, [-panel.thickness, panelStart, 0], notched)]
  const rail = bin.take('end rail', 2)
  const railStart = -(rail.length - plan.inside.width) / 2
  const outer = -panel.thickness - rail.thickness
  const stile = bin.take('end stile', 2)
  for (const z of [0, panel.width - rail.width])
    placed.push(solid('end rail', [outer, railStart, z], [rail.thickness, rail.length, rail.width]))
  for (const y of [railStart, railStart + rail.length - stile.width]) {
    placed.push(solid('end stile', [outer, y, rail.width], [stile.thickness, stile.width, stile.length]))
  }
  placed.push(...wallStrip(bin, 'end cleat', 0, plan.inside))
  placed.push(...wallStrip(bin, 'end ledger', panel.width - panel.thickness - rail.width, plan.inside))
  return plan.spec.corner === 'captured' ? [...placed, ...cornerStiles(plan, bin, outer, panelStart)] : placed
}

/** Flush with the outer face of the end frame, flat on the edges of panel and frame, half the play below and above. */
function cornerStiles(plan: Plan, bin: Bin, outer: number, panelStart: number): readonly Solid[] {
  const z = plan.spec.width + plan.spec.fit
  const front = bin.take(bin.has('front stile') ? 'front stile' : 'corner stile', 1)
  const back = bin.take('corner stile', 1)
  return [
    [front, panelStart - front.thickness] as const,
    [back, plan.inside.width - panelStart] as const,
  ].map(([stile, y]) => solid(stile.name, [outer, y, z], [stile.width, stile.thickness, stile.length]))
}

/** On the inside of a wall, flat on it and centred; nothing where the list has none. */
function wallStrip(
  bin: Bin,
  name: 'side cleat' | 'front cleat' | 'end cleat' | 'side ledger' | 'front ledger' | 'end ledger',
  z: number,
  inside: Plan['inside'],
): readonly Solid[] {
  if (!bin.has(name)) return []
  const { length, width, thickness } = bin.take(name, 1)
  const ofEnd = name.startsWith('end')
  const start = ((ofEnd ? inside.width : inside.length) - length) / 2
  return [
    ofEnd
      ? solid(name, [0, start, z], [thickness, length, width])
      : solid(name, [start, 0, z], [length, thickness, width]),
  ]
}

function placeSide(plan: Plan, bin: Bin, which: 'side' | 'front', notched: boolean): readonly Solid[] {
  const panel = bin.take(`${which} panel`, 1)
  const start = -(panel.length - plan.inside.length) / 2
  const placed = [...upright(panel, 0, [start, -panel.thickness, 0], notched || which === 'front')]
  const rail = bin.take(`${which} rail`, 2)
  const railStart = -(rail.length - plan.inside.length) / 2
  const outer = -panel.thickness - rail.thickness
  for (const z of [0, panel.width - rail.width])
    placed.push(solid(rail.name, [railStart, outer, z], [rail.length, rail.thickness, rail.width]))
  placed.push(...wallStrip(bin, which === 'front' ? 'front cleat' : 'side cleat', 0, plan.inside))
  if (bin.has(`${which} ledger`))
    placed.push(...wallStrip(bin, `${which} ledger`, panel.width - panel.thickness - rail.width, plan.inside))
  if (plan.spec.corner === 'captured') return placed
  const stile = bin.take(`${which} stile`, 2)
  for (const x of [railStart, railStart + rail.length - stile.width]) {
    placed.push(solid(stile.name, [x, outer, rail.width], [stile.width, stile.thickness, stile.length]))
  }
  return plan.spec.corner === 'cleated' ? [...placed, ...blocks(plan, bin, which, panel)] : placed
}

/** Flat on the inside of the side panel, tight against the end panel, level with the top rail outside. */
function blocks(plan: Plan, bin: Bin, which: 'side' | 'front', panel: Part): readonly Solid[] {
  const block = bin.take(which === 'front' ? 'front block' : 'corner block', 2)
  return [0, panel.length - block.width].map((x) =>
    solid(
      block.name,
      [x, 0, panel.width - plan.spec.width - block.length],
      [block.width, block.thickness, block.length],
    ),
  )
}

/** A panel lying flat in pieces, its length along the box. */
const lying = (part: Part, from: Point): readonly Solid[] =>
  rectangles(part, part.cutouts ?? []).map(({ low, high }) =>
    solid(
      part.name,
      [from[0] + low.along, from[1] + low.across, from[2]],
      [high.along - low.along, high.across - low.across, part.thickness],
    ),
  )

/** Centred on the box: flush with its top on the ledgers, or on its top with the rim under its own edges. */
function placeLid({ inside, panelHeight }: Plan, bin: Bin): readonly Solid[] {
  const name = bin.has('cover panel') ? 'cover panel' : 'lid panel'
  if (!bin.has(name)) return []
  const panel = bin.take(name, 1)
  const [x, y] = [(inside.length - panel.length) / 2, (inside.width - panel.width) / 2]
  const z = name === 'cover panel' ? panelHeight : panelHeight - panel.thickness
  const placed = [...lying(panel, [x, y, z])]
  if (bin.has('handle')) {
    const handle = bin.take('handle', 1)
    const at: Point = [(inside.length - handle.length) / 2, inside.width / 2, z + panel.thickness]
    placed.push(solid('handle', at, [handle.length, handle.thickness, handle.width]))
  }
  if (name === 'lid panel') return placed
  const [long, short] = [bin.take('lid rim', 2), bin.take('lid rim end', 2)]
  for (const across of [y, y + panel.width - long.thickness])
    placed.push(solid('lid rim', [x, across, z - long.width], [long.length, long.thickness, long.width]))
  for (const along of [x, x + panel.length - short.thickness])
    placed.push(
      solid(
        'lid rim end',
        [along, (inside.width - short.length) / 2, z - short.width],
        [short.thickness, short.length, short.width],
      ),
    )
  return placed
}

/** Centred in the box, on the cleats or on its feet. */
function placeBottom({ inside, bottom }: Plan, bin: Bin): readonly Solid[] {
  if (!bin.has('bottom panel')) return []
  const panel = bin.take('bottom panel', 1)
  const [x, y] = [(inside.length - panel.length) / 2, (inside.width - panel.width) / 2]
  if (!bin.has('foot')) return lying(panel, [x, y, bin.take('side cleat', 0).width])
  const starts = bottom?.feet?.starts ?? []
  const foot = bin.take('foot', starts.length)
  return [
    ...lying(panel, [x, y, foot.thickness]),
    ...starts.map((start) => solid('foot', [x + start, y, 0], [foot.width, foot.length, foot.thickness])),
  ]
}

function mirror({ name, low, high }: Solid, axis: 0 | 1, about: number): Solid {
  const flipped = (point: Point, with_: Point): Point =>
    axis === 0 ? [about - with_[0], point[1], point[2]] : [point[0], about - with_[1], point[2]]
  return { name, low: flipped(low, high), high: flipped(high, low) }
}
