import { type Length, toMillimetres } from '../core/measure/length.ts'
import { showMark } from '../core/measure/show.ts'
import { showForce } from '../core/measure/showWeight.ts'
import type { Drive } from '../core/plan/drive.ts'
import type { Fastening, NoFastening } from '../core/quantities/fastener.ts'
import type { Into } from '../core/quantities/fastenerBite.ts'
import { type BoxCount, fillBoxes } from '../core/quantities/fastenerBoxes.ts'
import type { FastenerKind, FastenerSize } from '../core/quantities/fastenerSize.ts'
import type { Figure } from './reply.ts'
import { Refusal } from './refusal.ts'
import type { Show } from './show.ts'

/** `18 gauge 3/4 in brads`, `6d nails (2 in)`, `#8 x 2 in screws`. */
export function sizeWords({ kind, name, length }: FastenerSize, show: Show): string {
  const long = `${show.mark(length, 'mark', true)} ${show.unit}`
  if (kind === 'nail') return `${name} nails (${long})`
  return kind === 'screw' ? `${name} x ${long} screws` : `${name} ${long} brads`
}

/** So many of one size, and the boxes that they come in with a tenth to spare. */
export interface Purchase {
  readonly size: FastenerSize
  readonly count: number
  readonly boxes: readonly BoxCount[]
  readonly left: number
}

/** What to buy for `counts`, like sizes put together, in the order they first come. */
export function purchases(counts: readonly (readonly [FastenerSize, number])[]): readonly Purchase[] {
  const totals = new Map<string, { size: FastenerSize; count: number }>()
  for (const [size, count] of counts) {
    const key = `${size.kind} ${size.name} ${size.length}`
    totals.set(key, { size, count: count + (totals.get(key)?.count ?? 0) })
  }
  return [...totals.values()].map(({ size, count }) => {
    const { boxes, left } = fillBoxes(count, size.boxes)
    return { size, count, boxes, left }
  })
}

/** More sizes than this are said shortly, and more than twice as many are left to the table. */
const SAID_IN_FULL = 2

/** The first line: `Buy 1 box of 100 #8 x 2 in screws (5 to drive)`; `Buy 1 x 1000 18 gauge 20 mm brads (56) + ...`. */
export function purchaseAnswer(bought: readonly Purchase[], show: Show): string {
  if (bought.length <= SAID_IN_FULL)
    return `Buy ${bought.map(({ size, count, boxes }) => `${boxWords(boxes)} ${sizeWords(size, show)} (${count} to drive)`).join(' + ')}`
  const said = bought
    .slice(0, 2 * SAID_IN_FULL)
    .map(({ size, count, boxes }) => `${shortBoxes(boxes)} ${sizeWords(size, show)} (${count})`)
  const more = bought.length - said.length
  return `Buy ${said.join(' + ')}${more > 0 ? ` + ${more} more sizes below` : ''}`
}

/** What the first line has no room for, one line each. */
export const furtherPurchases = (bought: readonly Purchase[], show: Show): readonly string[] =>
  bought
    .slice(2 * SAID_IN_FULL)
    .map(({ size, count, boxes }) => `and ${shortBoxes(boxes)} ${sizeWords(size, show)} (${count} to drive)`)

const shortBoxes = (boxes: readonly BoxCount[]): string =>
  boxes.map(({ size, count }) => `${count} x ${size}`).join(' and ')

const boxWords = (boxes: readonly BoxCount[]): string =>
  boxes.map(({ size, count }) => `${count} ${count === 1 ? 'box' : 'boxes'} of ${size}`).join(' and ')

export const boxFigures = (bought: readonly Purchase[]): Figure =>
  bought.flatMap(({ size, boxes }) =>
    boxes.map((box) => ({
      kind: size.kind,
      name: size.name,
      length: toMillimetres(size.length),
      size: box.size,
      count: box.count,
    })),
  )

/** Sizes and distances of one joint in mm, and what design lets one fastener bear in N; null where there is none. */
export const fasteningFigures = ({ size, row, holes, withdrawal }: Fastening) => ({
  length: toMillimetres(size.length),
  spacing: toMillimetres(row.spacing),
  end: toMillimetres(row.end),
  edge: toMillimetres(row.edge),
  pilot: holes ? toMillimetres(holes.pilot) : null,
  clearance: holes?.clear === undefined ? null : toMillimetres(holes.clear),
  withdrawal: withdrawal?.allowable ?? null,
  diameter: toMillimetres(size.diameter),
})

/** What is worth knowing of one joint besides what to buy, one line each. */
export const fasteningNotes = (fastening: Fastening, into: Into, wood: string, show: Show) => [
  rowNote(fastening, show),
  ...holeNotes(fastening, show),
  `${GRIP_WORDS[fastening.grip]}; the tip stays ${show.length(fastening.tipShort, 'into', true)} short of the far face`,
  strengthNote(fastening, into, wood, show),
]

