import type { Cutout } from '../core/plan/part.ts'
import type { Plan } from '../core/plan.ts'
import { type Area, areaOf } from './area.ts'
import { dimensionRows, type Span } from './dimensionRows.ts'
import { partEntries } from './face.ts'
import { linesOf, stepsOf } from './flatLines.ts'
import { cutoutSizes, cutoutsOf, extraWords, type Patch, type Size, stripSizes } from './flatSizes.ts'
import { type Named, nameParts, textAreas } from './labels.ts'
import { arc, line, rectangle } from './marks.ts'
import { type Numbers, unitLine } from './numbers.ts'
import { layPage } from './page.ts'
import type { Point, Scene, Shape } from './scene.ts'
import { placeParts, type Solid } from './solids.ts'

/** A panel of a plan that lies. */
export interface FlatAsked {
  readonly plan: Plan
  readonly name: 'lid' | 'bottom'
}

/** The lid or the bottom of a plan from above, its front edge below: what is cut out of it, and the strips over and under it. */
export function drawFlat(asked: FlatAsked, numbers: Numbers): Scene {
  const { plan, name } = asked
  const panel = panelOf(asked)
  const patches = patchesOf(asked, panel)
  const { length, width } = panel.part
  const isHiding = patches.some(({ isBelow }) => isBelow)
  return layPage({
    title: name === 'lid' ? 'Lid from above' : 'Bottom from above',
    size: { width: length, height: width },
    draw: (scale) => [
      ...woodShapes(panel, patches, scale),
      ...sizeShapes(asked, panel, patches, numbers, scale),
    ],
    name: (shapes) => names(plan, panel, patches, shapes),
    foot: [
      ...partEntries(plan, [panel.part.name, ...patches.map(({ of }) => of)]),
      ...(isHiding ? [{ words: 'dashed: below the panel' }] : []),
      { words: 'the front edge is the lower one' },
      ...extraWords(plan, panel, numbers).map((words) => ({ words })),
      { words: `sizes in ${unitLine(numbers)}` },
    ],
    tallest: 760,
  })
}

const carriedOf = ({ plan, name }: FlatAsked): readonly Solid[] =>
  placeParts(plan).find((each) => each.name === name)?.solids ?? []

const isPanel = ({ part }: Solid): boolean => part.name.endsWith('panel')

/** Throws a RangeError for a plan that has none. */
function panelOf(asked: FlatAsked): Solid {
  const panel = carriedOf(asked).find(isPanel)
  if (!panel) throw new RangeError(`the plan has no ${asked.name}`)
  return panel
}

/** Strips over and under the panel, as far as they lie within its outline. */
function patchesOf(asked: FlatAsked, panel: Solid): readonly Patch[] {
  const [x0, y0] = panel.low
  const [long, wide] = [panel.high[0] - x0, panel.high[1] - y0]
  const under = asked.name === 'lid' ? 'ledger' : 'cleat'
  const strips = placeParts(asked.plan)
    .flatMap(({ solids }) => solids)
    .filter(({ part }) => part.name.endsWith(under))
  return [...carriedOf(asked).filter((one) => !isPanel(one)), ...strips].flatMap(({ part, low, high }) => {
    const clip = (value: number, end: number): number => Math.min(Math.max(value, 0), end)
    const x = [clip(low[0] - x0, long), clip(high[0] - x0, long)] as const
    const y = [clip(low[1] - y0, wide), clip(high[1] - y0, wide)] as const
    return x[0] < x[1] && y[0] < y[1] ? [{ x, y, of: part.name, isBelow: low[2] < panel.low[2] }] : []
  })
}

function woodShapes(panel: Solid, patches: readonly Patch[], scale: number): readonly Shape[] {
  const { length, width } = panel.part
  const at = (x: number, y: number): Point => [x * scale, (width - y) * scale]
  return [
    rectangle(at(0, width), at(length, 0), { fill: 'sheet', of: panel.part.name }),
    ...patches.flatMap((patch) => patchShapes(patch, panel, at)),
    ...cutoutsOf(panel).flatMap((cutout) => cutoutShapes(cutout, at, scale)),
    line(
      edgeOf(panel).map(([x, y]) => at(x, y)),
      'outline',
    ),
  ]
}

/** A strip over the panel as it is; of one under it the edges that the panel's own do not hide. */
function patchShapes(
  { x, y, of, isBelow }: Patch,
  { part: { length, width } }: Solid,
  at: (x: number, y: number) => Point,
): readonly Shape[] {
  const [from, to] = [at(x[0], y[1]), at(x[1], y[0])]
  if (!isBelow) return [rectangle(from, to, { fill: 'strip', stroke: 'outline', of })]
  const level = y.filter((value) => value > 0 && value < width).map((value) => x.map((end) => at(end, value)))
  const upright = x
    .filter((value) => value > 0 && value < length)
    .map((value) => y.map((end) => at(value, end)))
  return [
    rectangle(from, to, { fill: 'none', of }),
    ...[...level, ...upright].map((points) => line(points, 'dashed')),
  ]
}

