import type { Length } from '../core/measure/length.ts'
import { placeBrackets } from '../core/plan/hardware.ts'
import type { Plan } from '../core/plan.ts'
import { type Area, areaOf } from './area.ts'
import { type CornerScrew, fixingEntries, fixingShapes, isScrewed } from './cornerFixings.ts'
import { dimensionRows, type Span } from './dimensionRows.ts'
import { partEntries } from './face.ts'
import { type Named, nameParts, textAreas } from './labels.ts'
import { breakLine, line, rectangle, SMALL } from './marks.ts'
import { fineMark, type Numbers, unitLine } from './numbers.ts'
import { type Entry, layPage } from './page.ts'
import type { Point, Scene, Shape } from './scene.ts'
import { placeParts, type Solid } from './solids.ts'

/** A plan with the screws that hold its corners together, where some do. */
export interface CornerAsked {
  readonly plan: Plan
  readonly screw?: CornerScrew | undefined
}

/**
 * One corner from above, cut through half way up or through its bracket: what lies against what, the lip, blocks, brackets and
 * screws, and the room round the object.
 */
export function drawCorner(asked: CornerAsked, numbers: Numbers): Scene {
  const { plan, screw } = asked
  const solids = cutSolids(plan)
  const view = viewOf(plan)
  return layPage({
    title: `Corner from above, cut ${plan.spec.corner === 'bracketed' ? 'at a bracket' : 'half way up'}`,
    size: { width: view.reach - view.start, height: view.reach - view.start },
    draw: (scale) => drawn(asked, solids, view, numbers, scale),
    name: (shapes) =>
      nameParts(sectionNames(plan, shapes), [...textAreas(shapes), ...screwAreas(shapes)], shapes),
    foot: [
      ...partEntries(
        plan,
        solids.map(({ part }) => part.name),
      ).map((entry) => withLength(plan, entry, numbers)),
      ...fixingEntries(plan, screw, numbers),
      { words: `sizes in ${unitLine(numbers)}` },
    ],
    tallest: 800,
  })
}

/** A block is not cut through along its length, so that is written. */
function withLength({ parts }: Plan, { key, words }: Entry, numbers: Numbers): Entry {
  const part = parts.find(({ label, name }) => label === key && name.endsWith('block'))
  return part ? { key, words: `${words}, ${numbers.mark(part.length, 'into')} long` } : { key, words }
}

const screwAreas = (shapes: readonly Shape[]): readonly Area[] =>
  shapes.filter(({ of }) => of === 'screw').map(areaOf)

/** What of the box is shown: from outside its corner as far in as `reach`, along and across. */
interface View {
  readonly start: number
  readonly reach: number
  /** Whether the object stands near enough to be seen. */
  readonly isObjectSeen: boolean
}

function viewOf({ spec, inside, outside, endPanelLength }: Plan): View {
  const { width, clearance, sheet, strip, object } = spec
  const start = -Math.max(
    (outside.width - inside.width) / 2,
    (endPanelLength - inside.width) / 2,
    sheet + strip,
  )
  const needed = Math.max(width * 2, clearance + width * 0.9)
  const half = Math.min(inside.length, inside.width) / 2
  const isRound = object.shape === 'round'
  return {
    start,
    reach: Math.min(needed, width * 5, half),
    isObjectSeen: !isRound && clearance > 0 && clearance + width * 0.4 < Math.min(needed, width * 5, half),
  }
}

/** What a level saw would meet just above the middle, at the front left corner. */
function cutSolids(plan: Plan): readonly Solid[] {
  const level = cutLevel(plan)
  const { reach } = viewOf(plan)
  return placeParts(plan)
    .filter(({ name }) => name === 'left end' || name === 'front')
    .flatMap(({ solids }) => solids)
    .filter(({ low, high }) => low[2] < level && high[2] > level && low[0] < reach && low[1] < reach)
}

/** A front may be lower than the box: the cut goes through all of them. */
function cutLevel({ spec, faces, panelHeight }: Plan): number {
  const lowest = Math.min(...faces.map((face) => face?.height ?? panelHeight)) as Length
  if (spec.corner !== 'bracketed') return lowest / 2 + 1
  const { leg, feet } = placeBrackets(spec, lowest)
  return feet[0] + leg / 2
}

