import { nanometres, toMillimetres, type Length } from '../measure/length.ts'
import type { Diagonal } from '../panelling/diagonal.ts'
import { type Joint, layJoints } from '../plan/joints.ts'
import { type Cutout, cutoutsArea } from '../plan/part.ts'
import type { Part, Plan } from '../plan.ts'

/** The surface of the parts cut alike, mm2 of all of them together. */
export interface PartSurface {
  readonly label: string
  readonly name: Part['name']
  readonly count: number
  /** Both faces, less what is cut out of them. */
  readonly faces: number
  /** The sides and the ends, and the walls of slots, notches and holes. */
  readonly edges: number
  /** The walls of its grooves as far as they show, less their mouths in the edges; their floors count with the face. */
  readonly grooves: number
  /** What another part is glued on or closes for good: no finish goes there. */
  readonly bare: number
  /** What a brush has to cover: faces, edges and grooves less what is bare. */
  readonly exposed: number
  /** Of that, what faces the inside of the box. */
  readonly inside: number
}

/** A groove is a third of the sheet deep, as grooves.ts lays them. */
export const grooveDepth = (sheet: Length): Length => nanometres(sheet / 3)

/**
 * What is to be finished of a plan, part by part. Frames are glued on their panels first, and a box that comes apart is
 * finished in its four panels, so what only lies against another there is coated too. Grooves show between the rails.
 */
export function exposedSurfaces(plan: Plan): readonly PartSurface[] {
  const hidden = hiddenPlaces(plan)
  return plan.parts.map((part) => {
    const { faces, edges } = skinOf(part, plan)
    const grooves = grooveWalls(part, plan)
    const own = hidden.filter(({ part: name, onto }) => name === part.name || onto === part.name)
    const bare = own.reduce((sum, place) => sum + place.area, 0)
    const exposed = faces + edges + grooves - bare
    const inside = insideOf(part, faces, exposed, own)
    return {
      label: part.label,
      name: part.name,
      count: part.count,
      faces,
      edges,
      grooves,
      bare,
      exposed,
      inside,
    }
  })
}

/** mm2 to cover of some surfaces: all of it, or what is seen from outside. */
export const finishedArea = (surfaces: readonly PartSurface[], faces: 'outside' | 'all'): number =>
  surfaces.reduce((sum, { exposed, inside }) => sum + exposed - (faces === 'all' ? 0 : inside), 0)

const mm2 = (length: number, width: number): number =>
  toMillimetres(length as Length) * toMillimetres(width as Length)

function skinOf(part: Part, plan: Plan): { readonly faces: number; readonly edges: number } {
  const { count, length, width, thickness, cutouts = [] } = part
  const brace = braceOf(part, plan)
  if (brace)
    // Each face is a parallelogram, as long as an edge from cut to cut; its ends are cut on the slant.
    return {
      faces: 2 * count * mm2(brace.edge, width),
      edges: 2 * count * (mm2(brace.edge, thickness) + slantedEnd(brace, part)),
    }
  const walls = cutouts.reduce((sum, cutout) => sum + cutoutWalls(cutout, part), 0)
  return {
    faces: 2 * (count * mm2(length, width) - cutoutsArea(part)),
    edges: 2 * count * (mm2(length, thickness) + mm2(width, thickness)) + walls,
  }
}

/** The walls of a cutout in all the parts that have it. One that opens in an edge has no wall there, and takes that edge away. */
function cutoutWalls({ round, size, at, parts }: Cutout, { length, width, thickness }: Part): number {
  const { along, across } = size
  if (round) return parts * at.length * Math.PI * mm2(along, thickness)
  const open = (start: Length, end: number, whole: Length): boolean => start <= 0 || end >= whole
  const walls = at.map((corner) => {
    const alongEdge = open(corner.across, corner.across + across, width) ? 0 : 2 * mm2(along, thickness)
    const acrossEnd = open(corner.along, corner.along + along, length) ? 0 : 2 * mm2(across, thickness)
    return alongEdge + acrossEnd
  })
  return parts * walls.reduce((sum, wall) => sum + wall, 0)
}

