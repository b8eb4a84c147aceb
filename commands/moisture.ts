import { z } from 'zod'
import { cornerYear } from '../src/bot/capturedCorner.ts'
import { defineCommand, type Idle } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { choice, first, length, percent, species, temperature } from '../src/bot/option.ts'
import { planned } from '../src/bot/plannedSurround.ts'
import { Refusal } from '../src/bot/refusal.ts'
import { chooseWood } from '../src/bot/wood.ts'
import { FOOT, type Length, millimetres, toMillimetres } from '../src/core/measure/length.ts'
import { showPercent, showTemperature } from '../src/core/measure/showAir.ts'
import { showCaliper } from '../src/core/measure/showCaliper.ts'
import { equilibriumMoisture } from '../src/core/moisture/equilibrium.ts'
import { movement } from '../src/core/moisture/movement.ts'
import { panelMoisture } from '../src/core/moisture/panelMoisture.ts'
import { mdfMovement, plywoodMovement } from '../src/core/moisture/panelMovement.ts'
import { CUTS } from '../src/core/moisture/species.ts'

const options = z.strictObject({
  humidity: first(percent('of the air that the wood goes to')),
  temperature: temperature('of the air').optional(),
  before: percent('humidity of the air that the wood comes from', '45%').optional(),
  measured: percent('moisture of the wood now, by a meter', '9%').optional(),
  width: length('the size that moves: across the grain, or along a sheet', '5 1/2in').optional(),
  wood: species('which wood').optional(),
  cut: choice('how the rings lie to the face', CUTS).optional(),
  material: choice('solid wood, or a sheet', ['wood', 'plywood', 'mdf']).optional(),
})
type Asked = z.output<typeof options>

/** What a piece does as its air changes. */
interface Moved {
  /** Percent it settles at, and percent it comes from. */
  readonly to: number
  readonly from: number
  readonly change: Length
  readonly what: string
  readonly notes: readonly string[]
}

export default defineCommand({
  name: 'moisture',
  summary: 'What moisture wood settles at in your air, and how much it grows or shrinks',
  examples: [
    'moisture 65% temperature=70F width=5 1/2in wood=pine',
    'moisture 30% temperature=20C measured=14% width=140mm wood=Douglas-fir cut=quarter',
    'moisture 80% before=40% width=36in material=plywood',
  ],
  options,
  idle: [
    ...(['wood', 'cut'] as const).map(
      (option): Idle<Asked> => ({
        option,
        what: 'solid wood',
        how: 'material=wood',
        isUsed: ({ input }) => (input.material ?? 'wood') === 'wood',
      }),
    ),
    {
      option: 'temperature',
      what: 'wood and plywood',
      how: 'material=wood',
      isUsed: ({ input }) => input.material !== 'mdf',
    },
    {
      option: 'before',
      what: 'a piece that no meter was held to',
      how: 'leave measured= out',
      isUsed: ({ input }) => input.measured === undefined,
    },
  ],
  run: (input, context) => {
    const { show, reference } = context
    const degrees = input.temperature?.celsius ?? reference.seasons.temperature
    const width = widthOf(input, context)
    const moved = MOVES[input.material ?? 'wood']({ ...input, width: width.length }, degrees, context)
    const { to, from, change, what } = moved
    const size = Math.abs(change) as Length
    return {
      answer: `${what} settles at ${showPercent(to)} moisture: ${show.mark(width.length, 'mark', true)} ${show.unit} ${change < 0 ? 'shrinks' : 'grows'} ${showCaliper(size, show.units)}`,
      notes: [
        ...(input.measured
          ? []
          : [
              `from ${showPercent(input.before?.percent ?? reference.seasons.humidity)} humidity${input.before ? '' : ' (before=, or measured= by a meter)'}`,
            ]),
        `from ${showPercent(from)} to ${showPercent(to)} moisture, given weeks to settle`,
        ...moved.notes,
        ...width.notes,
        ...(input.temperature || input.material === 'mdf'
          ? []
          : [`air at ${showTemperature(degrees, show.units)} (temperature=)`]),
        ...(input.material !== 'mdf' && (degrees < COLDEST || degrees > HOTTEST)
          ? ['past the temperatures of the handbook’s table: less sure']
          : []),
      ],
      figures: {
        moisture: to,
        from,
        change: toMillimetres(change),
        size: toMillimetres(width.length) + toMillimetres(change),
        ...cornerFigures(context),
      },
    }
  },
})

