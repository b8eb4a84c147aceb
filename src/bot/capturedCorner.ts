import { type Length, minus, plus, ZERO } from '../core/measure/length.ts'
import type { SheetRead } from '../core/measure/readSheet.ts'
import { type CornerFit, cornerFit } from '../core/moisture/cornerFit.ts'
import { type CornerFlush, cornerFlush } from '../core/moisture/cornerFlush.ts'
import { USUAL_FILM } from '../core/moisture/film.ts'
import { thicknessGrowth } from '../core/moisture/panelMovement.ts'
import { acrossFace, type Cut, type Growth, type Species } from '../core/moisture/species.ts'
import type { Plan, Spec } from '../core/plan.ts'
import { findSheetLabel } from '../core/stock/sheets.ts'
import { defaultSheet } from './completePlan.ts'
import type { Context } from './context.ts'
import { planned } from './plannedSurround.ts'
import { readBoard } from '../core/measure/readBoard.ts'
import { Refusal } from './refusal.ts'
import { slotPlay } from './slotPlay.ts'
import { stockSize } from './stockSize.ts'
import { chooseWood } from './wood.ts'
import { type ChosenYear, chooseYear, type YearAsked } from './year.ts'

/** What may be asked otherwise than the channel's plan has it. */
export interface CornerAsked extends YearAsked {
  readonly sheet?: SheetRead | undefined
  readonly tolerance?: Length | undefined
  readonly fit?: Length | undefined
  readonly width?: Length | undefined
  readonly strip?: Length | undefined
  readonly coats?: number | undefined
  readonly wood?: Species | undefined
  readonly cut?: Cut | undefined
}

/** A captured corner over a year: up and down, where it slides, and through its thickness. */
export interface CornerYear {
  readonly fit: CornerFit
  readonly flush: CornerFlush
  readonly year: ChosenYear['year']
  readonly gap: Length
  /** The label of the corner stiles in the parts list; undefined without a plan. */
  readonly label: string | undefined
  readonly notes: readonly string[]
}

/** Sizes of a corner that the fit depends on. */
type CornerSizes = Pick<Spec, 'sheet' | 'strip' | 'width' | 'fit'>

/** Reckons the captured corner of the channel's plan, or of what was said. Throws a Refusal where there is none. */
export function cornerYear(asked: CornerAsked, context: Context): CornerYear {
  const { sizes, label, notes } = sizesOf(asked, context)
  const sheet = sheetSpan(asked, sizes.sheet, context)
  const { seasons } = context.reference
  const { wood, notes: woodNotes } = chooseWood(asked.wood, context)
  const { year, notes: yearNotes } = chooseYear(asked, context)
  const { coats = seasons.coats, cut = 'flat' } = asked
  const terms = { width: sizes.width, coats, film: USUAL_FILM }
  const fit = cornerFit({
    ...terms,
    fit: sizes.fit,
    species: wood,
    cut,
    moisture: year,
    pushFit: seasons.pushFit,
  })
  if (fit.status === 'unknown' || !wood.growth)
    throw new Refusal(
      'invalid',
      `no source says how ${wood.name} moves; name another wood, such as wood=hem-fir`,
    )
  const flush = cornerFlush({
    ...terms,
    strip: sizes.strip,
    sheet: { planned: sizes.sheet, low: sheet.low, high: sheet.high },
    growth: growthOf(wood.growth, cut, sheet.material),
    change: { driest: year.driest - year.assembled, wettest: year.wettest - year.assembled },
  })
  return {
    fit,
    flush,
    year,
    gap: sizes.fit,
    label,
    notes: [
      ...yearNotes,
      ...(asked.coats === undefined ? [`${coats} coats on every face (coats=)`] : []),
      ...sheet.notes,
      ...woodNotes,
      ...(asked.cut ? [] : ['flat-sawn, which moves most (cut=)']),
      ...(fit.fromMemory ? [`how ${wood.name} moves is from memory`] : []),
      ...(fit.beyond ? ['outside 6 to 14 % moisture wood moves less evenly: leave a little more'] : []),
      ...notes,
    ],
  }
}

