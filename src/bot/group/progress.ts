import { z } from 'zod'
import { kitLabel } from '../../core/group/mergeParts.ts'
import { type KitSteps, STATIONS, type Station, stationsOf, stepsAt } from '../../core/group/stations.ts'
import { type KitProgress, progressOf, readyOf, stepsLeft, type TickState } from '../../core/group/ticks.ts'
import { defineAction } from '../command.ts'
import type { Context } from '../context.ts'
import { first, words } from '../option.ts'
import { Refusal } from '../refusal.ts'
import type { Button, Cell, Reply, Table } from '../reply.ts'
import { timeWords } from '../stepsReply.ts'
import { current, type Group, groupOf } from './group.ts'
import { groupFigures, kitNames, namesOf } from './groupReply.ts'
import { kitNumber } from './kitNumber.ts'
import { kitStepsOf } from './kitSteps.ts'
import { mergedList, problemLines, workKits } from './kits.ts'
import { numberOf } from './textNumber.ts'

/** Stations in a heading that is one column wide; their first letters are all different. */
const letter = (station: Station): string => station.slice(0, 1).toUpperCase()

const SIGNS: Readonly<Record<TickState, string>> = { none: ' ', open: '.', done: '+', changed: '!' }

/** Taps that are offered at once. */
const MOST_BUTTONS = 3

/** How each kit that can be built stands by the ticks that are kept. */
export function standOf(group: Group, kits: readonly KitSteps[]): readonly KitProgress[] {
  const prints = new Map(group.done.map(({ kit, station, print }) => [`${kit} ${station}`, print]))
  return progressOf(kits, (kit, station) => prints.get(`${kit} ${station}`), numberOf)
}

export const progress = defineAction({
  summary: 'Where are we: what is done at which station, and what comes next',
  options: z.strictObject({
    kit: first(words('one kit, with who did what and when', 'K07')).optional(),
  }),
  run: async ({ kit }, context) => {
    const group = current(await groupOf(context).read())
    return kit === undefined ? progressReply(group, context, '') : kitReply(group, kitNumber(kit), context)
  },
})

/** The board of kits and stations; `said` begins the first line where something was just done. */
export async function progressReply(group: Group, context: Context, said: string): Promise<Reply> {
  const worked = workKits(group, context)
  const kits = kitStepsOf(worked, context)
  if (kits.length === 0)
    throw new Refusal(
      'invalid',
      'nobody has joined with a kit that can be built, so there is nothing to tick off',
    )
  const all = standOf(group, kits)
  const { times } = context.reference
  const left = stationsOf(stepsLeft(kits, all), times)
  const cells = all.flatMap(({ states }) => Object.values(states)).filter((state) => state !== 'none')
  const done = cells.filter((state) => state === 'done').length
  const ready = readyOf(all)
  const minutes = left.reduce((sum, each) => sum + each.minutes, 0)
  const [next] = ready
  return {
    answer: `${said === '' ? '' : `${said}. `}${
      next
        ? `${done} of ${cells.length} done, about ${timeWords(minutes)} of work left. Next: ${next.station} ${kitNames(next.kits)}`
        : `All ${kits.length} kits are done`
    }`,
    tables: [
      boardOf(all),
      stationTable(all, new Map(left.map((each) => [each.station, each.minutes]))),
    ].filter(({ rows }) => rows.length > 0),
    notes: [
      ...ready.slice(1).map((each) => `then ${each.station}: ${kitNames(each.kits)}`),
      ...changedLines(all),
      ...(await latestLine(group, context)),
      ...problemLines(worked),
    ],
    buttons: [...ready.slice(0, MOST_BUTTONS).map(tickButton), { label: 'Stations', line: 'group stations' }],
    figures: {
      ...groupFigures(group, worked, mergedList(group, worked)),
      done,
      cells: cells.length,
      minutes,
      next: next ? { station: next.station, kits: [...next.kits] } : null,
      changed: all.flatMap((each) => changedAt(each).map((station) => ({ kit: each.kit, station }))),
      progress: all.map((each) => ({ kit: each.kit, ...each.states })),
    },
    audience: 'channel',
  }
}

