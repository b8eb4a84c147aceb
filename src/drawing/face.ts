import type { Length } from '../core/measure/length.ts'
import type { Plan } from '../core/plan.ts'
import type { Cutout } from '../core/plan/part.ts'
import type { Face } from '../core/panelling/face.ts'
import { type Area, areaOf, areaRound, middle } from './area.ts'
import { braceOutline } from './brace.ts'
import { distanceTo } from './crowd.ts'
import { dimensionRows, type Span } from './dimensionRows.ts'
import { type Named, nameParts, textAreas } from './labels.ts'
import { line, rectangle } from './marks.ts'
import { type Numbers, unitLine } from './numbers.ts'
import { type Entry, layPage } from './page.ts'
import type { Point, Polygon, Scene, Shape } from './scene.ts'
import { partOf } from './solids.ts'

/** One kind of panel of a plan to draw, with the middles of its grooves from one end of the panel. */
export interface FaceAsked {
  readonly plan: Plan
  readonly name: Face['name']
  readonly grooves?: readonly Length[] | undefined
}

const TITLES = { end: 'End panel', side: 'Side panel', front: 'Front panel' } as const

/** A panel from outside: frame, brace and grooves, true to scale, with its five main sizes. */
export function drawFace(asked: FaceAsked, numbers: Numbers): Scene {
  const { plan } = asked
  const face = faceOf(asked)
  return layPage({
    title: titleOf(asked),
    size: { width: face.shows, height: face.height },
    draw: (scale) => drawn(asked, numbers, scale),
    name: (shapes) => letters(asked, shapes),
    foot: [
      ...partEntries(plan, partsOf(asked)),
      ...cutoutWords(asked, numbers).map((words) => ({ words })),
      { words: `sizes in ${unitLine(numbers)}` },
    ],
    tallest: 760,
  })
}

/** How many there are of it, or that it is the one with the notch. */
function titleOf(asked: FaceAsked): string {
  const { name, count } = faceOf(asked)
  const notch = cordNotch(asked)
  if (notch && notch.parts < count) return `${TITLES[name]} with the notch`
  return `${TITLES[name]} from outside${count === 2 ? ' (2 of these)' : ''}`
}

const cutoutsOf = ({ plan, name }: FaceAsked): readonly Cutout[] =>
  partOf(plan, `${name} panel`)?.cutouts ?? []

const cordNotch = (asked: FaceAsked): Cutout | undefined =>
  cutoutsOf(asked).find(({ kind }) => kind === 'cord notch')

/** Sizes of slots and notches that no dimension line shows. */
function cutoutWords(asked: FaceAsked, numbers: Numbers): readonly string[] {
  const slot = cutoutsOf(asked).find(({ kind }) => kind === 'slot')
  const notch = cordNotch(asked)
  const cover = (length: Length): string => numbers.mark(length, 'cover', true)
  const other = notch && notch.parts < faceOf(asked).count ? '; the other panel has none' : ''
  return [
    ...(slot ? [`slots ${numbers.stock(slot.size.along)} wide`] : []),
    ...(notch ? [`notch ${cover(notch.size.along)} x ${cover(notch.size.across)}${other}`] : []),
  ]
}

const faceOf = ({ plan, name }: FaceAsked): Face =>
  plan.faces.find((face) => face?.name === name) ?? plan.faces[name === 'end' ? 0 : 1]

/** The parts of a plan by their letters, as the foot of a picture has them. */
export const partEntries = (plan: Plan, names: readonly string[]): readonly Entry[] =>
  plan.parts
    .filter((part) => names.includes(part.name))
    .map(({ label, name }) => ({ key: label, words: name }))

/** What its upright strips are called: those at a captured corner by where they are fixed. */
const stileOf = ({ plan, name }: FaceAsked): string =>
  [`${name} stile`, 'corner stile'].find((each) => partOf(plan, each)) ?? 'side stile'

const stileLength = (asked: FaceAsked): Length =>
  partOf(asked.plan, stileOf(asked))?.length ?? faceOf(asked).opening.height

const partsOf = (asked: FaceAsked): readonly string[] => [
  `${asked.name} panel`,
  `${asked.name} rail`,
  stileOf(asked),
  `${asked.name} brace`,
]

function drawn(asked: FaceAsked, numbers: Numbers, scale: number): readonly Shape[] {
  const { plan } = asked
  const face = faceOf(asked)
  const wood = [...panelShapes(asked, scale), ...frameShapes(asked, scale), ...braceShapes(asked, scale)]
  const [right, bottom] = [face.shows * scale, face.height * scale]
  const w = plan.spec.width * scale
  const stile = stileLength(asked)
  const gap = ((face.opening.height - stile) / 2) * scale
  const past = ((face.panel - face.shows) / 2) * scale
  const edge = Math.max(0, past)
  const sizes = [
    ...dimensionRows({ side: 'bottom', at: bottom }, [
      past > 0
        ? { from: -past, to: slotStart(asked) * scale - past, text: numbers.mark(slotStart(asked) as Length) }
        : { from: w, to: right - w, text: numbers.mark(face.opening.width) },
      { from: 0, to: right, text: numbers.mark(face.shows, 'into') },
      ...(edge > 0 ? [{ from: -past, to: right + past, text: numbers.mark(face.panel, 'into') }] : []),
    ]),
    ...dimensionRows({ side: 'left', at: -edge }, [
      { from: 0, to: bottom, text: numbers.mark(face.height, 'into') },
      ...slotDepths(asked, numbers, scale).slice(0, 1),
    ]),
    ...dimensionRows({ side: 'right', at: right + edge }, [
      { from: w + gap, to: bottom - w - gap, text: numbers.mark(stile, 'into') },
      ...slotDepths(asked, numbers, scale).slice(1),
    ]),
    ...dimensionRows({ side: 'top', at: 0 }, [{ from: 0, to: w, text: numbers.stock(plan.spec.width) }]),
  ]
  return [...wood, ...sizes]
}

