import type { Length } from '../core/measure/length.ts'
import type { Plan } from '../core/plan.ts'
import { areaOf } from './area.ts'
import { dimensionRows } from './dimensionRows.ts'
import { partEntries } from './face.ts'
import { type Named, nameParts, textAreas } from './labels.ts'
import { breakLine, line, rectangle, SMALL } from './marks.ts'
import { fineMark, type Numbers, unitLine } from './numbers.ts'
import { layPage } from './page.ts'
import type { Point, Scene, Shape } from './scene.ts'
import { placeParts, type Solid } from './solids.ts'

/** One corner from above, cut through half way up: what lies against what, the lip, and the room round the object. */
export function drawCorner(plan: Plan, numbers: Numbers): Scene {
  const solids = cutSolids(plan)
  const view = viewOf(plan)
  return layPage({
    title: 'Corner from above, cut half way up',
    size: { width: view.reach - view.start, height: view.reach - view.start },
    draw: (scale) => drawn(plan, solids, view, numbers, scale),
    name: (shapes) => nameParts(sectionNames(plan, shapes), textAreas(shapes), shapes),
    foot: [
      ...partEntries(
        plan,
        solids.map(({ part }) => part.name),
      ),
      { words: `sizes in ${unitLine(numbers)}` },
    ],
    tallest: 800,
  })
}

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
  // A front may be lower than the box: the cut goes through all of them.
  const level = Math.min(...plan.faces.map((face) => face?.height ?? plan.panelHeight)) / 2 + 1
  const { reach } = viewOf(plan)
  return placeParts(plan)
    .filter(({ name }) => name === 'left end' || name === 'front')
    .flatMap(({ solids }) => solids)
    .filter(({ low, high }) => low[2] < level && high[2] > level && low[0] < reach && low[1] < reach)
}

function drawn(
  plan: Plan,
  solids: readonly Solid[],
  { start, reach, isObjectSeen }: View,
  numbers: Numbers,
  scale: number,
): readonly Shape[] {
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
  const sizes = cornerSizes(plan, { start, reach, isObjectSeen }, numbers, scale)
  return [...sections, ...object, ...sizes]
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

function cornerSizes(
  plan: Plan,
  { reach, isObjectSeen }: View,
  numbers: Numbers,
  scale: number,
): readonly Shape[] {
  const { sheet, strip, width, clearance } = plan.spec
  const wall = sheet + strip
  const right = reach * scale
  const upright = (from: number, to: number, text: string) => ({ from: -to * scale, to: -from * scale, text })
  const level = (from: number, to: number, text: string) => ({ from: from * scale, to: to * scale, text })
  const solids = cutSolids(plan)
  const bottom = Math.max(...solids.map(({ low }) => -low[1])) * scale
  const top = -reach * scale
  return [
    ...dimensionRows({ side: 'right', at: right }, [
      upright(-sheet, 0, numbers.stock(sheet)),
      upright(-wall, -sheet, numbers.stock(strip)),
    ]),
    ...dimensionRows({ side: 'bottom', at: bottom }, [
      ...(plan.lip > 0
        ? [
            { ...level(0, plan.lip, `lip ${fineMark(numbers, plan.lip)}`), tone: 'accent' as const },
            level(-wall, width - wall, numbers.stock(width)),
          ]
        : []),
    ]),
    ...(isObjectSeen
      ? dimensionRows({ side: 'top', at: top }, [level(0, clearance, numbers.mark(clearance as Length))])
      : []),
  ]
}
