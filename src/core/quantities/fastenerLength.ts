import { type Length, times } from '../measure/length.ts'
import { type Driven, type Graded, GRIPS, gradeSize } from './fastenerBite.ts'
import { explainObstacle, type FastenerObstacle } from './fastenerObstacle.ts'
import type { FastenerSize, FastenerTables } from './fastenerSize.ts'

export interface FastenerChoice extends Graded {
  readonly status: 'chosen'
}

export type NoFastener = { readonly status: 'impossible' } & FastenerObstacle

/**
 * The size that holds and never comes through: three times the held piece (two and a half for screws), else as long as stays
 * 1/8 in inside the far face so long as it bites. The lightest gauge made for the held piece comes first, since it splits
 * least. Throws where a thickness is not above 0.
 */
export function chooseFastener(driven: Driven, tables: FastenerTables): FastenerChoice | NoFastener {
  checkDriven(driven)
  const { sizes, rules, distances } = tables
  const clear = (size: FastenerSize): Length => times(size.diameter, 2 * distances.undrilled.edge)
  const sold = sizes.filter(({ kind, region }) => kind === driven.kind && region === driven.region)
  const best = sold
    .filter((size) => (size.heldUpTo ?? Infinity) >= driven.held && clear(size) <= (driven.width ?? Infinity))
    .flatMap((size) => gradeSize(size, driven, rules) ?? [])
    .sort(compare)[0]
  if (best) return { status: 'chosen', ...best }
  return { status: 'impossible', ...explainObstacle(sold, driven, rules, clear) }
}

function checkDriven({ held, receiver, width = held }: Driven): void {
  if (!(held > 0 && receiver > 0 && width > 0))
    throw new RangeError(`thicknesses must be above 0: ${held}, ${receiver}, ${width}`)
}

/** Better grip, then lighter gauge, then the shortest that is long enough, else the longest. */
function compare(a: Graded, b: Graded): number {
  const grip = GRIPS.indexOf(a.grip) - GRIPS.indexOf(b.grip)
  const gauge = (a.size.heldUpTo ?? 0) - (b.size.heldUpTo ?? 0)
  const length = a.size.length - b.size.length
  return grip || gauge || (a.grip === 'full' ? length : -length)
}
