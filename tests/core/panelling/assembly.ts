import type { Part, PartName, Plan } from '../../../src/core/plan.ts'
import { type Point, type Solid, solid } from './solids.ts'

/** A box put together from the parts list, in the four assemblies that a person carries. */
export interface Assembly {
  readonly ends: readonly [left: readonly Solid[], right: readonly Solid[]]
  readonly sides: readonly [front: readonly Solid[], back: readonly Solid[]]
  readonly all: readonly Solid[]
}

/**
 * Puts a plan together as a person would: x runs along the box, y across it, z up; the inside starts at 0, 0, 0. Only the
 * sizes in the parts list are taken from the plan. Where each part goes is told here, by what it lies against:
 * the left end and the front side are placed, and the others are their mirror images.
 */
export function assemble(plan: Plan): Assembly {
  const bin = new Bin(plan.parts)
  const left = placeEnd(plan, bin)
  const front = placeSide(plan, bin)
  const inside: Point = [plan.inside.length, plan.inside.width, 0]
  const right = left.map((one) => mirror(one, 0, inside[0]))
  const back = front.map((one) => mirror(one, 1, inside[1]))
  bin.expectHalfTaken()
  return { ends: [left, right], sides: [front, back], all: [...left, ...right, ...front, ...back] }
}

/** The parts by name, counted out as they are used; braces lie flat in an opening and are tested on paper. */
class Bin {
  private readonly parts: readonly Part[]
  private readonly taken = new Map<PartName, number>()
  constructor(parts: readonly Part[]) {
    this.parts = parts
  }
  take(name: PartName, count: number): Part {
    const part = this.parts.find((one) => one.name === name)
    if (!part) throw new Error(`no ${name} in the parts list`)
    this.taken.set(name, (this.taken.get(name) ?? 0) + count)
    return part
  }
  expectHalfTaken(): void {
    for (const { name, count } of this.parts) {
      if (!name.endsWith('brace') && this.taken.get(name) !== count / 2)
        throw new Error(`${count} ${name} listed, ${this.taken.get(name)} used`)
    }
  }
}

function placeEnd(plan: Plan, bin: Bin): readonly Solid[] {
  const panel = bin.take('end panel', 1)
  // Behind the ends of the side panels, reaching over both of their edges: centred on the inside.
  const panelStart = -(panel.length - plan.inside.width) / 2
  const placed = [
    solid('end panel', [-panel.thickness, panelStart, 0], [panel.thickness, panel.length, panel.width]),
  ]
  const rail = bin.take('end rail', 2)
  const railStart = -(rail.length - plan.inside.width) / 2
  const outer = -panel.thickness - rail.thickness
  const stile = bin.take('end stile', 2)
  for (const z of [0, panel.width - rail.width])
    placed.push(solid('end rail', [outer, railStart, z], [rail.thickness, rail.length, rail.width]))
  for (const y of [railStart, railStart + rail.length - stile.width]) {
    placed.push(solid('end stile', [outer, y, rail.width], [stile.thickness, stile.width, stile.length]))
  }
  return plan.spec.corner === 'captured' ? [...placed, ...cornerStiles(plan, bin, outer, panelStart)] : placed
}

/** Flush with the outer face of the end frame, flat on the edges of panel and frame, half the play below and above. */
function cornerStiles(plan: Plan, bin: Bin, outer: number, panelStart: number): readonly Solid[] {
  const stile = bin.take('corner stile', 2)
  const z = plan.spec.width + plan.spec.fit
  const across = [panelStart - stile.thickness, plan.inside.width - panelStart]
  return across.map((y) => solid('corner stile', [outer, y, z], [stile.width, stile.thickness, stile.length]))
}

function placeSide(plan: Plan, bin: Bin): readonly Solid[] {
  const panel = bin.take('side panel', 1)
  const placed = [solid('side panel', [0, -panel.thickness, 0], [panel.length, panel.thickness, panel.width])]
  const rail = bin.take('side rail', 2)
  const start = -(rail.length - panel.length) / 2
  const outer = -panel.thickness - rail.thickness
  for (const z of [0, panel.width - rail.width])
    placed.push(solid('side rail', [start, outer, z], [rail.length, rail.thickness, rail.width]))
  if (plan.spec.corner === 'captured') return placed
  const stile = bin.take('side stile', 2)
  for (const x of [start, start + rail.length - stile.width]) {
    placed.push(solid('side stile', [x, outer, rail.width], [stile.width, stile.thickness, stile.length]))
  }
  return plan.spec.corner === 'cleated' ? [...placed, ...blocks(plan, bin, panel.length)] : placed
}

/** Flat on the inside of the side panel, tight against the end panel, level with the stiles outside. */
function blocks(plan: Plan, bin: Bin, inside: number): readonly Solid[] {
  const block = bin.take('corner block', 2)
  return [0, inside - block.width].map((x) =>
    solid('corner block', [x, 0, plan.spec.width], [block.width, block.thickness, block.length]),
  )
}

function mirror({ name, low, high }: Solid, axis: 0 | 1, about: number): Solid {
  const flipped = (point: Point, with_: Point): Point =>
    axis === 0 ? [about - with_[0], point[1], point[2]] : [point[0], about - with_[1], point[2]]
  return { name, low: flipped(low, high), high: flipped(high, low) }
}
