import type { Step } from '../steps/step.ts'
import { printOf, type Setting, type Stage } from '../steps/step.ts'
import { minutesOf, type Times } from '../steps/times.ts'

/** The work of the day, in its order. */
export const STATIONS = ['break down', 'rip', 'crosscut', 'groove', 'drill', 'assemble', 'finish'] as const
export type Station = (typeof STATIONS)[number]

/** Where each stage of a build is done: by the tool that it takes. */
const PLACES: Readonly<Record<Stage, Station>> = {
  'break down': 'break down',
  'cut panel': 'break down',
  rip: 'rip',
  crosscut: 'crosscut',
  groove: 'groove',
  'cut out': 'drill',
  frame: 'assemble',
  fit: 'assemble',
  brace: 'assemble',
  'dry fit': 'assemble',
  mark: 'assemble',
  finish: 'finish',
  assemble: 'assemble',
  'store flat': 'assemble',
}

/** Stations where a setting serves every kit that shares it; elsewhere each kit is measured for itself. */
const AT_A_SAW: ReadonlySet<Station> = new Set(['break down', 'rip', 'crosscut', 'groove', 'drill'])

/** The steps of one kit. */
export interface KitSteps {
  readonly kit: number
  readonly steps: readonly Step[]
}

/** What one station has to do for all kits together. */
export interface StationWork {
  readonly station: Station
  /** One operator at a time, who is an adult. */
  readonly powered: boolean
  /** Kits that have something to do there. */
  readonly kits: readonly number[]
  /** Pieces in hand; one that is handled in two steps of a station counts once. */
  readonly pieces: number
  /** Settings of the saw, each counted once for all kits; 0 where each kit is measured for itself. */
  readonly settings: number
  /** An estimate, whole. */
  readonly minutes: number
  readonly steps: readonly Step[]
}

/** The steps that a kit has at a station. */
export const stepsAt = (steps: readonly Step[], station: Station): readonly Step[] =>
  steps.filter(({ stage }) => PLACES[stage] === station)

/** The numbers of a kit at a station as one text; another text means that something to do there has changed. */
export const printAt = (steps: readonly Step[], station: Station): string =>
  stepsAt(steps, station).map(printOf).join('\n')

/** The work of all kits by station, in the order of the day; stations with nothing to do are left out. */
export const stationsOf = (kits: readonly KitSteps[], times: Times): readonly StationWork[] =>
  STATIONS.map((station) => workAt(station, kits, times)).filter((work) => work.steps.length > 0)

function workAt(station: Station, kits: readonly KitSteps[], times: Times): StationWork {
  const here = kits
    .map(({ kit, steps }) => ({ kit, steps: stepsAt(steps, station) }))
    .filter(({ steps }) => steps.length > 0)
  const steps = here.flatMap((each) => each.steps)
  const powered = AT_A_SAW.has(station)
  const settings = powered ? sharedSettings(steps) : new Map<string, Stage>()
  return {
    station,
    powered,
    kits: here.map(({ kit }) => kit),
    pieces: here.reduce((sum, each) => sum + piecesOf(each.steps), 0),
    settings: settings.size,
    minutes: powered ? sharedMinutes(steps, settings, times) : ownMinutes(steps, times),
    steps,
  }
}

function piecesOf(steps: readonly Step[]): number {
  const parts = new Map(steps.flatMap((step) => step.parts).map(({ name, count }) => [name, count]))
  return [...parts.values()].reduce((sum, count) => sum + count, 0)
}

/** Every setting once, however many kits use it, with its stage. */
const sharedSettings = (steps: readonly Step[]): ReadonlyMap<string, Stage> =>
  new Map(
    steps.flatMap(({ stage, settings }) =>
      settings.map((setting): [string, Stage] => [settingKey(stage, setting), stage]),
    ),
  )

const settingKey = (stage: Stage, { what, length, degrees }: Setting): string =>
  JSON.stringify([stage, what, length, degrees])

function sharedMinutes(steps: readonly Step[], settings: ReadonlyMap<string, Stage>, times: Times): number {
  const setting = [...settings.values()].reduce((sum, stage) => sum + times[stage].set, 0)
  return Math.ceil(steps.reduce((sum, { stage, work }) => sum + times[stage].each * work, setting))
}

const ownMinutes = (steps: readonly Step[], times: Times): number =>
  steps.reduce((sum, step) => sum + minutesOf(step, times), 0)

/** People for a day, where everybody works all of it and nothing waits for glue or paint. */
export interface Heads {
  /** Adults at the saws, one a saw. */
  readonly operators: number
  /** At the benches. */
  readonly hands: number
}

/** How many people do this work in `minutes` of a day; at least one for each kind of work that there is. */
export function headsFor(work: readonly StationWork[], minutes: number): Heads {
  const heads = (powered: boolean) =>
    Math.ceil(
      work.filter((each) => each.powered === powered).reduce((sum, each) => sum + each.minutes, 0) / minutes,
    )
  return { operators: heads(true), hands: heads(false) }
}
