import { type Length, ZERO } from '../measure/length.ts'
import type { Face } from '../panelling/face.ts'
import type { Framing } from '../panelling/framing.ts'
import type { BottomPlan } from './bottom.ts'
import type { CordPlan } from './cord.ts'
import type { LidPlan } from './lid.ts'
import type { Cutout, Part, PartName } from './part.ts'
import { slotsOf } from './slots.ts'
import type { Carried, FaceName, Spec } from './spec.ts'

/** All that a list of parts is drawn up from. */
export interface Laid {
  readonly spec: Spec
  readonly framing: Framing
  /** Of the front, where it differs. */
  readonly frontFraming?: Framing | undefined
  readonly faces: readonly Face[]
  readonly lid?: LidPlan | undefined
  readonly bottom?: BottomPlan | undefined
  readonly cord?: CordPlan | undefined
}

interface Row {
  readonly name: PartName
  readonly carriedBy: Carried
  readonly count: number
  readonly length: Length | undefined
  /** Of a panel, which is as high as the box unless this says otherwise. */
  readonly width?: Length
  readonly cutouts?: readonly Cutout[]
}

/** The parts of a plan under their labels: panels first, then rails, stiles, blocks, braces, and what lid and bottom take. */
export function listParts(laid: Laid): readonly Part[] {
  const rows = [...panels(laid), ...frames(laid), ...braces(laid), ...lidStrips(laid), ...bottomStrips(laid)]
  return rows.filter(({ length }) => length !== undefined).map((row, index) => part(laid.spec, row, index))
}

function panels(laid: Laid): readonly Row[] {
  const { faces, lid, bottom } = laid
  return [
    ...faces.map((face) => facePanel(laid, face)),
    ...(lid ? [flat(lid.rim ? 'cover panel' : 'lid panel', 'lid', lid, lid.notch ? [lid.notch] : [])] : []),
    ...(bottom ? [flat('bottom panel', 'bottom', bottom, bottom.drain ? [bottom.drain] : [])] : []),
  ]
}

function facePanel({ spec, cord }: Laid, { name, count, panel, height }: Face): Row {
  const slots = slotsOf(spec, name, panel).map((cutout) => ({ ...cutout, parts: count }))
  const cutouts = [...slots, ...(cord?.face === name ? [cord.notch] : [])]
  return { name: `${name} panel`, carriedBy: name, count, length: panel, width: height, cutouts }
}

const flat = (
  name: 'lid panel' | 'cover panel' | 'bottom panel',
  carriedBy: Carried,
  { length, width }: { readonly length: Length; readonly width: Length },
  cutouts: readonly Cutout[],
): Row => ({ name, carriedBy, count: 1, length, width, cutouts })

function frames({ spec, framing, frontFraming, faces }: Laid): readonly Row[] {
  const [, ...sides] = faces
  const framingOf = (name: FaceName) => (name === 'front' && frontFraming ? frontFraming : framing)
  const captured = spec.corner === 'captured'
  const stile = (name: FaceName): PartName =>
    name === 'front' ? 'front stile' : captured ? 'corner stile' : 'side stile'
  const twice = (face: Face): number => 2 * face.count
  return [
    { name: 'end rail', carriedBy: 'end', count: 4, length: framing.endRail },
    ...sides.map(
      (face): Row => ({
        name: face.name === 'front' ? 'front rail' : 'side rail',
        carriedBy: face.name,
        count: twice(face),
        length: framing.sideRail,
      }),
    ),
    { name: 'end stile', carriedBy: 'end', count: 4, length: framing.endStile },
    ...sides.map(
      (face): Row => ({
        name: stile(face.name),
        carriedBy: captured ? 'end' : face.name,
        count: twice(face),
        length: framingOf(face.name).sideStile,
      }),
    ),
    ...sides.map(
      (face): Row => ({
        name: face.name === 'front' ? 'front block' : 'corner block',
        carriedBy: face.name,
        count: twice(face),
        length: framingOf(face.name).block,
      }),
    ),
  ]
}

const braces = ({ faces }: Laid): readonly Row[] =>
  faces.map(({ name, count, brace }) => ({
    name: `${name} brace`,
    carriedBy: name,
    count,
    length: brace?.length,
  }))

function lidStrips({ lid, faces }: Laid): readonly Row[] {
  const [, ...sides] = faces
  return [
    ...sides.map(
      ({ name, count }): Row => ({
        name: name === 'front' ? 'front ledger' : 'side ledger',
        carriedBy: name,
        count,
        length: lid?.ledgers?.side,
      }),
    ),
    { name: 'end ledger', carriedBy: 'end', count: 2, length: lid?.ledgers?.end },
    { name: 'lid rim', carriedBy: 'lid', count: 2, length: lid?.rim?.long },
    { name: 'lid rim end', carriedBy: 'lid', count: 2, length: lid?.rim?.short },
    { name: 'handle', carriedBy: 'lid', count: 1, length: lid?.handle },
  ]
}

function bottomStrips({ bottom, faces }: Laid): readonly Row[] {
  const sides = faces.filter(({ name }) => name !== 'end')
  return [
    ...sides.map(
      ({ name, count }): Row => ({
        name: name === 'front' ? 'front cleat' : 'side cleat',
        carriedBy: name,
        count,
        length: bottom?.cleats?.side,
      }),
    ),
    { name: 'end cleat', carriedBy: 'end', count: 2, length: bottom?.cleats?.end },
    {
      name: 'foot',
      carriedBy: 'bottom',
      count: bottom?.feet?.starts.length ?? 0,
      length: bottom?.feet?.length,
    },
  ]
}

function part(
  spec: Spec,
  { name, carriedBy, count, length = ZERO, width, cutouts = [] }: Row,
  index: number,
): Part {
  const label = String.fromCharCode('A'.charCodeAt(0) + index)
  const shared = { label, name, count, length, carriedBy }
  return name.endsWith('panel')
    ? {
        ...shared,
        material: 'sheet',
        width: width ?? spec.height,
        thickness: spec.sheet,
        ...(cutouts.length > 0 ? { cutouts } : {}),
      }
    : { ...shared, material: 'strip', width: spec.width, thickness: spec.strip }
}