/** Once round the panel, and round a notch in its front edge. */
function edgeOf(panel: Solid): readonly Point[] {
  const { length, width } = panel.part
  const [notch] = cutoutsOf(panel).filter(({ round }) => !round)
  const start = notch?.at[0]?.along ?? 0
  const end = start + (notch?.size.along ?? 0)
  const deep = notch?.size.across ?? 0
  return [
    [0, 0],
    [start, 0],
    [start, deep],
    [end, deep],
    [end, 0],
    [length, 0],
    [length, width],
    [0, width],
    [0, 0],
  ]
}

function cutoutShapes(
  { kind, size, round, at: places }: Cutout,
  at: (x: number, y: number) => Point,
  scale: number,
): readonly Shape[] {
  if (!round)
    return places.map(({ along, across }) =>
      rectangle(at(along, across + size.across), at(along + size.along, across), { fill: 'paper', of: kind }),
    )
  const radius = (size.along / 2) * scale
  const { along, across } = linesOf({ at: places })
  const steps = [...stepsOf(along), ...stepsOf(across)].map(([from, to]) => (to - from) * scale)
  // Where holes lie close the lines through their middles would run into one another.
  const isCrossed = Math.min(...steps) > 3 * (radius + PAST)
  return places.flatMap((place) => hole(at(place.along, place.across), radius, kind, isCrossed))
}

/** How far the lines through the middle of a hole run past its edge. */
const PAST = 7

function hole(middle: Point, radius: number, of: string, isCrossed: boolean): readonly Shape[] {
  const [x, y] = middle
  const reach = radius + PAST
  const disc: Shape = {
    shape: 'polygon',
    points: arc(middle, radius, 0, 2 * Math.PI),
    fill: 'paper',
    stroke: 'thin',
    of,
  }
  if (!isCrossed) return [disc]
  return [
    disc,
    line(
      [
        [x - reach, y],
        [x + reach, y],
      ],
      'pointer',
    ),
    line(
      [
        [x, y - reach],
        [x, y + reach],
      ],
      'pointer',
    ),
  ]
}

function sizeShapes(
  asked: FlatAsked,
  panel: Solid,
  patches: readonly Patch[],
  numbers: Numbers,
  scale: number,
): readonly Shape[] {
  const { length, width } = panel.part
  const purpose = panel.part.name === 'cover panel' ? 'cover' : 'into'
  const level = ([from, to, text]: Size): Span => ({ from: from * scale, to: to * scale, text })
  const upright = ([from, to, text]: Size): Span => ({
    from: (width - to) * scale,
    to: (width - from) * scale,
    text,
  })
  const cut = cutoutSizes(panel, numbers)
  const strips = stripSizes(asked.plan, patches, numbers)
  return [
    ...dimensionRows({ side: 'bottom', at: width * scale }, [
      ...cut.along.map(level),
      level([0, length, numbers.mark(length, purpose)]),
    ]),
    ...dimensionRows({ side: 'left', at: 0 }, [
      ...[...cut.across, ...strips.across].map(upright),
      upright([0, width, numbers.mark(width, purpose)]),
    ]),
    ...dimensionRows({ side: 'top', at: 0 }, strips.along.map(level)),
  ]
}

/** A letter for each kind of part, clear of holes, notches and the handle; the panel's between two feet. */
function names(
  plan: Plan,
  panel: Solid,
  patches: readonly Patch[],
  shapes: readonly Shape[],
): readonly Shape[] {
  const marks = ['handle', ...cutoutsOf(panel).map(({ kind }) => kind as string)]
  const marked = shapes.flatMap((shape) =>
    shape.of !== undefined && marks.includes(shape.of) ? [widened(areaOf(shape))] : [],
  )
  const taken = [...textAreas(shapes), ...marked]
  const crowd = shapes.filter(({ of }) => of !== panel.part.name)
  const feet = shapes.filter(({ of }) => of === 'foot').map(areaOf)
  const nameOf = (name: string): readonly Named[] => {
    const part = plan.parts.find((each) => each.name === name)
    const shape = shapes.find(({ of }) => of === name)
    if (!part || !shape) return []
    const area = areaOf(shape)
    const [first, second] = name === panel.part.name ? feet : []
    const bay = first && second ? { ...area, left: first.right, right: second.left } : area
    return [{ text: part.label, area: bay, ringed: true }]
  }
  const own = nameParts(nameOf(panel.part.name), taken, crowd)
  const strips = [...new Set(patches.map(({ of }) => of))].flatMap(nameOf)
  return [...own, ...nameParts(strips, [...taken, ...own.map(areaOf)], crowd)]
}

/** With the lines through the middle of a hole. */
const widened = ({ left, top, right, bottom }: Area): Area => ({
  left: left - PAST,
  top: top - PAST,
  right: right + PAST,
  bottom: bottom + PAST,
})
