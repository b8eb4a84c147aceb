import { type Length, toMillimetres } from '../core/measure/length.ts'
import type { Part, Plan } from '../core/plan.ts'
import type { Facts } from '../core/checks/cautionFacts.ts'
import type { Face } from '../core/panelling/face.ts'
import { cutoutFigure, cutoutTables, extraFigures, extraNotes } from './extrasReply.ts'
import type { CutPart } from './joinLines.ts'
import { pair } from './pair.ts'
import type { PlanChoices } from './planChoices.ts'
import { panelGrooves } from './plannedGrooves.ts'
import { objectFacts } from './plannedSurround.ts'
import type { Cell, Figure, Purpose, Table } from './reply.ts'
import type { Show } from './show.ts'
import { stockMark, stockSize } from './stockSize.ts'

/** The parts of a plan as two tables that fit a phone: panels with both sides, strips with their length. `cut` has the pieces of joined panels. */
export function partTables(plan: Plan, show: Show, cut: readonly CutPart[] = plan.parts): readonly Table[] {
  const panels = cut.filter((part) => part.material === 'sheet')
  const strips = cut.filter((part) => part.material === 'strip')
  const short = ({ name }: CutPart): string => name.replace(/ panel$/u, '')
  return [
    {
      title: `Panels of ${stockSize(plan.spec.sheet, show)} sheet`,
      columns: ['', 'No', 'Long', 'Wide', 'For'],
      rows: panels.map((part): Cell[] => [
        part.label,
        part.count,
        { length: part.length, purpose: purposeOf(part) },
        { length: part.width, purpose: purposeOf(part) },
        short(part),
      ]),
    },
    {
      title: `Strips ${stockMark(plan.spec.strip, show)} x ${stockSize(plan.spec.width, show)}`,
      columns: ['', 'No', 'Long', 'For'],
      rows: strips.map((part): Cell[] => [
        part.label,
        part.count,
        { length: part.length, purpose: purposeOf(part) },
        part.name,
      ]),
    },
    ...cutoutTables(plan, show),
  ].filter((table) => table.rows.length > 0)
}

/** What is never too short: the blank of a brace, and a lid that goes over the box. Every other part goes into its place. */
const COVERS = /brace$|^lid rim|cover panel$/u

/** Which way a part is rounded to the tape, by its name. */
export const purposeOf = ({ name }: { readonly name: string }): Purpose =>
  COVERS.test(name) ? 'cover' : 'into'

/** How large the box comes out, and how far its corners hold. */
export const sizeNotes = (plan: Plan, show: Show): readonly string[] => [
  `inside ${pair(plan.inside.length, plan.inside.width, show, 'into')}, outside ${pair(plan.outside.length, plan.outside.width, show, 'cover')}; packs flat ${show.length(plan.flatStack, 'cover')} thick`,
  ...(plan.lip > 0
    ? [`corner stiles reach ${show.length(plan.lip, 'mark', true)} over the side panels`]
    : []),
  ...extraNotes(plan, show),
]

/** What a saw needs besides the parts: what the tape does not show, the settings for braces, and where grooves go. */
export const sawNotes = (plan: Plan, show: Show, kerf: Length): readonly string[] => [
  ...roundingNotes(plan, show),
  ...plan.faces.flatMap((face) => braceLine(plan, face, show)),
  ...grooveLine(plan, show, kerf),
]

/** One line that says by how much the tape's marks fall short; none where every mark is exact. */
function roundingNotes(plan: Plan, show: Show): readonly string[] {
  const fitted = plan.parts.filter((part) => purposeOf(part) === 'into')
  const misses = fitted.flatMap(({ label, length, width, material }) =>
    (material === 'sheet'
      ? ([
          [length, ' long'],
          [width, ' wide'],
        ] as const)
      : ([[length, '']] as const)
    )
      .map(([side, which]) => [show.miss(side, 'into'), which] as const)
      .filter(([miss]) => miss !== '')
      .map(([miss, which]) => `${label}${which} ${miss}`),
  )
  return misses.length === 0
    ? []
    : [`rounded down to the tape: ${[...new Set(misses)].join(', ')} ${show.unit}`]
}

/** The saw's scale first, then the angle to the edge. */
function braceLine(plan: Plan, { name, brace }: Face, show: Show): readonly string[] {
  const part = plan.parts.find((each) => each.name === `${name} brace`)
  if (!brace || !part) return []
  return [
    `${part.label} ${part.name}: blank ${show.length(part.length, 'cover')} tip to tip, set the saw to ${show.angle(brace.saw)} from square (${show.angle(90 - brace.saw)} to the edge), one cut at each end, flush with the ${brace.ends}`,
  ]
}

/** Where the first groove of each panel goes; the grooves command has the rest. */
function grooveLine(plan: Plan, show: Show, kerf: Length): readonly string[] {
  const panels = panelGrooves(plan, { kerf })
  if (panels.length === 0) return []
  const counts = new Set(plan.faces.map(({ grooves }) => grooves))
  const fences = panels.map(({ face, laid }) => {
    const grooves = plan.faces.find(({ name }) => name === face)?.grooves
    const which = counts.size > 1 ? `${face} panels ${grooves},` : `${face} panels`
    return laid.status === 'laid' && laid.settings[0]
      ? `${which} first fence ${show.length(laid.settings[0].fence, 'mark', true)}`
      : `${which} have no room for them with this blade`
  })
  const { grooves } = plan.spec
  const what =
    counts.size > 1 ? 'grooves' : `${grooves} ${grooves === 1 ? 'groove' : 'grooves'} in each panel`
  return [`${what}: ${fences.join(', ')}; "grooves" gives every fence of a plan that is kept`]
}

/** The first line: the panels, which are cut first. */
export function planAnswer(plan: Plan, show: Show): string {
  const panels = plan.parts.filter((part) => part.material === 'sheet')
  const cuts = panels.map(
    ({ count, name, length, width }) =>
      `${count} ${name}${count === 1 ? '' : 's'} ${show.mark(length, purposeOf({ name }))} x ${show.mark(width, purposeOf({ name }))} ${show.unit}`,
  )
  const last = cuts.at(-1) ?? ''
  return `Cut ${[cuts.slice(0, -1).join(', '), last].filter((each) => each !== '').join(' and ')}`
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
    ...extraFigures(plan),
  }
}

export const partFigure = ({
  label,
  name,
  material,
  count,
  length,
  width,
  thickness,
  cutouts,
}: Part): Figure => ({
  ...(cutouts ? { cutouts: cutouts.map(cutoutFigure) } : {}),
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
  const grooves = Math.max(...plan.faces.map((face) => face.grooves))
  const narrow = Math.min(plan.outside.length, plan.outside.width) as Length
  return {
    sheetCut: true,
    crosscut: true,
    pieceLength: toMillimetres(Math.min(...plan.parts.map(({ length }) => length)) as Length),
    ripWidth: toMillimetres(plan.spec.strip),
    ...(grooves > 0 ? { grooves, grooveDepth: toMillimetres(plan.spec.sheet) / 3 } : {}),
    ...(steepest(plan) === undefined ? {} : { mitre: steepest(plan) }),
    brads: true,
    ...(plan.cord ? { cord: true } : {}),
    height: toMillimetres(plan.panelHeight),
    base: toMillimetres(narrow),
    ...objectFacts(choices),
  }
}