const braceOf = ({ name }: Part, { faces }: Plan): Diagonal | undefined =>
  faces.find((face) => name === `${face.name} brace`)?.brace

const slantedEnd = ({ saw }: Diagonal, { width, thickness }: Part): number =>
  mm2(width, thickness) / Math.cos((saw * Math.PI) / 180)

function grooveWalls({ name, count }: Part, { spec, faces }: Plan): number {
  const face = faces.find((each) => name === `${each.name} panel`)
  if (!face) return 0
  const depth = grooveDepth(spec.sheet)
  const mouths = 2 * mm2(depth, spec.kerf)
  return count * face.grooves * (2 * mm2(depth, face.opening.height) - mouths)
}

/** Where two parts close each other for good: mm2 in the whole box, hidden on either of them. */
interface HiddenPlace {
  readonly part: string
  readonly onto: string
  readonly area: number
}

function hiddenPlaces(plan: Plan): readonly HiddenPlace[] {
  const glued = layJoints(plan).filter(({ fixing }) => fixing === 'glued')
  return [...glued.map(placeOf), ...plan.parts.flatMap((part) => tightEnds(part, plan))]
}

const placeOf = ({ part, onto, count, length, width }: Joint): HiddenPlace => ({
  part,
  onto,
  area: count * mm2(length, width),
})

/** The ends of a part that stand tight against parts it is carried with; a captured corner stile has its gap there. */
function tightEnds(part: Part, plan: Plan): readonly HiddenPlace[] {
  const { name, count, width, thickness } = part
  const brace = braceOf(part, plan)
  const closed = brace
    ? slantedEnd(brace, part)
    : mm2(thickness, meetsBlock(part, plan) ? Math.min(width, plan.spec.sheet) : width)
  const met = endsOn(part, plan).filter((onto) => plan.parts.some((other) => other.name === onto))
  return met.map((onto) => ({ part: name, onto, area: (2 * count * closed) / met.length }))
}

/** What the two ends of a part meet in one piece that is carried: a part at both, or one part at each. */
function endsOn(part: Part, plan: Plan): readonly string[] {
  const { name, carriedBy } = part
  const brace = braceOf(part, plan)
  if (brace) {
    const onto = `${carriedBy} ${brace.ends === 'rails' ? 'rail' : 'stile'}`
    return plan.parts.some((other) => other.name === onto && other.carriedBy === carriedBy) ? [onto] : []
  }
  if (name === `${carriedBy} stile`) return [`${carriedBy} rail`]
  if (name === 'lid rim end') return ['lid rim']
  if (meetsBlock(part, plan)) return [name === 'front ledger' ? 'front block' : 'corner block']
  // A butted box is one piece, so that what runs along its walls meets in its corners.
  const [, side, what] = /^(end|side|front) (ledger|cleat)$/u.exec(name) ?? []
  if (plan.spec.corner !== 'butted' || what === undefined) return []
  return side === 'end' ? [`side ${what}`, `front ${what}`] : ['end panel']
}

/** A ledger stands between the blocks of cleated corners, which reach as far up as the sheet of the lid is thick. */
const meetsBlock = ({ name }: Part, { spec }: Plan): boolean =>
  spec.corner === 'cleated' && /^(?:side|front) ledger$/u.test(name)

/** What stands inside looks in there, and of each panel one face, less what is glued on that face. */
function insideOf(part: Part, faces: number, exposed: number, hidden: readonly HiddenPlace[]): number {
  if (isInner(part.name) || part.carriedBy === 'bottom') return exposed
  if (part.material !== 'sheet') return 0
  const covered = hidden
    .filter(({ part: other, onto }) => onto === part.name && isOnInnerFace(other))
    .reduce((sum, { area }) => sum + area, 0)
  return faces / 2 - covered
}

const isInner = (name: string): boolean => /\b(?:block|cleat|ledger)$/u.test(name)

const isOnInnerFace = (name: string): boolean => isInner(name) || /panel$|^lid rim/u.test(name)
