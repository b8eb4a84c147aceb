import { type Length, toMillimetres } from '../measure/length.ts'
import type { Region } from '../stock/stock.ts'
import { type ContainerCount, containersFor } from './containers.ts'
import type { Adhesive, GlueTables } from './glueProduct.ts'

/** Places where one piece lies on another, `count` of them, each `length` by `width`. */
export interface GluedJoint {
  readonly count: number
  readonly length: Length
  readonly width: Length
}

/** How much glue to buy, and each step on the way. */
export interface GlueNeed {
  /** mm2 that touch, spread on one face. */
  readonly area: number
  /** m2/L: the low end of what the source gives, since running out costs more than a left-over. */
  readonly coverage: number
  /** um of wet film that this coverage is. */
  readonly film: number
  readonly waste: number
  /** mL with the waste. */
  readonly volume: number
  readonly bottles: readonly ContainerCount[]
}

/** mm2 of all the joints, one face of each. */
export const gluedArea = (joints: readonly GluedJoint[]): number =>
  joints.reduce(
    (total, { count, length, width }) => total + count * toMillimetres(length) * toMillimetres(width),
    0,
  )

/** Glue for `area` mm2 of joint. Throws for an area that is no finite number of at least 0. */
export function glueNeeded(
  area: number,
  adhesive: Adhesive,
  region: Region,
  { waste, bottles }: Pick<GlueTables, 'waste' | 'bottles'>,
): GlueNeed {
  if (!(Number.isFinite(area) && area >= 0)) throw new RangeError(`area must be at least 0: ${area}`)
  const coverage = adhesive.coverage.low
  const volume = (area / 1000 / coverage) * (1 + waste)
  const sold = bottles.filter((bottle) => bottle.region === region)
  return { area, coverage, film: 1000 / coverage, waste, volume, bottles: containersFor(volume, sold) }
}
