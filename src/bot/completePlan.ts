import { type Length, MILLIMETRE } from '../core/measure/length.ts'
import { readBoard } from '../core/measure/readBoard.ts'
import type { ReadingSettings } from '../core/measure/reading.ts'
import { readSheet } from '../core/measure/readSheet.ts'
import { showLength } from '../core/measure/show.ts'
import type { Spec } from '../core/plan.ts'
import type { Context } from './context.ts'
import type { PlanChoices } from './planChoices.ts'
import { extraAssumptions, extrasOf } from './planExtras.ts'
import { Refusal } from './refusal.ts'
import type { Show } from './show.ts'
import { slotPlay } from './slotPlay.ts'
import { stockSize } from './stockSize.ts'

/** A whole description of a surround, and what was assumed to make it whole, one line each. */
export interface Completed {
  readonly spec: Spec
  readonly assumptions: readonly string[]
}

/**
 * Fills what `choices` leave open from the config. Throws a Refusal where the object or the height is missing: those
 * two are never assumed.
 */
export function completePlan(choices: PlanChoices, context: Context): Completed {
  const { settings, settled, show, reference } = context
  const { object, height } = choices
  if (!object)
    throw new Refusal(
      'invalid',
      'what does it go round? Write its size first, such as 17in x 13in or 17in round',
    )
  if (height === undefined) throw new Refusal('invalid', 'how tall is the finished box? Add height=15in')
  const region = choices.region ?? settled.region
  const usual = settings.usual[region]
  const reading = { ...settled, region, stock: reference.stock }
  const board = choices.width === undefined ? defaultBoard(usual.board, reading) : undefined
  const sheet = choices.sheet ?? defaultSheet(usual.sheet, reading)
  const corner = choices.corner ?? settings.corner
  const walls = {
    object,
    height,
    clearance: choices.clearance ?? usual.clearance,
    sheet: sheet.thickness,
    strip: choices.strip ?? usual.strip,
    width: choices.width ?? (board?.thickness as Spec['width']),
    corner,
    braces: choices.braces ?? settings.braces,
    grooves: choices.grooves ?? settings.grooves,
    fit: choices.fit ?? (corner === 'halved' ? slotPlay(sheet, context) : usual.fit),
    kerf: settled.kerf,
  }
  const spec: Spec = { ...walls, ...extrasOf(choices, walls, show) }
  return {
    spec,
    assumptions: [
      ...assumptions(choices, spec, context, board?.name, sheetWords(sheet, show, usual.sheet)),
      ...extraAssumptions(choices, spec, show),
    ],
  }
}

function assumptions(
  choices: PlanChoices,
  spec: Spec,
  { show }: Context,
  board: string | undefined,
  sheet: string,
): readonly string[] {
  return [
    choices.clearance === undefined
      ? `clearance ${stockSize(spec.clearance, show)} on each side (clearance=)`
      : '',
    choices.sheet?.measured ? '' : `${sheet} (measure yours: sheet=)`,
    choices.strip === undefined ? `strips ${stockSize(spec.strip, show)} thick (strip=)` : '',
    board === undefined
      ? ''
      : `strips ${stockSize(spec.width, show)} wide, as thick as a ${board} is (board= or width=)`,
    choices.corner === undefined ? `${spec.corner} corners (corner=)` : '',
    fitLine(choices, spec, show),
    choices.braces === undefined && spec.braces === 'none' ? 'no braces (braces=all, ends or sides)' : '',
  ].filter((line) => line !== '')
}

/** What the gap of a captured corner is, and where to ask what a year makes of it. */
function fitLine({ fit }: PlanChoices, { corner, fit: gap }: Spec, show: Show): string {
  if (corner === 'halved')
    return fit === undefined
      ? `slots ${stockSize(gap, show)} wider than the sheet: paint, swelling and a push fit (fit=)`
      : ''
  if (corner !== 'captured') return ''
  const assumed =
    fit === undefined ? `${stockSize(gap, show)} gap at each end of a corner stile (fit=); ` : ''
  return `${assumed}"fit" says how loose and how tight it gets over the year`
}

const sheetWords = (sheet: NonNullable<PlanChoices['sheet']>, show: Show, fallback: string): string => {
  const name =
    sheet.label === undefined ? fallback : `${labelWords(sheet.label)} ${sheet.material ?? 'sheet'}`
  return `${name} taken as ${stockSize(sheet.thickness, show)} thick`
}

/** A label in its own units, whatever the answer is in: `18 mm`, `3/4 in`. */
const labelWords = (label: Length): string =>
  showLength(label, {
    units: label % (MILLIMETRE / 2) === 0 ? 'metric' : 'inch',
    tape: 64,
    millimetreStep: 0.5,
  })

/** The config's own words, read as a person's would be; the config's check has read them before. */
function defaultBoard(name: string, reading: ReadingSettings) {
  const read = once('board', name, reading, () => readBoard(name, { ...reading, units: undefined }))
  if (read.status === 'read') return read
  throw new Refusal(
    'fault',
    `the board in the settings, ${name}, is not sold in region ${reading.region}; add board= or width=`,
  )
}

export function defaultSheet(name: string, reading: ReadingSettings) {
  const read = once('sheet', name, reading, () => readSheet(name, { ...reading, units: undefined }))
  if (read.status === 'read') return read
  throw new Refusal(
    'fault',
    `the sheet in the settings, ${name}, is not sold in region ${reading.region}; add sheet=`,
  )
}

/** What the same words mean by the same tables never changes, and every plan needs it. */
const known = new WeakMap<object, Map<string, unknown>>()

function once<Read>(what: string, name: string, { region, stock }: ReadingSettings, read: () => Read): Read {
  const words = known.get(stock) ?? new Map<string, unknown>()
  known.set(stock, words)
  const key = `${what} ${region} ${name}`
  if (!words.has(key)) words.set(key, read())
  return words.get(key) as Read
}
