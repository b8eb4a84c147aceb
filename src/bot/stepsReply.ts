import { type Length, toMillimetres } from '../core/measure/length.ts'
import { currentOf, type Standing } from '../core/steps/progress.ts'
import type { Setting, Stage, Step } from '../core/steps/step.ts'
import type { Context } from './context.ts'
import { boardWords } from './planBoards.ts'
import { purposeOf } from './planReply.ts'
import type { Cell, Figure, Purpose, Reply, Table } from './reply.ts'
import type { Show } from './show.ts'
import { sidePurpose } from './showCovering.ts'
import type { Build } from './stepsKept.ts'
import { stockMark, stockSize } from './stockSize.ts'

/** A setting as it is read off the saw or the tape, with its unit: `38 1/4 in`, `23.4°`. */
export function settingWords(setting: Setting, show: Show, step?: Step): string {
  const { what, length, degrees } = setting
  if (length !== undefined && CALLIPERED.has(what)) return stockSize(length, show)
  if (degrees !== undefined) return show.angle(degrees)
  if (length === undefined) return ''
  const side = step && sideIn(step, length)
  return show.length(length, side ?? 'mark', side === undefined)
}

/** The same without the unit. */
export const settingMark = (setting: Setting, show: Show, step?: Step): string => {
  const { what, length } = setting
  if (length === undefined) return settingWords(setting, show)
  if (CALLIPERED.has(what)) return stockMark(length, show)
  const side = step && sideIn(step, length)
  return show.mark(length, side ?? 'mark', side === undefined)
}

/** `2x6 8 ft, push block`: what is cut at a setting, and with what care; empty where neither is to be said. */
export const ofWords = ({ of, narrow }: Setting): string =>
  [of ?? '', narrow ? 'push block' : ''].filter((word) => word !== '').join(', ')

/** A slot goes by the sheet that it takes, and neither by the marks of a tape. */
const CALLIPERED: ReadonlySet<string> = new Set([
  'as wide as',
  'slot width',
  'panel thickness',
  'strip thickness',
  'gap at each end of a corner stile',
])

const CUTS: ReadonlySet<Stage> = new Set(['break down', 'cut panel', 'crosscut', 'fit', 'brace'])

/** Which way a side of a part that is cut in this step is rounded, as the list of parts has it; undefined of all else. */
const sideIn = ({ stage, parts }: Step, length: Length): Purpose | undefined =>
  CUTS.has(stage) ? sidePurpose(parts)(length) : undefined

/** `rip strips: rip fence 4 7/8 in`: a step and the first number to set. */
export function stepWords({ step }: Standing, show: Show): string {
  const [first] = step.settings
  return first ? `${step.id}: ${first.what} ${settingWords(first, show, step)}` : step.id
}

/** `40 min`, `3 h 20 min`. */
export function timeWords(minutes: number): string {
  const hours = Math.floor(minutes / 60)
  const rest = minutes % 60
  return [hours > 0 ? `${hours} h` : '', rest > 0 || hours === 0 ? `${rest} min` : '']
    .filter((word) => word !== '')
    .join(' ')
}

/** Steps that are told of after the one in hand. */
const NEXT = 4

/** Stages that have every part in hand, or strips of any length. */
const WITHOUT_PARTS: ReadonlySet<Stage> = new Set([
  'rip',
  'dry fit',
  'mark',
  'finish',
  'assemble',
  'store flat',
])

/** Stages at which a panel is cut in pieces where no sheet gives it whole. */
const JOINS: ReadonlySet<Stage> = new Set(['break down', 'cut panel'])

const STATES = { done: 'done', skipped: 'skipped', open: '' } as const

/** All that has to do with the step in hand; `said` begins the first line where something was just done. */
export function currentReply(all: readonly Standing[], build: Build, context: Context, said = ''): Reply {
  const { show } = context
  const current = currentOf(all)
  const left = all.filter(({ mark }) => mark === undefined)
  const minutes = left.reduce((sum, { step }) => sum + build.minutes(step), 0)
  const begin = said === '' ? '' : `${said}. `
  const figures = stepsFigures(all, build)
  if (!current)
    return {
      answer: `${begin}All ${all.length} steps are done${skippedWords(all)}`,
      notes: changedNotes(all),
      buttons: [{ label: 'Undo', line: 'steps undo' }],
      figures,
    }
  const { step, number } = current
  const later = left.filter((each) => each !== current).slice(0, NEXT)
  return {
    answer: `${begin}Step ${number} of ${all.length}, ${stepWords(current, show)}`,
    cautions: context.cautions(step.facts),
    tables: [
      ...(step.settings.length > 1 ? [settingTable(step.settings, show, step)] : []),
      ...(WITHOUT_PARTS.has(step.stage) ? [] : [partTable(current, show)]),
      ...(later.length > 0 ? [stepTable('Then', later, show)] : []),
    ],
    notes: [
      step.how,
      ...boardNotes(step, build, context),
      ...(JOINS.has(step.stage) ? panelNotes(build) : []),
      `about ${timeWords(build.minutes(step))}; ${timeWords(minutes)} left in all, drying not counted`,
      ...changedNotes(all),
    ],
    buttons: [
      { label: 'Done', line: `steps done ${step.id}` },
      { label: 'Skip', line: `steps skip ${step.id}` },
      { label: 'All steps', line: 'steps all' },
    ],
    figures,
  }
}

