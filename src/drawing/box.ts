import type { Length } from '../core/measure/length.ts'
import type { Plan } from '../core/plan.ts'
import { areaRound } from './area.ts'
import { bracketBlocks } from './brackets.ts'
import { dimension } from './dimension.ts'
import { type Fixture, panelFixtures } from './fixtures.ts'
import { COSINE, farToNear, project, type SeenPoint, seenFaces, SINE, visiblePoint } from './isometric.ts'
import { type Named, nameParts, textAreas } from './labels.ts'
import { BIG, line } from './marks.ts'
import { type Numbers, unitLine } from './numbers.ts'
import { layPage } from './page.ts'
import type { Fill, Point, Polygon, Scene, Shape } from './scene.ts'
import { type Carried, type Place, placeParts, type Solid } from './solids.ts'
import { textWidth } from './textWidth.ts'

/** What is drawn on the panels besides their frames: grooves by face, from one end of the panel. */
export interface BoxAsked {
  readonly plan: Plan
  readonly grooves?: Readonly<Partial<Record<'end' | 'side' | 'front', readonly Length[]>>> | undefined
}

/** The whole box pulled apart, from the front right and above: every part with its letter, and its three sizes. */
export function drawBox(asked: BoxAsked, numbers: Numbers): Scene {
  const { plan } = asked
  const { length, width } = plan.outside
  const pulled = pulledApart(plan)
  const painted = paint(asked, pulled)
  const anchors = findAnchors(painted)
  const parts = [...new Set(pulled.flatMap(({ solids }) => solids.map(({ part }) => part)))]
  const braces = plan.parts.filter(({ name }) => name.endsWith('brace'))
  const listed = plan.parts.filter((part) => parts.includes(part) || braces.includes(part))
  const pair = (of: { length: Length; width: Length }, purpose: 'into' | 'cover') =>
    `${numbers.mark(of.length, purpose)} x ${numbers.mark(of.width, purpose)}`
  return layPage({
    title: 'The box, pulled apart',
    size: { width: (length + width) * 1.3, height: (length + width) * 0.6 + plan.panelHeight },
    draw: (scale) => {
      const wood = painted.flatMap(({ shapes }) => shapes.map((shape) => scaled(shape, scale)))
      const sizes = threeSizes(plan, pulled, numbers, scale)
      return [...guides(pulled, scale), ...wood, ...sizes]
    },
    name: (shapes, scale) => {
      const named = anchors.map((anchor) => nameAt(anchor, scale))
      return nameParts(named, textAreas(shapes), shapes)
    },
    foot: [
      ...listed.map(({ label, name, count }) => ({
        key: label,
        words: count === 1 ? name : `${name} x ${count}`,
      })),
      ...plan.hardware.map(({ name, count }) => ({ words: `black: ${name} x ${count}` })),
      {
        words: `inside ${pair(plan.inside, 'into')}, outside ${pair(plan.outside, 'cover')} ${unitLine(numbers)}`,
      },
    ],
    tallest: 900,
  })
}

/** How far the panels are pulled apart, in the direction each goes. */
function pulledApart(plan: Plan): readonly Carried[] {
  const { width, sheet, strip } = plan.spec
  const wall = sheet + strip
  const far = Math.max(3 * wall, width * 1.2, 0.16 * Math.max(plan.outside.length, plan.outside.width))
  const up = Math.max(2 * width, 0.35 * plan.outside.width) + plan.panelHeight * 0.15
  const moves: Readonly<Record<Carried['name'], Place>> = {
    'left end': [-far, 0, 0],
    'right end': [far, 0, 0],
    front: [0, -far, 0],
    back: [0, far, 0],
    lid: [0, 0, up],
    bottom: [0, 0, -(far + 3 * wall)],
  }
  return placeParts(plan).map(({ name, solids }) => ({
    name,
    solids: solids.map((one) => shifted(one, moves[name])),
  }))
}

const add = ([x, y, z]: Place, [dx, dy, dz]: Place): Place => [x + dx, y + dy, z + dz]
const shifted = (one: Solid, by: Place): Solid => ({ ...one, low: add(one.low, by), high: add(one.high, by) })

interface Painted extends Pick<Solid, 'low' | 'high'> {
  readonly name: string
  readonly label: string
  readonly shapes: readonly Shape[]
}

