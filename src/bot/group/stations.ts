import { z } from 'zod'
import {
  headsFor,
  type KitSteps,
  STATIONS,
  type Station,
  type StationWork,
  stationsOf,
} from '../../core/group/stations.ts'
import { toMillimetres } from '../../core/measure/length.ts'
import type { Setting } from '../../core/steps/step.ts'
import { defineAction } from '../command.ts'
import type { Context } from '../context.ts'
import { counted } from '../cutListReply.ts'
import { fewCautions } from '../fewCautions.ts'
import { choice, count, first } from '../option.ts'
import { Refusal } from '../refusal.ts'
import type { Caution, Cell, Reply, Table } from '../reply.ts'
import type { Show } from '../show.ts'
import { showKept } from '../showKept.ts'
import { timeWords } from '../stepsReply.ts'
import { current, groupOf } from './group.ts'
import { groupFigures, onceEach } from './groupReply.ts'
import { kitStepsOf } from './kitSteps.ts'
import { mergedList, problemLines, workKits } from './kits.ts'

/** A day of work, in hours, where nobody says (common practice: with breaks and clearing up). */
const DAY = 6

/** Kits that are built, and their work by station. Throws a Refusal where there is none. */
async function workOf(context: Context) {
  const group = current(await groupOf(context).read())
  const worked = workKits(group, context)
  const kits = kitStepsOf(worked, context)
  if (kits.length === 0)
    throw new Refusal(
      'invalid',
      'nobody has joined with a kit that can be built, so there is no work yet: group join',
    )
  return { group, worked, kits, work: stationsOf(kits, context.reference.times) }
}

export const stations = defineAction({
  summary: 'The work of the day by station: pieces, saw settings, minutes and how many people it takes',
  options: z.strictObject({
    station: first(choice('one of them, with its settings', STATIONS)).optional(),
    hours: count('how long the day is', 1, 24).optional(),
  }),
  run: async ({ station, hours = DAY }, context): Promise<Reply> => {
    const { group, worked, kits, work } = await workOf(context)
    const shown = station === undefined ? work : work.filter((each) => each.station === station)
    if (shown.length === 0)
      throw new Refusal('invalid', `no kit of this group has anything to ${station ?? 'do'}`)
    const show = showKept(context, group.units)
    const heads = headsFor(work, hours * 60)
    const cautions = fewCautions(cautionsOf(shown, context))
    return {
      answer:
        station === undefined ? dayWords(work, kits.length, hours) : stationWords(shown[0], kits.length),
      cautions: cautions.cautions,
      tables: station === undefined ? [stationTable(work, hours)] : settingTables(shown, show),
      notes: [
        ...(station === undefined
          ? [
              `No is pieces, Set is saw settings, each once for all kits, Min is minutes, Who is people for a day of ${hours} h`,
            ]
          : []),
        ...dayNotes(shown, hours),
        ...problemLines(worked),
      ],
      buttons: [{ label: 'Where are we', line: 'group progress' }, ...cautions.buttons],
      figures: {
        ...groupFigures(group, worked, mergedList(group, worked)),
        settings: work.reduce((sum, each) => sum + each.settings, 0),
        minutes: work.reduce((sum, each) => sum + each.minutes, 0),
        operators: heads.operators,
        hands: heads.hands,
        stations: work.map((each) => ({
          station: each.station,
          kits: each.kits.length,
          pieces: each.pieces,
          settings: each.settings,
          minutes: each.minutes,
          people: peopleFor(each, hours),
        })),
      },
      audience: 'channel',
    }
  },
})

/** The day as it is printed, an ordinary one. */
export interface Day {
  readonly answer: string
  readonly table: Table
  readonly notes: readonly string[]
  /** Settings of the stations that the cut order says nothing of: what is grooved and drilled. */
  readonly apart: readonly Table[]
}