function drawn(
  asked: CornerAsked,
  solids: readonly Solid[],
  { start, reach, isObjectSeen }: View,
  numbers: Numbers,
  scale: number,
): readonly Shape[] {
  const { plan, screw } = asked
  // Along the box to the right, across it up the page.
  const at = (x: number, y: number): Point => [x * scale, -y * scale]
  const sections = solids.flatMap(({ part, low, high }): Shape[] => {
    const [right, top] = [Math.min(high[0], reach), Math.min(high[1], reach)]
    const shape = rectangle(at(low[0], top), at(right, low[1]), {
      fill:
        part.material === 'strip' ? 'stripCut' : part.name === 'end panel' ? 'sheetCutUpright' : 'sheetCut',
      stroke: 'outline',
      of: part.name,
    })
    const broken = [
      ...(high[0] > reach ? [breakLine(at(reach, low[1]), at(reach, top))] : []),
      ...(high[1] > reach ? [breakLine(at(low[0], reach), at(right, reach))] : []),
    ]
    return [shape, ...broken.map((points) => line(points, 'thin'))]
  })
  const object = isObjectSeen ? objectLines(plan, reach, at) : []
  const fixings = fixingShapes(plan, screw, reach, at)
  const sizes = cornerSizes(asked, { start, reach, isObjectSeen }, numbers, scale)
  return [...sections, ...object, ...fixings, ...sizes]
}

const sectionNames = (plan: Plan, shapes: readonly Shape[]): readonly Named[] =>
  plan.parts.flatMap(({ name, label }) => {
    const shape = shapes.find(({ of }) => of === name)
    return shape ? [{ text: label, area: areaOf(shape), ringed: true }] : []
  })

function objectLines({ spec }: Plan, reach: number, at: (x: number, y: number) => Point): readonly Shape[] {
  const { clearance } = spec
  const [x, y] = at((clearance + reach) / 2, (clearance + reach) / 2)
  const corner = [at(clearance, reach), at(clearance, clearance), at(reach, clearance)]
  return [
    line(corner, 'dashed', 'object'),
    { shape: 'text', text: 'object', size: SMALL, at: [x, y + 12], anchor: 'middle', tone: 'soft' },
  ]
}

/** From where to where a screw through the end panel reaches along the box. */
function screwSpan(screw: CornerScrew | undefined, way: 1 | -1): readonly [number, number] {
  if (!screw) return [0, 0]
  const [head, tip] = [-screw.held * way, (screw.length - screw.held) * way]
  return [Math.min(head, tip), Math.max(head, tip)]
}

function cornerSizes(
  { plan, screw }: CornerAsked,
  { reach, isObjectSeen }: View,
  numbers: Numbers,
  scale: number,
): readonly Shape[] {
  const { sheet, strip, width, clearance, corner } = plan.spec
  const wall = sheet + strip
  const upright = (from: number, to: number, text: string) => ({ from: -to * scale, to: -from * scale, text })
  const level = (from: number, to: number, text: string) => ({ from: from * scale, to: to * scale, text })
  const bottom = Math.max(...cutSolids(plan).map(({ low }) => -low[1])) * scale
  // A block is driven into from outside, out of a bracket the screw goes the other way.
  const [from, to] = screwSpan(screw, corner === 'bracketed' ? -1 : 1)
  const accent = (span: Span): Span => ({ ...span, tone: 'accent' })
  return [
    ...dimensionRows({ side: 'right', at: reach * scale }, [
      upright(-sheet, 0, numbers.stock(sheet)),
      upright(-wall, -sheet, numbers.stock(strip)),
    ]),
    ...dimensionRows({ side: 'bottom', at: bottom }, [
      ...(plan.lip > 0
        ? [
            accent(level(0, plan.lip, `lip ${fineMark(numbers, plan.lip)}`)),
            level(-wall, width - wall, numbers.stock(width)),
          ]
        : []),
      ...(isScrewed(plan)
        ? [level(0, width, `${corner === 'bracketed' ? 'leg' : 'block'} ${numbers.stock(width)}`)]
        : []),
      ...(screw && isScrewed(plan)
        ? [accent(level(from, to, `screw ${fineMark(numbers, screw.length)}`))]
        : []),
    ]),
    ...(isObjectSeen
      ? dimensionRows({ side: 'top', at: -reach * scale }, [
          level(0, clearance, numbers.mark(clearance as Length)),
        ])
      : []),
  ]
}
