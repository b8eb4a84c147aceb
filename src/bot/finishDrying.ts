import { showHours, showPercent, showTemperature } from '../core/measure/showAir.ts'
import {
  type Air,
  type DryingCalendar,
  type DryingEvent,
  dryingCalendar,
  type NoDrying,
} from '../core/quantities/dryingCalendar.ts'
import { ABOVE_DEW, dewPoint } from '../core/quantities/dryingDewPoint.ts'
import type { FinishProduct } from '../core/quantities/product.ts'
import type { Context } from './context.ts'
import { Refusal } from './refusal.ts'
import type { Cell, Figure, Table } from './reply.ts'
import { listed } from './suggest.ts'

/** What may be said of the air. */
export interface AirAsked {
  readonly temperature?: { readonly celsius: number } | undefined
  readonly humidity?: { readonly percent: number } | undefined
}

/** When coats dry, or why that is not said. */
export interface Drying {
  readonly air: Air
  readonly calendar: DryingCalendar | NoDrying
}

/**
 * The calendar at the air that was typed, else at that of a warm shop. Throws a Refusal where the maker allows no such air and
 * somebody typed it.
 */
export function dryingOf(product: FinishProduct, coats: number, asked: AirAsked, context: Context): Drying {
  const { reference } = context
  const { temperature = { celsius: reference.seasons.temperature }, humidity } = asked
  const air = { temperature: temperature.celsius, humidity: humidity?.percent }
  const calendar = dryingCalendar(product, coats, air, reference.drying)
  const isTyped = asked.temperature !== undefined || humidity !== undefined
  if (isTyped && calendar.status !== 'timed' && calendar.status !== 'unknown')
    throw new Refusal('invalid', outsideSentence(product, calendar, air, context))
  return { air, calendar }
}

function outsideSentence(
  product: FinishProduct,
  { status, limit }: NoDrying,
  air: Air,
  context: Context,
): string {
  const { show, reference } = context
  const degrees = (celsius: number): string => showTemperature(celsius, show.units)
  const instead = reference.finishes
    .filter(
      (other) => other !== product && dryingCalendar(other, 1, air, reference.drying).status === 'timed',
    )
    .map(({ name }) => name)
  const or = instead.length > 0 ? `, or use ${listed(instead.slice(0, 3), 'or')} (product=)` : ''
  if (status === 'too damp')
    return `${product.name} does not dry in air of ${showPercent(air.humidity ?? 0)}: its maker asks for less than ${showPercent(limit)}. Air or heat the room${or}`
  if (status === 'too hot')
    return `${product.name} dries before it flows at ${degrees(air.temperature)}: its maker allows ${degrees(limit)} at the most. Wait for the cool of the day, out of the sun${or}`
  return `${product.name} does not dry at ${degrees(air.temperature)}: air and wood must have ${degrees(limit)} at the least, until it is hard. Warm the room and the wood${or}`
}

const STEPS: Readonly<Record<DryingEvent['what'], string>> = {
  coat: 'coat',
  touch: 'dry to the touch',
  recoat: 'recoat',
  handle: 'handle it',
  assemble: 'put it together',
  full: 'full cure',
}

/** Each step and how long after the first coat was begun. */
export function dryingTables({ air, calendar }: Drying, { show }: Context): readonly Table[] {
  if (calendar.status !== 'timed') return []
  const damp = air.humidity === undefined ? '' : `, ${showPercent(air.humidity)}`
  return [
    {
      title: `Drying at ${showTemperature(air.temperature, show.units)}${damp}, from the first coat`,
      columns: ['After', 'Then'],
      rows: calendar.events.map(({ what, coat, hours, fromMemory }): Cell[] => [
        hours === 0 ? '0' : showHours(hours),
        `${what === 'coat' ? `coat ${coat}` : STEPS[what]}${fromMemory ? ' *' : ''}`,
      ]),
    },
  ]
}

/** What the calendar rests on, one line each. */
export function dryingNotes(
  { air, calendar }: Drying,
  product: FinishProduct,
  asked: AirAsked,
  context: Context,
) {
  const { show, reference } = context
  const note = product.drying?.note
  if (calendar.status !== 'timed') return [...dewNotes(air, context), ...(note === undefined ? [] : [note])]
  const { slower, byRule, events } = calendar
  const { doublesPer, humid } = reference.drying
  const step = show.units === 'inch' ? `${Math.round(doublesPer * 1.8)}°F` : `${doublesPer}°C`
  const how = byRule
    ? `by a rule of thumb, double for every ${step} colder and longer from ${humid} % humidity`
    : "by the maker's two times"
  return [
    ...dewNotes(air, context),
    ...(events.some(({ fromMemory }) => fromMemory) ? ['* common practice, no source: go by the can'] : []),
    ...(slower > 1.005 ? [`${slower.toFixed(1)} times as slow as on the can, ${how}`] : []),
    ...(asked.temperature
      ? []
      : [`drying reckoned at ${showTemperature(air.temperature, show.units)} (temperature=, humidity=)`]),
    ...(note === undefined ? [] : [note]),
  ]
}

/** Whether a film put on now would peel: in a warm shop too, where the air is so damp. */
export const isTooDamp = ({ air: { temperature, humidity } }: Drying): boolean =>
  humidity !== undefined && humidity > 0 && dewPoint(temperature, humidity) + ABOVE_DEW > temperature

/** How warm the wood must be so that no dew gets under the film; nothing where nobody has said how damp the air is. */
function dewNotes({ temperature, humidity }: Air, { show }: Context): readonly string[] {
  if (!humidity) return []
  const dew = dewPoint(temperature, humidity)
  const degrees = (celsius: number): string => showTemperature(celsius, show.units)
  const above = show.units === 'inch' ? '5°F' : '3°C'
  const least = dew + ABOVE_DEW
  return [
    least > temperature
      ? `too damp to coat: wood has to be ${above} above the dew point, ${degrees(dew)}, or the film peels; wait for drier air`
      : `wood no colder than ${degrees(least)}: ${above} above the dew point, ${degrees(dew)}, or the film peels`,
  ]
}

/** Degrees Celsius; null where nobody has said how damp the air is. */
export const dewFigure = ({ air }: Drying): number | null =>
  air.humidity ? dewPoint(air.temperature, air.humidity) : null

/** Hours from one coat to the next; null where nothing is known of it. */
export const recoatFigure = ({ calendar }: Drying): number | null =>
  calendar.status === 'timed' ? (calendar.recoat ?? null) : null

/** Hours after the first coat was begun. */
export const dryingFigures = ({ calendar }: Drying): Figure =>
  calendar.status === 'timed' ? calendar.events.map((event) => ({ ...event })) : []