/** The work of an ordinary day on these kits. */
export function dayOf(kits: readonly KitSteps[], show: Show, { reference }: Context): Day {
  const work = stationsOf(kits, reference.times)
  const apart = work.filter(({ station }) => station === 'groove' || station === 'drill')
  return {
    answer: dayWords(work, kits.length, DAY),
    table: stationTable(work, DAY),
    notes: dayNotes(work, DAY),
    apart: settingTables(apart, show).map((table, index) => ({
      ...table,
      title: `${capital(apart[index]?.station ?? 'groove')}. ${table.title ?? ''}`,
    })),
  }
}

function dayWords(work: readonly StationWork[], kits: number, hours: number): string {
  const { operators, hands } = headsFor(work, hours * 60)
  const minutes = work.reduce((sum, each) => sum + each.minutes, 0)
  return `About ${timeWords(minutes)} of work on ${counted(kits, 'kit')}; a day of ${hours} h takes ${counted(operators, 'adult')} at the saws and ${hands} more at the benches`
}

const dayNotes = (work: readonly StationWork[], hours: number): readonly string[] => [
  'one operator at each saw, and only adults at power tools',
  'minutes are common practice, without drying of glue or paint',
  ...tooMuch(work, hours),
]

const peopleFor = ({ minutes }: StationWork, hours: number): number => Math.ceil(minutes / (hours * 60))

const stationWords = (work: StationWork | undefined, kits: number): string =>
  work
    ? `${capital(work.station)}: ${counted(work.pieces, 'piece')} of ${work.kits.length === kits ? 'all' : work.kits.length} kits${work.settings > 0 ? `, ${counted(work.settings, 'saw setting')}` : ''}, about ${timeWords(work.minutes)}`
    : ''

const capital = (station: Station): string => `${station.slice(0, 1).toUpperCase()}${station.slice(1)}`

const stationTable = (work: readonly StationWork[], hours: number): Table => ({
  title: 'Stations',
  columns: ['Station', 'No', 'Set', 'Min', 'Who'],
  rows: work.map((each): Cell[] => [
    each.station,
    each.pieces,
    each.settings,
    each.minutes,
    peopleFor(each, hours),
  ]),
})

/** Every setting of a saw, the largest first, with how many kits share it; nothing for the benches. */
function settingTables(work: readonly StationWork[], show: Show): readonly Table[] {
  return work
    .filter(({ powered }) => powered)
    .map(({ steps }) => {
      const rows = new Map<string, { readonly setting: Setting; uses: number }>()
      for (const setting of steps.flatMap((step) => step.settings)) {
        const key = JSON.stringify([setting.what, setting.length, setting.degrees])
        const row = rows.get(key) ?? { setting, uses: 0 }
        row.uses += 1
        rows.set(key, row)
      }
      return {
        title: `Set, and for how many (${show.unit})`,
        columns: ['Set', 'No', 'What'],
        rows: [...rows.values()]
          .sort((a, b) => size(b.setting) - size(a.setting))
          .map(({ setting, uses }): Cell[] => [marked(setting, show), uses, setting.what]),
      }
    })
}

const size = ({ length, degrees }: Setting): number =>
  length === undefined ? (degrees ?? 0) : toMillimetres(length)

const marked = ({ length, degrees }: Setting, show: Show): string =>
  length === undefined ? show.angle(degrees ?? 0) : show.mark(length, 'mark', true)

/** Every caution of the work, once. */
function cautionsOf(work: readonly StationWork[], context: Context): readonly Caution[] {
  const facts = new Map(
    work.flatMap(({ steps }) => steps.map((step) => [JSON.stringify(step.facts), step.facts])),
  )
  return onceEach(
    [...facts.values()].flatMap((each) => context.cautions(each)),
    context,
  )
}

/** Saws that one operator does not finish with in a day. */
const tooMuch = (work: readonly StationWork[], hours: number): readonly string[] =>
  work
    .filter((each) => each.powered && peopleFor(each, hours) > 1)
    .map(
      (each) =>
        `${each.station} is more than one operator does in a day: ${peopleFor(each, hours)} saws, or begin ahead`,
    )
