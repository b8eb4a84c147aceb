import type { UnitSystem } from '../core/measure/reading.ts'
import { POUND } from '../core/measure/readWeight.ts'
import { LIFT_FILTER, liftFilter, liftingPeople, nioshLimit } from '../core/quantities/lift.ts'
import type { Show } from './show.ts'

/** Who can lift `grams` in one piece, held close at knuckle height. */
export function liftingNote(grams: number, what: string, { units }: Show): string {
  const most = liftingPeople(grams, liftFilter({ person: 'man' }))
  const least = liftingPeople(grams, liftFilter({ person: 'woman' }))
  const guide = `${limit(LIFT_FILTER.woman, units)} for a woman, ${limit(LIFT_FILTER.man, units)} for a man`
  const people = most === least ? `${most}` : `${most} or ${least}`
  return `${what}: a lift for ${people} (guide ${guide}, close and at knuckle height; a twist takes off a tenth or more; NIOSH's limit is ${limit(FROM_FLOOR, units)} from the floor to there)`
}

/** A panel is held a foot, 30 cm, from the ankles, and comes from the floor to the knuckles at 75 cm, without a twist. */
const FROM_FLOOR = Math.floor(nioshLimit({ horizontal: 30, vertical: 0, travel: 75 }))

/** kg to the whole unit below, as guides print it: `35 lb`, `16 kg`. */
const limit = (kilograms: number, units: UnitSystem): string =>
  units === 'inch' ? `${Math.floor((kilograms * 1000) / POUND)} lb` : `${kilograms} kg`
