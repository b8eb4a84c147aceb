import { type Length, nanometres, plus } from '../measure/length.ts'
import { acrossFace, type Cut, type Species, shrinkageOf } from './species.ts'

/** Percent of moisture past which wood holds free water and moves no more. */
export const FIBRE_SATURATION = 30

/** The span in which growth for each 1 % is even, percent (Wood Handbook, GTR-190, ch. 13). */
export const EVEN_GROWTH = { low: 6, high: 14 } as const

/** A solid piece, measured across the grain at `from` percent of moisture, that goes to `to` percent. */
export interface Moving {
  readonly width: Length
  readonly species: Species
  readonly cut: Cut
  readonly from: number
  readonly to: number
}

/** What a piece gains, or loses where `change` is negative. */
export interface Movement {
  readonly status: 'moved'
  readonly change: Length
  readonly size: Length
  /** Part of the width for each 1 % of moisture between 6 and 14 %. */
  readonly growth: number
  /** Reckoned by the form for all moistures, since one of the two is outside 6 to 14 %. */
  readonly beyond: boolean
  readonly fromMemory: boolean
}

export interface MovementUnknown {
  readonly status: 'unknown'
  readonly reason: string
}

/**
 * Change of width across the grain. From 6 to 14 %: D C (M2 - M1), Wood Handbook (GTR-190), ch. 13. Past that the straight
 * line behind it: D (M2 - M1) / (3000 / S - 30 + M1), S percent shrinkage, and nothing above 30 %. Unknown where no source
 * says how the wood moves; throws for a moisture below 0.
 */
export function movement({ width, species, cut, from, to }: Moving): Movement | MovementUnknown {
  if (!(from >= 0 && to >= 0)) throw new RangeError(`moisture must be at least 0 %: ${from}, ${to}`)
  if (!species.growth)
    return { status: 'unknown', reason: `no source says how ${species.name} moves across the grain` }
  const growth = acrossFace(species.growth, cut)
  const beyond = !(isEven(from) && isEven(to))
  const change = nanometres(width * (beyond ? wholeRange(growth, from, to) : growth * (to - from)))
  const { fromMemory } = species.growth
  return { status: 'moved', change, size: plus(width, change), growth, beyond, fromMemory }
}

const isEven = (moisture: number): boolean => moisture >= EVEN_GROWTH.low && moisture <= EVEN_GROWTH.high

function wholeRange(growth: number, from: number, to: number): number {
  const [start, end] = [Math.min(from, FIBRE_SATURATION), Math.min(to, FIBRE_SATURATION)]
  return (end - start) / ((100 * FIBRE_SATURATION) / shrinkageOf(growth) - FIBRE_SATURATION + start)
}