const tickButton = ({
  station,
  kits,
}: {
  readonly station: Station
  readonly kits: readonly number[]
}): Button => ({
  label: `${station} ${kitLabel(kits[0] ?? 0)} is done`,
  line: `group tick ${station} kits=${kits[0] ?? 0}`,
})

const isOver = (state: TickState): boolean => state === 'done' || state === 'none'

/** Kits that are not over yet, by station; a station that no kit needs has no column. */
function boardOf(all: readonly KitProgress[]): Table {
  const used = STATIONS.filter((station) => all.some(({ states }) => states[station] !== 'none'))
  return {
    title: '+ done . open ! changed',
    columns: ['Kit', ...used.map(letter)],
    rows: all
      .filter(({ states }) => !STATIONS.every((station) => isOver(states[station])))
      .map(({ kit, states }): Cell[] => [kitLabel(kit), ...used.map((station) => SIGNS[states[station]])]),
  }
}

const stationTable = (all: readonly KitProgress[], minutes: ReadonlyMap<Station, number>): Table => ({
  title: 'Kits by station',
  columns: ['Station', 'Done', 'Of', 'Min left'],
  rows: STATIONS.map((station) => ({
    station,
    states: all.map(({ states }) => states[station]).filter((state) => state !== 'none'),
  }))
    .filter(({ states }) => states.length > 0)
    .map(({ station, states }): Cell[] => [
      station,
      states.filter((state) => state === 'done').length,
      states.length,
      minutes.get(station) ?? 0,
    ]),
})

const changedAt = ({ states }: KitProgress): readonly Station[] =>
  STATIONS.filter((station) => states[station] === 'changed')

/** What was ticked off by numbers that are others now. */
const changedLines = (all: readonly KitProgress[]): readonly string[] => {
  const lines = STATIONS.flatMap((station) => {
    const kits = all.filter(({ states }) => states[station] === 'changed').map(({ kit }) => kit)
    return kits.length > 0 ? [`${station} ${kitNames(kits)}`] : []
  })
  return lines.length > 0
    ? [`changed since it was ticked off: ${lines.join('; ')}; look again, then tick it again`]
    : []
}

const when = (at: string): string => `${at.slice(0, 16).replace('T', ' ')} UTC`

async function latestLine({ done }: Group, context: Context): Promise<readonly string[]> {
  const last = done.reduce<Group['done'][number] | undefined>((a, b) => (a && a.at > b.at ? a : b), undefined)
  if (!last) return ['nothing is ticked off yet']
  const names = await namesOf([last.user], context)
  return [`last: ${last.station} ${kitLabel(last.kit)}, by ${names.get(last.user)}, ${when(last.at)}`]
}

/** How one kit stands, with who did what and when. */
export async function kitReply(group: Group, number: number, context: Context): Promise<Reply> {
  const worked = workKits(group, context)
  const kits = kitStepsOf(worked, context)
  const all = standOf(group, kits)
  const found = all.find((each) => each.kit === number)
  if (!found) throw new Refusal('invalid', `there is no ${kitLabel(number)} to build in this group`)
  const ticks = group.done.filter(({ kit }) => kit === number)
  const names = await namesOf(
    ticks.map(({ user }) => user),
    context,
  )
  const here = STATIONS.filter((station) => found.states[station] !== 'none')
  const done = here.filter((station) => found.states[station] === 'done').length
  const line = (station: Station) => {
    const tick = ticks.find((each) => each.station === station)
    if (!tick) return `${station}: open`
    const changed = found.states[station] === 'changed' ? '; changed since' : ''
    return `${station}: ${names.get(tick.user)}, ${when(tick.at)}${changed}`
  }
  const [next] = readyOf([found])
  const steps = kits.find(({ kit }) => kit === number)?.steps ?? []
  return {
    answer: `${kitLabel(number)}: ${done} of ${here.length} stations done${next ? `. Next: ${next.station} (${stepsAt(steps, next.station).length} steps)` : ''}`,
    notes: here.map(line),
    buttons: [...(next ? [tickButton(next)] : []), { label: 'All kits', line: 'group progress' }],
    figures: {
      ...groupFigures(group, worked, mergedList(group, worked)),
      kit: number,
      done,
      states: { ...found.states },
    },
  }
}
