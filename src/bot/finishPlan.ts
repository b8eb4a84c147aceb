import type { UnitSystem } from '../core/measure/reading.ts'
import { showDecimal } from '../core/measure/showDecimal.ts'
import type { Plan } from '../core/plan.ts'
import { exposedSurfaces, finishedArea, type PartSurface } from '../core/quantities/exposedSurface.ts'
import type { Context } from './context.ts'
import { size } from './option.ts'
import { overlay } from './planChoices.ts'
import { planned } from './plannedSurround.ts'
import { choicesFrom, type PlanInput, planOptions } from './planOptions.ts'
import { Refusal } from './refusal.ts'
import type { Cell, Figure, Table } from './reply.ts'

const { height, clearance, sheet, strip, width, board, corner, braces, grooves, open, front, lid, bottom } =
  planOptions

/** The options of a plan whose surface may be asked for without keeping it; the object is named, for an area stands first. */
export const finishPlanOptions = {
  object: size('a box to plan for it: what that goes round').optional(),
  height,
  clearance,
  sheet,
  strip,
  width,
  board,
  corner,
  braces,
  grooves,
  open,
  front,
  lid,
  bottom,
}

/** What has to be finished. */
export interface Covered {
  /** mm2 of one coat. */
  readonly area: number
  /** Part by part; none for an area that was typed. */
  readonly surfaces: readonly PartSurface[]
  readonly faces: 'outside' | 'all'
  readonly note: string
}

/** What may be asked of an area. */
export interface AreaAsked extends PlanInput {
  readonly area?: { readonly area: number } | undefined
  readonly faces?: 'outside' | 'all' | undefined
}

/** The area that was typed, else that of the channel's plan as changed by what was typed. Throws a Refusal for neither and for both. */
export function coveredArea({ area, faces, ...input }: AreaAsked, context: Context): Covered {
  const typed = choicesFrom(input)
  const isPlan = Object.values(typed).some((value) => value !== undefined)
  if (area) {
    if (isPlan)
      throw new Refusal(
        'invalid',
        'an area and a box were both given; keep the area, or write the box as object=',
      )
    return { area: area.area, surfaces: [], faces: 'all', note: '' }
  }
  if (!context.project && !typed.object)
    throw new Refusal(
      'invalid',
      'how much area? Write it first, such as 40 sq ft or 3.5 m2, or start a project in this channel',
    )
  const { plan } = planned(overlay(context.project?.choices ?? {}, typed), context)
  const surfaces = exposedSurfaces(plan)
  return {
    area: finishedArea(surfaces, faces ?? 'all'),
    surfaces,
    faces: faces ?? 'all',
    note: partsNote(plan, faces, typed.object !== undefined),
  }
}

function partsNote({ spec }: Plan, faces: AreaAsked['faces'], typed: boolean): string {
  const whose = typed ? 'the parts of this box' : "the parts of this channel's project"
  const which = faces === 'outside' ? 'what shows from outside' : 'both faces and all edges'
  const apart = spec.corner === 'butted' ? '' : ', painted apart'
  return `${whose}${apart}: ${which}, less what is glued (faces=)`
}

/** mm2 in a square foot and a square metre. */
const UNIT: Readonly<Record<UnitSystem, number>> = { inch: 92_903.04, metric: 1_000_000 }

/** Less than this of a part, in either unit, is a brush mark. */
const LEAST = 0.01

/** Part by part what a coat covers, and what stays bare; of a plan only. */
export function surfaceTables({ surfaces, faces }: Covered, { show }: Context): readonly Table[] {
  if (surfaces.length === 0) return []
  const say = (area: number): string => {
    const size = area / UNIT[show.units]
    return size > 0 && size < LEAST ? `<${LEAST}` : showDecimal(size, 2)
  }
  return [
    {
      title: `Each kind of part, ${show.units === 'inch' ? 'sq ft' : 'm²'}: to coat, and glued so left bare`,
      columns: ['', 'No', 'Coat', 'Bare', 'For'],
      rows: surfaces.map(({ label, count, exposed, inside, bare, name }): Cell[] => [
        label,
        count,
        say(exposed - (faces === 'all' ? 0 : inside)),
        say(bare),
        name,
      ]),
    },
  ]
}

/** The same as numbers, mm2. */
export const surfaceFigures = ({ surfaces }: Covered): Figure => surfaces.map((surface) => ({ ...surface }))
