import {
  DRYING_STEPS,
  type Drying,
  type DryingRules,
  type DryingStep,
  type FinishProduct,
} from './product.ts'

/** What happens so many hours after the first coat was begun. */
export interface DryingEvent {
  readonly what: 'coat' | DryingStep
  /** The coat that it is about, from 1. */
  readonly coat: number
  readonly hours: number
  /** No source gives this time. */
  readonly fromMemory: boolean
}

/** When each step is reached. */
export interface DryingCalendar {
  readonly status: 'timed'
  /** In the order in which they come. */
  readonly events: readonly DryingEvent[]
  /** From one coat to the next, hours; undefined where no time is known. */
  readonly recoat: number | undefined
  /** How many times as slow as on a can's label. */
  readonly slower: number
  /** The slowing is the common rule, not the maker's own second time. */
  readonly byRule: boolean
}

/** The air is outside what the maker allows: at least, at most, or under so much. */
export interface NoDrying {
  readonly status: 'too cold' | 'too hot' | 'too damp' | 'unknown'
  readonly limit: number
}

/** Air and wood: degrees Celsius, and percent humidity where it is known. */
export interface Air {
  readonly temperature: number
  readonly humidity?: number | undefined
}

/**
 * The calendar of `coats` coats, each begun as soon as the last takes it. Colder than the label reckons with, times double for
 * every so many degrees, by the maker's own second time where there is one; in humid air they are longer too; warmer nothing
 * is taken off. Throws for fewer than one coat.
 */
export function dryingCalendar(
  { drying }: Pick<FinishProduct, 'drying'>,
  coats: number,
  air: Air,
  rules: DryingRules,
): DryingCalendar | NoDrying {
  if (!(Number.isInteger(coats) && coats >= 1)) throw new RangeError(`coats must be 1 or more: ${coats}`)
  if (!drying) return { status: 'unknown', limit: 0 }
  const outside = outsideOf(drying, air)
  if (outside) return outside
  const recoat = drying.recoat?.low
  if (coats > 1 && recoat === undefined) return { status: 'unknown', limit: 0 }
  const slower = coldTimes(drying, air.temperature, rules) * dampTimes(air, rules)
  const last = (coats - 1) * (recoat ?? 0)
  const starts = Array.from({ length: coats }, (_, index) => index * (recoat ?? 0))
  const events = [
    ...starts.map((start, index) => event('coat', index + 1, start, drying)),
    ...DRYING_STEPS.filter((step) => step !== 'recoat').flatMap((step) => {
      const time = drying[step]
      return time ? [event(step, coats, last + time.low, drying)] : []
    }),
  ]
  return {
    status: 'timed',
    events: events
      .map((each) => ({ ...each, hours: each.hours * slower }))
      .sort((one, other) => one.hours - other.hours),
    recoat: recoat === undefined ? undefined : recoat * slower,
    slower,
    byRule: slower > 1 && (drying.cold === undefined || dampTimes(air, rules) > 1),
  }
}

function outsideOf({ temperature, humidityBelow }: Drying, air: Air): NoDrying | undefined {
  if (temperature && air.temperature < temperature.low) return { status: 'too cold', limit: temperature.low }
  if (temperature && air.temperature > temperature.high) return { status: 'too hot', limit: temperature.high }
  if (humidityBelow !== undefined && (air.humidity ?? 0) >= humidityBelow)
    return { status: 'too damp', limit: humidityBelow }
  return undefined
}

function coldTimes(
  { cold, recoat }: Drying,
  temperature: number,
  { ratedAt, doublesPer }: DryingRules,
): number {
  const colder = Math.max(0, ratedAt - temperature)
  if (!cold || !recoat) return 2 ** (colder / doublesPer)
  return (cold.recoat / recoat.low) ** (colder / (ratedAt - cold.temperature))
}

const dampTimes = ({ humidity }: Air, { humid, humidTimes }: DryingRules): number =>
  humidity !== undefined && humidity >= humid ? humidTimes : 1

const event = (
  what: DryingEvent['what'],
  coat: number,
  hours: number,
  { fromMemory = [] }: Drying,
): DryingEvent => ({
  what,
  coat,
  hours,
  fromMemory: fromMemory.includes(what === 'coat' ? 'recoat' : what) && hours > 0,
})
