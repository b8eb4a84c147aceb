import { type Length, toMillimetres } from '../core/measure/length.ts'
import type { Part, Plan } from '../core/plan.ts'
import type { Facts } from '../core/checks/cautionFacts.ts'
import type { PlanChoices } from './planChoices.ts'
import { objectFacts } from './plannedSurround.ts'
import type { Cell, Figure, Table } from './reply.ts'
import type { Show } from './show.ts'

/** The parts of a plan as two tables that fit a phone: panels with both sides, strips with their length. */
export function partTables(plan: Plan, show: Show): readonly Table[] {
  const panels = plan.parts.filter((part) => part.material === 'sheet')
  const strips = plan.parts.filter((part) => part.material === 'strip')
  const short = ({ name }: Part): string => name.replace(/ panel$/u, '')
  return [
    {
      title: `Panels of ${show.length(plan.spec.sheet, 'mark', true)} sheet`,
      columns: ['', 'No', 'Long', 'Wide', 'For'],
      rows: panels.map((part): Cell[] => [
        part.label,
        part.count,
        into(part.length),
        into(part.width),
        short(part),
      ]),
    },
    {
      title: `Strips ${show.mark(plan.spec.strip, 'mark', true)} x ${show.length(plan.spec.width, 'mark', true)}`,
      columns: ['', 'No', 'Long', 'For'],
      rows: strips.map((part): Cell[] => [part.label, part.count, into(part.length), part.name]),
    },
  ].filter((table) => table.rows.length > 0)
}

const into = (length: Length): Cell => ({ length, purpose: 'into' })

/** One line that says by how much the tape's marks fall short; none where every mark is exact. */
export function roundingNotes(plan: Plan, show: Show): readonly string[] {
  const misses = plan.parts.flatMap(({ label, length, width, material }) =>
    (material === 'sheet' ? [length, width] : [length])
      .map((side) => show.miss(side, 'into'))
      .filter((miss) => miss !== '')
      .map((miss) => `${label} ${miss}`),
  )
  return misses.length === 0 ? [] : [`rounded down to the tape: ${misses.join(', ')} ${show.unit}`]
}

/** The first line: the panels, which are cut first. */
export function planAnswer(plan: Plan, show: Show): string {
  const panels = plan.parts.filter((part) => part.material === 'sheet')
  const cuts = panels.map(
    ({ count, name, length, width }) =>
      `${count} ${name}${count === 1 ? '' : 's'} ${show.mark(length, 'into')} x ${show.length(width, 'into')}`,
  )
  return `Cut ${cuts.join(' and ')}`
}

/** The sizes of a plan in mm, under the names that scripts rely on. */
export function planFigures(plan: Plan): Readonly<Record<string, Figure>> {
  const sizes = {
    insideLength: plan.inside.length,
    insideWidth: plan.inside.width,
    outsideLength: plan.outside.length,
    outsideWidth: plan.outside.width,
    panelHeight: plan.panelHeight,
    sidePanelLength: plan.sidePanelLength,
    endPanelLength: plan.endPanelLength,
    sideRailLength: plan.sideRailLength,
    endRailLength: plan.endRailLength,
    endStileLength: plan.endStileLength,
    cornerStileLength: plan.cornerStileLength,
    lip: plan.lip,
    fit: plan.fit,
    flatStack: plan.flatStack,
  }
  return {
    ...Object.fromEntries(Object.entries(sizes).map(([name, length]) => [name, toMillimetres(length)])),
    parts: plan.parts.map(partFigure),
  }
}

export const partFigure = ({ label, name, material, count, length, width, thickness }: Part): Figure => ({
  label,
  name,
  material,
  count,
  length: toMillimetres(length),
  width: toMillimetres(width),
  thickness: toMillimetres(thickness),
})

/** The steepest saw setting of the braces; undefined where there are none. */
function steepest({ faces }: Plan): number | undefined {
  const settings = faces.flatMap(({ brace }) => (brace ? [brace.saw] : []))
  return settings.length > 0 ? Math.max(...settings) : undefined
}

/** What the cautions depend on. */
export function planFacts(plan: Plan, choices: PlanChoices): Facts {
  const narrow = Math.min(plan.outside.length, plan.outside.width) as Length
  return {
    sheetCut: true,
    crosscut: true,
    ripWidth: toMillimetres(plan.spec.strip),
    ...(plan.spec.grooves > 0
      ? { grooves: plan.spec.grooves, grooveDepth: toMillimetres(plan.spec.sheet) / 3 }
      : {}),
    ...(steepest(plan) === undefined ? {} : { mitre: steepest(plan) }),
    brads: true,
    height: toMillimetres(plan.panelHeight),
    base: toMillimetres(narrow),
    ...objectFacts(choices),
  }
}