/** Panels that are joined, and what to mind where the sheets are not cut as their layout lies. */
const panelNotes = ({ joins, sheets }: Build): readonly string[] => [
  ...(sheets.instead === undefined ? [] : [sheets.instead]),
  ...joins,
]

/** Which boards the strips come out of: those that are bought. */
function boardNotes({ stage }: Step, { boards }: Build, { project }: Context): readonly string[] {
  if (stage !== 'rip') return []
  const { rips, refused } = boards
  if (rips.length > 0)
    return [`from ${boardWords(rips)}, the boards that "layout" and "shopping" take for this plan`]
  const board = project?.choices.board || 'the usual board'
  return [
    `"layout" takes no boards for these strips yet${refused === undefined ? '' : ` (${refused})`}; the fences are for ${board}`,
  ]
}

function skippedWords(all: readonly Standing[]): string {
  const skipped = all.filter(({ mark }) => mark?.state === 'skipped').map(({ number }) => number)
  return skipped.length === 0 ? '' : `, but for ${skipped.join(', ')}, skipped`
}

/** What was ticked off by numbers that are others now. */
const changedNotes = (all: readonly Standing[]): readonly string[] =>
  all
    .filter(({ changed }) => changed)
    .map(
      ({ step, number }) =>
        `changed since done: ${number}, ${step.id} (steps done ${number} once it is right)`,
    )

/** Numbers to set or measure, in order. */
export function settingTable(settings: readonly Setting[], show: Show, step?: Step): Table {
  const rows = settings.map((setting): Cell[] => [
    settingMark(setting, show, step),
    [
      setting.what,
      ofWords(setting),
      setting.within === undefined ? '' : `${show.mark(setting.within, 'mark', true)} apart at most`,
    ]
      .filter((word) => word !== '')
      .join(', '),
  ])
  return { title: `Set, to nearest tooth (${show.unit})`, columns: ['', 'What'], rows }
}

const partTable = ({ step }: Standing, show: Show): Table => ({
  title: `In hand (${show.unit})`,
  columns: ['', 'No', 'Long', 'Wide'],
  rows: step.parts.map((part): Cell[] => [
    part.label,
    part.count,
    show.mark(part.length, purposeOf(part)),
    part.material === 'sheet' ? show.mark(part.width, purposeOf(part)) : stockMark(part.width, show),
  ]),
})

/** Steps with the first number of each. */
export const stepTable = (title: string, all: readonly Standing[], show: Show): Table => ({
  title: `${title} (${show.unit})`,
  columns: ['', 'Set', 'Step'],
  rows: all.map(({ step, number, mark, changed }): Cell[] => {
    const [first] = step.settings
    const state = changed ? 'done, changed since' : STATES[mark?.state ?? 'open']
    return [
      number,
      first ? settingMark(first, show, step) : '-',
      state === '' ? step.id : `${step.id}, ${state}`,
    ]
  }),
})

const settingFigure = ({ what, length, degrees, within, of }: Setting): Figure => ({
  what,
  of: of ?? null,
  value: length === undefined ? (degrees ?? null) : toMillimetres(length),
  unit: length === undefined ? 'degrees' : 'mm',
  within: within === undefined ? null : toMillimetres(within),
})

/** The build as numbers; lengths in mm, angles in degrees from square; `minutes` is what is left of it. */
export function stepsFigures(all: readonly Standing[], build: Build): Readonly<Record<string, Figure>> {
  const left = all.filter(({ mark }) => mark === undefined)
  return {
    steps: all.map(({ step, number, mark, changed }) => ({
      number,
      name: step.id,
      stage: step.stage,
      minutes: build.minutes(step),
      done: mark?.state === 'done',
      skipped: mark?.state === 'skipped',
      changed,
      by: mark?.by ?? null,
      at: mark?.at ?? null,
      settings: step.settings.map(settingFigure),
      parts: step.parts.map(({ label }) => label),
      cuts: [...step.cuts],
    })),
    done: all.filter(({ mark }) => mark?.state === 'done').length,
    left: left.length,
    minutes: left.reduce((sum, { step }) => sum + build.minutes(step), 0),
    next: currentOf(all)?.step.id ?? null,
    changed: all.filter(({ changed }) => changed).map(({ step }) => step.id),
  }
}
