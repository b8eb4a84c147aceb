import { type Length, toMillimetres } from '../measure/length.ts'
import type { Face } from '../panelling/face.ts'
import type { Part, PartName, Plan } from '../plan.ts'
import { cutoutsArea } from '../plan/part.ts'
import type { Carried } from '../plan/spec.ts'

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
  /** All that is carried: the framed panels, then what else there is, `count` alike. */
  readonly carried: readonly CarriedWeight[]
  readonly total: number
}

/** Grams of one framed panel, lid or bottom with all that is fixed to it. */
export interface CarriedWeight {
  readonly name: Carried
  readonly count: number
  readonly each: number
}

/** Grams of a block of wood, its density in kg/m3. */
export const blockWeight = (length: Length, width: Length, thickness: Length, density: number): number =>
  (toMillimetres(length) * toMillimetres(width) * toMillimetres(thickness) * density) / 1_000_000

/**
 * Weighs every part of a plan. A brace counts by its long edge, which by its width is what it covers; slots, notches and holes
 * are taken off; grooves and paint are left out. Throws for a density not above 0.
 */
export function weighPlan(plan: Plan, densities: Densities): PlanWeight {
  for (const density of Object.values(densities))
    if (!(density > 0)) throw new RangeError(`a density must be above 0: ${density}`)
  const weighed = plan.parts.map((part) => ({ part, weight: weighPart(part, plan.faces, densities) }))
  const gramsOf = (wanted: Carried): number =>
    sum(weighed.filter(({ part }) => part.carriedBy === wanted).map(({ weight }) => weight.all))
  const carried = [
    ...plan.faces.map(({ name, count }) => ({ name, count })),
    ...(plan.lid ? [{ name: 'lid' as const, count: 1 }] : []),
    ...(plan.bottom ? [{ name: 'bottom' as const, count: 1 }] : []),
  ].map(({ name, count }) => ({ name, count, each: gramsOf(name) / count }))
  const one = (wanted: Carried): number => carried.find(({ name }) => name === wanted)?.each ?? 0
  const parts = weighed.map(({ weight }) => weight)
  return { parts, end: one('end'), side: one('side'), carried, total: sum(parts.map(({ all }) => all)) }
}

/** Of parts with cutouts `each` is what they weigh in the mean. */
function weighPart(part: Part, faces: readonly Face[], densities: Densities): PartWeight {
  const { label, name, count, width, thickness, material } = part
  const brace = faces.find((face) => name === `${face.name} brace`)?.brace
  const whole = blockWeight(brace?.edge ?? part.length, width, thickness, densities[material])
  const cut = (cutoutsArea(part) * toMillimetres(thickness) * densities[material]) / 1_000_000
  const all = count * whole - cut
  return { label, name, count, each: all / count, all }
}

const sum = (grams: readonly number[]): number => grams.reduce((total, each) => total + each, 0)