/** From the end of a halved panel to its first slot. */
const slotStart = (asked: FaceAsked): number =>
  Math.min(
    ...cutoutsOf(asked).flatMap(({ kind, at }) => (kind === 'slot' ? at.map(({ along }) => along) : [])),
  )

/** How deep the slots of a halved panel are; two where that at the front is deeper. */
const slotDepths = (asked: FaceAsked, numbers: Numbers, scale: number): readonly Span[] =>
  cutoutsOf(asked).flatMap(({ kind, size, at: [place] }) => {
    if (kind !== 'slot' || !place) return []
    const low = faceOf(asked).height - place.across
    const text = numbers.mark(size.across, 'cover', true)
    return [{ from: (low - size.across) * scale, to: low * scale, text }]
  })

function panelShapes(asked: FaceAsked, scale: number): readonly Shape[] {
  const { plan, name, grooves = [] } = asked
  const { opening, shows, panel, height } = faceOf(asked)
  const w = plan.spec.width
  const [top, bottom] = [w * scale, (w + opening.height) * scale]
  const start = (shows - panel) / 2
  // Halved corners: the panel runs past its frame at both ends.
  const past = panel > shows
  const [from, to]: readonly [Point, Point] = past
    ? [
        [start * scale, 0],
        [(start + panel) * scale, height * scale],
      ]
    : [
        [w * scale, top],
        [(w + opening.width) * scale, bottom],
      ]
  const seen = rectangle(from, to, {
    fill: 'sheet',
    stroke: 'thin',
    of: `${name} panel`,
  })
  const cuts = grooves.map((centre) => {
    const x = (start + centre) * scale
    return line(
      [
        [x, top],
        [x, bottom],
      ],
      'groove',
      'groove',
    )
  })
  return [seen, ...cuts, ...notches(asked, scale)]
}

/** Slots and a cord notch, drawn before the frame that may hide some of them. */
function notches(asked: FaceAsked, scale: number): readonly Shape[] {
  const { shows, panel, height } = faceOf(asked)
  const start = (shows - panel) / 2
  return cutoutsOf(asked).flatMap(({ kind, size, at }) =>
    at.map(({ along, across }) =>
      rectangle(
        [(start + along) * scale, (height - across - size.across) * scale],
        [(start + along + size.along) * scale, (height - across) * scale],
        { fill: 'paper', stroke: 'thin', of: kind },
      ),
    ),
  )
}

function frameShapes(asked: FaceAsked, scale: number): readonly Polygon[] {
  const { plan, name } = asked
  const { shows, height: high } = faceOf(asked)
  const w = plan.spec.width
  const stile = stileLength(asked)
  const low = (high - stile) / 2
  const piece = (of: string, x: number, y: number, wide: number, tall: number): Polygon =>
    rectangle([x * scale, y * scale], [(x + wide) * scale, (y + tall) * scale], {
      fill: 'strip',
      stroke: 'outline',
      of,
    })
  return [
    piece(`${name} rail`, 0, 0, shows, w),
    piece(`${name} rail`, 0, high - w, shows, w),
    piece(stileOf(asked), 0, low, w, stile),
    piece(stileOf(asked), shows - w, low, w, stile),
  ]
}

function braceShapes(asked: FaceAsked, scale: number): readonly Polygon[] {
  const { plan, name } = asked
  const { brace, opening, height } = faceOf(asked)
  if (!brace) return []
  const w = plan.spec.width
  const outline = braceOutline({ opening, strip: w, ...brace })
  const points = outline.map(([x, y]): Point => [(w + x) * scale, (height - w - y) * scale])
  return [{ shape: 'polygon', points, fill: 'strip', stroke: 'outline', of: `${name} brace` }]
}

/** One letter for each kind of part; the panel's stands clear of the brace. */
function letters(asked: FaceAsked, shapes: readonly Shape[]): readonly Shape[] {
  const { plan, grooves = [] } = asked
  const { brace } = faceOf(asked)
  const named = partsOf(asked).flatMap((name): Named[] => {
    const part = plan.parts.find((each) => each.name === name)
    const shape = shapes.find(({ of }) => of === name)
    if (!part || !shape) return []
    const area = areaOf(shape)
    if (name.endsWith('brace')) return [{ text: part.label, area: middleOf(shape, brace?.slope ?? 0) }]
    if (!name.endsWith('panel')) return [{ text: part.label, area }]
    return [{ text: part.label, area: brace ? aboveBrace(area) : area, ringed: grooves.length > 0 }]
  })
  const crowd = shapes.filter(({ of }) => of !== `${asked.name} panel`)
  return nameParts(named, textAreas(shapes), crowd)
}

/** Of a panel, what lies well above a brace that rises to the right. */
const aboveBrace = ({ left, top, right, bottom }: Area): Area => ({
  left: left + (right - left) * 0.08,
  top: top + (bottom - top) * 0.04,
  right: left + (right - left) * 0.42,
  bottom: top + (bottom - top) * 0.46,
})

/** The largest upright square round the middle of a sloping strip that is all wood. */
function middleOf(shape: Shape, slope: number): Area {
  const points = shape.shape === 'text' ? [shape.at] : shape.points
  const [x, y] = middle(areaRound(points))
  const turn = (slope * Math.PI) / 180
  const edges = points.map((point, index) =>
    distanceTo([x, y], point, points[(index + 1) % points.length] ?? point),
  )
  const half = Math.min(...edges) / (Math.sin(turn) + Math.cos(turn))
  return { left: x - half, top: y - half, right: x + half, bottom: y + half }
}