const scaled = (shape: Shape, scale: number): Shape =>
  shape.shape === 'text'
    ? shape
    : { ...shape, points: shape.points.map(([x, y]): Point => [x * scale, y * scale]) }

/** Everything of wood from far to near, a nanometre to a unit. */
function paint(asked: BoxAsked, pulled: readonly Carried[]): readonly Painted[] {
  const fixtures = panelFixtures(asked, pulled)
  return farToNear([
    ...pulled.flatMap(({ solids }) => solids.map((one) => paintSolid(one, fixtures))),
    ...fixtures.flatMap((fixture) => (fixture.solid ? [paintFixture(fixture)] : [])),
    ...bracketBlocks(asked.plan, pulled).map(({ low, high }) => {
      const name = 'corner bracket'
      return { name, label: '', low, high, shapes: facesOf({ low, high }, 'ink', name) }
    }),
  ])
}

const facesOf = (block: Pick<Solid, 'low' | 'high'>, fill: Fill, of: string): readonly Polygon[] =>
  seenFaces(block).map(({ facing, corners }) => ({
    shape: 'polygon',
    points: corners.map((corner) => project(corner, 1)),
    fill,
    stroke: 'thin',
    facing,
    of,
  }))

function paintSolid(one: Solid, fixtures: readonly Fixture[]): Painted {
  const { part, low, high } = one
  const faces = facesOf(one, part.material, part.name)
  const own = fixtures.filter(({ on, solid }) => on === one && !solid)
  const marks = own.map(({ outline, kind }): Shape => {
    const points = outline.map((corner) => project(corner, 1))
    return kind === 'groove'
      ? line(points, 'groove', 'groove')
      : { shape: 'polygon', points, fill: 'paper', stroke: 'thin', of: kind }
  })
  return { name: part.name, label: part.label, low, high, shapes: [...faces, ...marks] }
}

/** A brace as a board with a slanting outline: its near edges, then its face. */
function paintFixture({ outline, depth, solid, facing, label, kind }: Fixture): Painted {
  const { low, high } = solid ?? { low: [0, 0, 0], high: [0, 0, 0] }
  const near = outline.map((corner) => project(corner, 1))
  const far = outline.map((corner) => project(add(corner, depth), 1))
  const edges = near.flatMap((point, index): Polygon[] => {
    const next = (index + 1) % near.length
    const quad = [point, near[next] ?? point, far[next] ?? point, far[index] ?? point]
    return turnsRight(quad) === turnsRight(near)
      ? []
      : [{ shape: 'polygon', points: quad, fill: 'strip', stroke: 'thin', facing: 'up', of: kind }]
  })
  const face: Polygon = { shape: 'polygon', points: near, fill: 'strip', stroke: 'thin', facing, of: kind }
  return { name: kind, label: label ?? '', low, high, shapes: [...edges, face] }
}

const turnsRight = (outline: readonly Point[]): boolean =>
  outline.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = outline[(index + 1) % outline.length] ?? [x, y]
    return sum + x * nextY - nextX * y
  }, 0) > 0

/** The first solid of a name in what is carried so. */
const solidsOf = (pulled: readonly Carried[], name: Carried['name']): readonly Solid[] =>
  pulled.find((each) => each.name === name)?.solids ?? []

const bounds = (solids: readonly Solid[], axis: 0 | 1 | 2): readonly [number, number] => [
  Math.min(...solids.map(({ low }) => low[axis])),
  Math.max(...solids.map(({ high }) => high[axis])),
]

/** How long the front is, how wide an end, and how high. */
function threeSizes(
  plan: Plan,
  pulled: readonly Carried[],
  numbers: Numbers,
  scale: number,
): readonly Shape[] {
  const front = solidsOf(pulled, 'front')
  const end = solidsOf(pulled, 'right end')
  const bottom = solidsOf(pulled, 'bottom')
  const [x0, x1] = bounds(front, 0)
  const [y0] = bounds(front, 1)
  const [endY0, endY1] = bounds(end, 1)
  const [, endX1] = bounds(end, 0)
  const drop = bottom.length === 0 ? 0 : plan.spec.width * scale * 1.5
  const at = (place: Place): Point => project(place, scale)
  const aslant = (text: string, way: 1 | -1): Point => beside(text, drop, way)
  const size = (low: number, high: number): string => numbers.mark((high - low) as Length, 'cover')
  return [
    ...dimension({
      from: at([x0, y0, 0]),
      to: at([x1, y0, 0]),
      out: aslant(size(x0, x1), -1),
      text: size(x0, x1),
      spill: 'beside',
    }),
    ...dimension({
      from: at([endX1, endY0, 0]),
      to: at([endX1, endY1, 0]),
      out: aslant(size(endY0, endY1), 1),
      text: size(endY0, endY1),
      spill: 'beside',
    }),
    ...dimension({
      from: at([endX1, endY1, 0]),
      to: at([endX1, endY1, plan.panelHeight]),
      out: [58, 0],
      text: numbers.mark(plan.panelHeight, 'into'),
      spill: 'beside',
    }),
  ]
}