/** Degrees Celsius of the ends of the Wood Handbook's table, 30 and 140 F, with a tenth to spare. */
const COLDEST = -1.2
const HOTTEST = 60.1

/** The channel's captured corner over its usual year, so that one answer has it all; null where there is none. */
function cornerFigures(context: Context) {
  const plan = context.project && planned(context.project.choices, context).plan
  if (plan?.spec.corner !== 'captured') return { loosest: null, tightest: null, allowance: null }
  const { fit } = cornerYear({}, context)
  return {
    loosest: toMillimetres(fit.loosest),
    tightest: toMillimetres(fit.tightest),
    allowance: toMillimetres(fit.allowance),
  }
}

function widthOf({ width }: Asked, context: Context): { length: Length; notes: readonly string[] } {
  if (width !== undefined) return { length: width, notes: [] }
  if (context.project) {
    const { spec } = planned(context.project.choices, context).plan
    return { length: spec.width, notes: ["the strips of this channel's project (width=)"] }
  }
  const length = context.show.units === 'inch' ? FOOT : millimetres(300)
  return { length, notes: [`for a width of ${context.show.length(length)} (width=)`] }
}

type Move = (input: Asked & { width: Length }, degrees: number, context: Context) => Moved

const MOVES: Readonly<Record<NonNullable<Asked['material']>, Move>> = {
  wood: ofWood,
  plywood: ofPlywood,
  mdf: ofMdf,
}

function ofWood(input: Asked & { width: Length }, degrees: number, context: Context): Moved {
  const { cut = 'flat', width, before, measured, humidity } = input
  const { wood, notes } = chooseWood(input.wood, context)
  const to = equilibriumMoisture(degrees, humidity.percent)
  const from =
    measured?.percent ?? equilibriumMoisture(degrees, before?.percent ?? context.reference.seasons.humidity)
  const moved = movement({ width, species: wood, cut, from, to })
  if (moved.status === 'unknown')
    throw new Refusal('invalid', `${moved.reason}; name another wood, such as wood=hem-fir`)
  return {
    to,
    from,
    change: moved.change,
    what: wood.name,
    notes: [
      ...notes,
      `across the grain, ${cut}-sawn${input.cut ? '' : ' (cut=)'}; along the grain it stays`,
      ...(moved.fromMemory ? [`how ${wood.name} moves is from memory`] : []),
      ...(moved.beyond ? ['outside 6 to 14 % moisture it moves less evenly'] : []),
    ],
  }
}

/** Plywood goes by the air itself, so a meter does not help. */
function ofPlywood(
  { width, before, measured, humidity }: Asked & { width: Length },
  degrees: number,
  context: Context,
): Moved {
  if (measured)
    throw new Refusal(
      'invalid',
      'plywood is reckoned by the air, not by a meter; write before=45% in place of measured=',
    )
  const air = before?.percent ?? context.reference.seasons.humidity
  return {
    to: equilibriumMoisture(degrees, humidity.percent),
    from: equilibriumMoisture(degrees, air),
    change: plywoodMovement(width, air, humidity.percent),
    what: 'plywood',
    notes: ['along or across the sheet alike; leave 1/8 in (3 mm) between sheets'],
  }
}

function ofMdf(
  { width, before, measured, humidity }: Asked & { width: Length },
  _degrees: number,
  context: Context,
): Moved {
  const to = boardMoisture(humidity.percent)
  const from = measured?.percent ?? boardMoisture(before?.percent ?? context.reference.seasons.humidity)
  return {
    to,
    from,
    change: mdfMovement(width, 'plane', from, to),
    what: 'MDF',
    notes: [
      `each 1/2 in (12.7 mm) of its thickness moves ${showCaliper(Math.abs(mdfMovement(millimetres(12.7), 'thickness', from, to)) as Length, context.show.units)}`,
    ],
  }
}

/** Half way between the least and the most that the panel makers print. Throws a Refusal past their table. */
function boardMoisture(humidity: number): number {
  const printed = panelMoisture(humidity)
  if (!printed)
    throw new Refusal(
      'invalid',
      `no source says what moisture MDF settles at in ${showPercent(humidity)} humidity; write 30% to 90%`,
    )
  return (printed.low + printed.high) / 2
}