function sizesOf(asked: CornerAsked, context: Context) {
  const { project } = context
  const plan = project && planned(project.choices, context).plan
  if (plan && plan.spec.corner !== 'captured') throw new Refusal('invalid', notCaptured(plan, context))
  const base = plan?.spec ?? usualCorner(context)
  const { fit = base.fit, width = base.width, strip = base.strip } = asked
  const sheet = plan?.spec.sheet ?? asked.sheet?.thickness ?? base.sheet
  return {
    sizes: { fit, width, strip, sheet } satisfies CornerSizes,
    label: plan?.parts.find(({ name }) => name === 'corner stile')?.label,
    notes: plan
      ? ["the corner of this channel's project"]
      : ['the usual corner, for want of a project (width=, strip=, fit=)'],
  }
}

/** What to say of a plan with other corners: of halved ones the slot that paint and a year ask for. */
function notCaptured({ spec }: Plan, context: Context): string {
  const instead = 'project change corner=captured, or ask for a fit with the project gone'
  if (spec.corner !== 'halved')
    return `the corners of this channel's project are ${spec.corner}: nothing slides there that could bind; ${instead}`
  const { show, project } = context
  const asks = slotPlay({ thickness: spec.sheet, material: project?.choices.sheet?.material }, context)
  return `the corners of this channel's project are halved: paint and a year ask for slots ${stockSize(asks, show)} wider than the sheet, and the plan has ${stockSize(spec.fit, show)} (project change fit=); for a stile ${instead}`
}

/** What bot.yaml takes a corner to be made of. */
function usualCorner(context: Context): CornerSizes {
  const { settings, settled, reference } = context
  const usual = settings.usual[settled.region]
  const reading = { ...settled, units: undefined, stock: reference.stock }
  const board = readBoard(usual.board, reading)
  if (board.status !== 'read')
    throw new Refusal('fault', `the board in the settings, ${usual.board}, cannot be read`)
  return { ...usual, width: board.thickness, sheet: defaultSheet(usual.sheet, reading).thickness }
}

interface SheetSpan {
  readonly low: Length
  readonly high: Length
  readonly material: string | undefined
  readonly notes: readonly string[]
}

/** The thinnest and thickest that the sheet may be: as measured and by the tolerance, else by its label's standard. */
function sheetSpan({ sheet, tolerance }: CornerAsked, thickness: Length, context: Context): SheetSpan {
  const { show, reference, project, settled } = context
  const known = sheet ?? project?.choices.sheet
  const { label, material } = known ?? defaultOf(context)
  const row =
    label &&
    findSheetLabel(material ?? 'plywood', label, project?.choices.region ?? settled.region, reference.stock)
  const measured = sheet?.thickness ?? thickness
  const span =
    tolerance !== undefined
      ? { low: minus(measured, tolerance), high: plus(measured, tolerance) }
      : known?.measured || !row?.low || !row.high
        ? { low: measured, high: measured }
        : { low: row.low, high: row.high }
  if (span.low <= 0)
    throw new Refusal(
      'invalid',
      `tolerance ${show.length(tolerance ?? ZERO)} is more than the sheet is thick; write tolerance=0.5mm`,
    )
  const said = `${stockSize(span.low, show)} to ${stockSize(span.high, show)}`
  return {
    ...span,
    material,
    notes:
      span.low === span.high
        ? [`sheet ${stockSize(span.low, show)} thick everywhere (tolerance=)`]
        : [
            `sheet ${said} thick${tolerance === undefined ? ', as its standard lets it be (measure: sheet=)' : ''}`,
          ],
  }
}

const defaultOf = ({ settings, settled, reference }: Context) =>
  defaultSheet(settings.usual[settled.region].sheet, { ...settled, units: undefined, stock: reference.stock })

/** The strip's face moves by its cut, and its thickness by the other direction. */
function growthOf(growth: Growth, cut: Cut, material: string | undefined) {
  const width = acrossFace(growth, cut)
  return {
    width,
    strip: growth.radial + growth.tangential - width,
    sheet: thicknessGrowth(/mdf|particle/iu.test(material ?? '') ? 'mdf' : growth),
  }
}