/** From a slanting edge to its dimension line, far enough for a level number to keep off the edge. */
function beside(text: string, drop: number, way: 1 | -1): Point {
  const half = textWidth({ text, size: BIG }) / 2
  const out = drop + 16 + (half * SINE + (BIG / 2) * COSINE) / COSINE
  return [way * out * COSINE, out * SINE]
}

/** Thin broken lines along which the panels go together. */
function guides(pulled: readonly Carried[], scale: number): readonly Shape[] {
  const [front, back] = [solidsOf(pulled, 'front'), solidsOf(pulled, 'back')]
  const [left, right] = [solidsOf(pulled, 'left end'), solidsOf(pulled, 'right end')]
  const [leftX, rightX] = [bounds(left, 0)[1], bounds(right, 0)[0]]
  const [frontY, backY] = [bounds(front, 1)[1], bounds(back, 1)[0]]
  const panel = (solids: readonly Solid[]) => solids.slice(0, 1)
  const [x0, x1] = bounds(panel(front), 0)
  const [y0, y1] = bounds(panel(left), 1)
  const top = bounds(panel(front), 2)[1]
  const ends = [
    [x0, leftX],
    [x1, rightX],
  ] as const
  return ends.flatMap(([x, endX]) =>
    [[frontY, y0] as const, [backY, y1] as const].map(([y, endY]) =>
      line(
        [project([x, y, top], scale), project([x, endY, top], scale), project([endX, endY, top], scale)],
        'dashed',
      ),
    ),
  )
}

/** Where a kind of part is named: a point that can be seen, and the room round it, a nanometre to a unit. */
interface Anchor extends SeenPoint {
  readonly label: string
  readonly isPanel: boolean
}

/** Faces looked at before one is chosen, the largest first. */
const LOOKED_AT = 3

/** One place for each kind of part, on the largest of its faces of which anything can be seen. */
function findAnchors(painted: readonly Painted[]): readonly Anchor[] {
  const outlines = painted.map(({ shapes }) =>
    shapes.flatMap((shape) => (shape.shape === 'polygon' ? [shape.points] : [])),
  )
  const labels = [...new Set(painted.map(({ label }) => label))].filter((label) => label !== '').sort()
  return labels.flatMap((label) => {
    const faces = painted.flatMap((each, index) =>
      each.label === label
        ? each.shapes.flatMap((shape) =>
            shape.shape === 'polygon' && shape.of === each.name ? [{ points: shape.points, index }] : [],
          )
        : [],
    )
    const largest = faces
      .map((face) => ({ ...face, extent: extent(face.points) }))
      .sort((one, other) => other.extent - one.extent || other.index - one.index)
    const seen: SeenPoint[] = []
    for (const { points, index } of largest.slice(0, LOOKED_AT * 3)) {
      const point = visiblePoint(points, outlines.slice(index + 1).flat())
      if (point) seen.push(point)
      if (seen.length === LOOKED_AT) break
    }
    const found = seen.sort((one, other) => other.clear - one.clear)[0]
    const isPanel = painted.some((each) => each.label === label && each.name.endsWith('panel'))
    return found ? [{ ...found, label, isPanel }] : []
  })
}

/** A panel has its letter on it where a ring goes there; a strip beside it. */
function nameAt({ at: [x, y], clear, label, isPanel }: Anchor, scale: number): Named {
  const half = isPanel ? clear * scale : 1
  const area = areaRound([
    [x * scale - half, y * scale - half],
    [x * scale + half, y * scale + half],
  ])
  return { text: label, area, ringed: isPanel }
}

function extent(points: readonly Point[]): number {
  const { left, top, right, bottom } = areaRound(points)
  return (right - left) * (bottom - top)
}
