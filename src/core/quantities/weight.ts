import { type Length, toMillimetres } from '../measure/length.ts'
import type { Face } from '../panelling/face.ts'
import type { Part, PartName, Plan } from '../plan.ts'

/** kg/m3 of what a box is made of. */
export interface Densities {
  readonly sheet: number
  readonly strip: number
}

/** Grams of one and of all the parts cut alike. */
export interface PartWeight {
  readonly label: string
  readonly name: PartName
  readonly count: number
  readonly each: number
  readonly all: number
}

/** What a box weighs, grams; standing or stacked flat it is the same. */
export interface PlanWeight {
  readonly parts: readonly PartWeight[]
  /** One framed panel of each kind as it is carried, with all that is fixed to it. */
  readonly end: number
  readonly side: number
  readonly total: number
}

/** Grams of a block of wood, its density in kg/m3. */
export const blockWeight = (length: Length, width: Length, thickness: Length, density: number): number =>
  (toMillimetres(length) * toMillimetres(width) * toMillimetres(thickness) * density) / 1_000_000

/**
 * Weighs every part of a plan. A brace counts by its long edge, which by its width is what it covers; grooves and paint are
 * left out. Throws for a density not above 0.
 */
export function weighPlan(plan: Plan, densities: Densities): PlanWeight {
  for (const density of Object.values(densities))
    if (!(density > 0)) throw new RangeError(`a density must be above 0: ${density}`)
  const parts = plan.parts.map((part) => weighPart(part, plan.faces, densities))
  const face = (wanted: 'end' | 'side'): number =>
    sum(parts.filter(({ name }) => carriedBy(name) === wanted).map(({ all }) => all / 2))
  return { parts, end: face('end'), side: face('side'), total: sum(parts.map(({ all }) => all)) }
}

function weighPart(part: Part, faces: readonly Face[], densities: Densities): PartWeight {
  const { label, name, count, width, thickness, material } = part
  const brace = faces.find((face) => name === `${face.name} brace`)?.brace
  const each = blockWeight(brace?.edge ?? part.length, width, thickness, densities[material])
  return { label, name, count, each, all: count * each }
}

/** A captured corner stile is fixed to the end panel, a corner block to the side panel. */
function carriedBy(name: PartName): 'end' | 'side' {
  if (name === 'corner stile') return 'end'
  return name === 'corner block' || name.startsWith('side') ? 'side' : 'end'
}

const sum = (grams: readonly number[]): number => grams.reduce((total, each) => total + each, 0)
