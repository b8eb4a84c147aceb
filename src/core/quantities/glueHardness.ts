import type { Species } from '../moisture/species.ts'
import { ovendryGravity } from './density.ts'
import type { Hardness } from './glueProduct.ts'

/** Heavier than this a hardwood is hard to press together: the gravity at which it is drilled for nails, too (NDS). */
const HARD = 0.6

/** How hard a wood is to press: every softwood is soft, a hardwood by its ovendry gravity, an unknown one hard (own rule). */
export function glueHardness({ kind, gravity }: Pick<Species, 'kind' | 'gravity'>): Hardness {
  if (kind === 'softwood') return 'soft'
  return gravity && ovendryGravity(gravity) <= HARD ? 'medium' : 'hard'
}
