import type { Length } from '../core/measure/length.ts'
import type { Purpose } from '../core/measure/round.ts'
import type { Show } from './show.ts'

/** Two sides and what each mark misses by: `17 x 13 in`, `528 x 426 mm (+0.4, +0.55)`, `528 x 426 mm (0, +0.55)`. */
export function pair(long: Length, wide: Length, show: Show, purpose?: Purpose): string {
  const size = `${show.mark(long, purpose)} x ${show.mark(wide, purpose)} ${show.unit}`
  const misses = [long, wide].map((side) => show.miss(side, purpose).replace(/[()]/gu, ''))
  return misses.every((miss) => miss === '')
    ? size
    : `${size} (${misses.map((miss) => miss || '0').join(', ')})`
}
