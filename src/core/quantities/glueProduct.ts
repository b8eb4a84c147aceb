import type { Length } from '../measure/length.ts'
import type { Container, Range } from './product.ts'

/** A glue by its plain trade name; times in hours at the temperature that the timing is rated at. */
export interface Adhesive {
  readonly name: string
  readonly alsoCalled: readonly string[]
  /** m2 of one face that a litre covers. */
  readonly coverage: Range
  /** Degrees Celsius under which glue, wood and air must not be. */
  readonly lowest: number
  /** From spreading to closing the joint. */
  readonly open: Range
  readonly clamp: number
  readonly full: number
  readonly waterproof: boolean
}

/** How cold slows a glue: rated at so many degrees Celsius, twice as slow for every so many degrees below. */
export interface GlueTiming {
  readonly ratedAt: number
  readonly doublesPer: number
}

/** How hard wood is to press together. */
export const HARDNESSES = ['soft', 'medium', 'hard'] as const
export type Hardness = (typeof HARDNESSES)[number]

export interface Clamping {
  /** Pascals. */
  readonly pressure: Readonly<Record<Hardness, Range>>
  readonly apart: { readonly low: Length; readonly high: Length }
  readonly fromEnds: { readonly low: Length; readonly high: Length }
}

/** Every glue, how it is sold and how it is used, from config/adhesives.yaml. */
export interface GlueTables {
  readonly adhesives: readonly Adhesive[]
  readonly timing: GlueTiming
  readonly clamping: Clamping
  /** The part that is squeezed out or stays behind: 0.1 is 10 %. */
  readonly waste: number
  readonly bottles: readonly Container[]
}

/** The glue of that name or other name, whatever its capitals; undefined where there is none. */
export function findAdhesive(name: string, adhesives: readonly Adhesive[]): Adhesive | undefined {
  const wanted = name.trim().toLowerCase()
  return adhesives.find((each) => [each.name, ...each.alsoCalled].some((own) => own.toLowerCase() === wanted))
}
