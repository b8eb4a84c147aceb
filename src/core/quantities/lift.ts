/** The most a person lifts now and then, close and at knuckle height, kg (HSE, manual handling at work, INDG143). */
export const LIFT_FILTER = { man: 25, woman: 16 } as const

/** How a lift is done. */
export interface Lift {
  readonly person: keyof typeof LIFT_FILTER
  /** Degrees that the body turns with the load. */
  readonly twist?: number | undefined
  readonly perMinute?: number | undefined
}

/**
 * kg that want no closer look: 25 for a man, 16 for a woman; a tenth less when turning more than 45 degrees, a fifth past 90;
 * 30 % less for one or two lifts a minute, 50 % for five to eight, 80 % for more than twelve (HSE, INDG143), the step below
 * kept between them.
 */
export function liftFilter({ person, twist = 0, perMinute = 0 }: Lift): number {
  return LIFT_FILTER[person] * twistPart(twist) * oftenPart(perMinute)
}

function twistPart(degrees: number): number {
  if (degrees > 90) return 0.8
  return degrees > 45 ? 0.9 : 1
}

function oftenPart(perMinute: number): number {
  if (perMinute > 12) return 0.2
  if (perMinute >= 5) return 0.5
  return perMinute >= 1 ? 0.7 : 1
}

/** People that carry `mass` grams where each takes `limit` kg; at least one. Throws for a limit not above 0. */
export function liftingPeople(mass: number, limit: number): number {
  if (!(limit > 0)) throw new RangeError(`a lifting limit must be above 0: ${limit}`)
  return Math.max(1, Math.ceil(mass / 1000 / limit))
}

/** Where a load is and goes, centimetres and degrees; the last two are multipliers from the tables of the equation, 1 at best. */
export interface NioshLift {
  /** From the ankles to the hands. */
  readonly horizontal: number
  /** From the floor to the hands. */
  readonly vertical: number
  /** How far up or down it goes. */
  readonly travel: number
  readonly twist?: number | undefined
  readonly frequency?: number | undefined
  readonly coupling?: number | undefined
}

/**
 * Recommended weight limit, kg: 23 x 25/H x (1 - .003 |V - 75|) x (.82 + 4.5/D) x AM x FM x CM (NIOSH 94-110); 1 - .0032 a for
 * a twist of a degrees, and no lift past 63 cm out, 175 cm up or 135 degrees round, from memory.
 */
export function nioshLimit(lift: NioshLift): number {
  const { horizontal, vertical, travel, twist = 0, frequency = 1, coupling = 1 } = lift
  if (horizontal > 63 || vertical < 0 || vertical > 175 || travel > 175 || twist > 135) return 0
  const reach = 25 / Math.max(25, horizontal)
  const height = 1 - 0.003 * Math.abs(vertical - 75)
  const distance = 0.82 + 4.5 / Math.max(25, travel)
  return 23 * reach * height * distance * (1 - 0.0032 * twist) * frequency * coupling
}