/** Holes to drill and what one holds, for those of a plan that are drilled for; one line each, the size first. */
export function drilledNotes(
  fastenings: readonly (Pick<Drive, 'into' | 'receives'> & { readonly fastening: Fastening })[],
  wood: string,
  show: Show,
): readonly string[] {
  const lines = fastenings
    .filter(({ fastening }) => fastening.holes?.needed)
    .map(({ fastening, into, receives }) => {
      const strength =
        receives === 'sheet' && into === 'face'
          ? 'no strength is claimed in a sheet'
          : strengthNote(fastening, into, wood, show)
      const said = [...holeNotes(fastening, show), strength]
      return `${sizeWords(fastening.size, show)}: ${said.join('; ')}`
    })
  return [...new Set(lines)]
}

function rowNote({ row, size }: Fastening, show: Show): string {
  const apart = row.count === 1 ? 'in the middle' : `${near(row.spacing, 'into', show)} apart`
  const edge = `never nearer an edge than ${near(row.edge, 'cover', show)}`
  const split = row.close && size.kind !== 'brad' ? '; drill for it, the end is near' : ''
  return `${apart}, ${near(row.end, 'into', show)} from each end, ${edge}${split}`
}

const near = (length: Length, purpose: 'into' | 'cover', show: Show): string =>
  `${show.mark(length, purpose, true)} ${show.unit}`

function holeNotes({ holes, size }: Fastening, show: Show): readonly string[] {
  if (!holes) return []
  const pilot = `${drill(holes.pilot, size.kind, show)} pilot ${near(holes.depth, 'into', show)} deep`
  if (holes.clear !== undefined)
    return [`drill ${drill(holes.clear, size.kind, show)} through the held piece, then a ${pilot}`]
  return [holes.needed ? `drill a ${pilot}, or it splits` : `a ${pilot} at most, where it splits`]
}

/** A drill: a screw's to the nearest that is sold, a nail's down, since the rule is for the most. */
const drill = (diameter: Length, kind: FastenerKind, show: Show): string =>
  `${showMark(diameter, { units: show.units, tape: 64, millimetreStep: 0.5 }, kind === 'screw' ? 'mark' : 'into')} ${show.unit}`

const GRIP_WORDS: Readonly<Record<Fastening['grip'], string>> = {
  full: 'as long as the rule asks',
  short: 'shorter than the rule asks, as long as stays inside',
  'with glue': 'so short that only the glue holds',
}

function strengthNote({ withdrawal }: Fastening, into: Into, wood: string, show: Show): string {
  if (withdrawal)
    return `each holds ${showForce(withdrawal.allowable, show.units)} straight out of ${wood}, by design`
  return into === 'face'
    ? 'no strength is claimed: no source gives the weight of this wood'
    : `no strength is claimed in ${into === 'end' ? 'end grain' : 'the edge of a sheet'}`
}

/** Why nothing fastens a joint, and what would do. */
export function noFastening(obstacle: NoFastening, kind: FastenerKind, show: Show): Refusal {
  return new Refusal('invalid', `no ${kind} does here: ${obstacleWords(obstacle, kind, show)}`)
}

/** The same without the subject, in words that follow a colon. */
export function obstacleWords(obstacle: NoFastening, kind: FastenerKind, show: Show): string {
  switch (obstacle.reason) {
    case 'receiver thin':
      return [
        `what bites enough comes out of the far face; it takes a receiver of ${near(obstacle.receiverAtLeast, 'cover', show)}`,
        ...(obstacle.heldAtMost
          ? [`a held piece of at most ${near(obstacle.heldAtMost, 'into', show)}`]
          : []),
        ...(obstacle.withGlue ? ['glue as well (glued=yes)'] : []),
      ].join(', or ')
    case 'held thick':
      return obstacle.heldAtMost > 0
        ? `the held piece is too thick for any that is sold; at most ${near(obstacle.heldAtMost, 'into', show)}, or another kind=`
        : 'none is sold for that; try another kind='
    case 'narrow':
      return `it would split or come out of the side; the pieces must be at least ${near(obstacle.widthAtLeast, 'cover', show)} wide across it${kind === 'brad' ? '' : ', or kind=brad'}`
    case 'joint short':
      return `it would split so near the ends; the joint must be at least ${near(obstacle.lengthAtLeast, 'cover', show)} long`
    case 'overloaded':
      return `${obstacle.countAtMost === 1 ? 'the one that has room does' : `the ${obstacle.countAtMost} that have room do`} not bear that load; a longer joint, another kind=, or less`
    case 'no strength':
      return 'no load is answered for in end grain, in the edge of a sheet or in a wood of unknown weight; leave load= out'
  }
}
