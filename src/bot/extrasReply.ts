import { type Length, plus, toMillimetres } from '../core/measure/length.ts'
import type { Plan } from '../core/plan.ts'
import { interiorOf } from '../core/plan/interior.ts'
import type { Cutout, Part } from '../core/plan/part.ts'
import { pair } from './pair.ts'
import type { Cell, Figure, Table } from './reply.ts'
import type { Show } from './show.ts'
import { stockMark, stockSize } from './stockSize.ts'

/** Slots, notches and holes, in how many places and how large; no table where there are none. */
export function cutoutTables(plan: Plan, show: Show): readonly Table[] {
  const rows = cutoutsOf(plan).map(({ part, cutout }): Cell[] => [
    part.label,
    cutout.parts * cutout.at.length,
    cutoutSize(cutout, show),
    cutout.kind,
  ])
  return rows.length === 0
    ? []
    : [{ title: `Cut out (${show.unit}, wide x deep)`, columns: ['', 'No', 'Size', 'What'], rows }]
}

interface PartCutout {
  readonly part: Part
  readonly cutout: Cutout
}

const cutoutsOf = ({ parts }: Plan): readonly PartCutout[] =>
  parts.flatMap((part) => (part.cutouts ?? []).map((cutout) => ({ part, cutout })))

/** A slot has to let the sheet in, so a calliper's number where the tape has no mark for it. */
function cutoutSize({ kind, round, size }: Cutout, show: Show): string {
  if (kind === 'slot') return `${stockMark(size.along, show)} x ${show.mark(size.across, 'cover', true)}`
  const along = show.mark(size.along, 'cover', true)
  return round ? `${along} dia` : `${along} x ${show.mark(size.across, 'cover', true)}`
}

/** What halved or bracketed corners, lid, bottom and cord ask besides the parts, at most a line each. */
export const extraNotes = (plan: Plan, show: Show): readonly string[] =>
  [
    slotNote(plan, show),
    bracketNote(plan),
    lidNote(plan, show),
    bottomNote(plan, show),
    drainNote(plan, show),
  ]
    .concat(cordNote(plan, show))
    .filter((line) => line !== '')

function slotNote({ halving, spec, parts }: Plan, show: Show): string {
  if (!halving) return ''
  const from = parts.flatMap(({ cutouts = [] }) => cutouts).find(({ kind }) => kind === 'slot')?.at[0]?.along
  const edge = from === undefined ? '' : ` ${show.length(from, 'mark', true)} in from each end,`
  return `slots${edge} ${stockSize(halving.slot, show)} wide for ${stockSize(spec.sheet, show)} sheet: ends from the top, sides from below; stand the ends up and drop the sides over them`
}

const bracketNote = ({ hardware }: Plan): string =>
  hardware.map(({ name, count }) => `${count} ${name}s, one near each rail inside every corner`).join('')

function lidNote({ lid, spec, inside }: Plan, show: Show): string {
  if (!lid) return ''
  const gap = show.length(lid.gap, 'mark', true)
  if (lid.kind === 'overlapping')
    return `lid: the rim hangs ${show.length(spec.width)} down round the box, ${gap} clear of it`
  const clear = (length: Length): Length => plus(length, (-2 * spec.strip) as Length)
  return `lid flush with the top on ledgers ${show.length(spec.sheet, 'mark', true)} below it; what goes in from above passes ${pair(clear(inside.length), clear(inside.width), show, 'into')} between them`
}

function bottomNote({ bottom, spec }: Plan, show: Show): string {
  if (!bottom) return ''
  const top = `its top ${show.length(interiorOf(spec).floor)} above the floor, taken off the height inside`
  const shutIn = spec.lid?.kind === 'inset' || spec.corner === 'cleated'
  if (!bottom.feet && shutIn)
    return `bottom loose on cleats level with the bottom rails, put in before the last wall: ledgers or blocks keep it in; ${top}`
  if (!bottom.feet) return `bottom loose on cleats level with the bottom rails, ${top}`
  const { starts } = bottom.feet
  return `bottom on ${starts.length} feet laid flat across, one flush with each end${starts.length > 2 ? ', even between' : ''}; ${top}`
}

function drainNote({ bottom }: Plan, show: Show): string {
  const drain = bottom?.drain
  const first = drain?.at[0]
  if (!drain || !first) return ''
  const rows = new Set(drain.at.map(({ across }) => across)).size
  const { along, across } = drain.spacing
  return `${drain.at.length} drain holes, ${drain.at.length / rows} x ${rows}: the first ${pair(first.along, first.across, show, 'mark')} from a corner, then ${pair(along, across, show, 'mark')} apart${bottom?.feet ? ' between two feet' : ''}`
}

function cordNote({ cord, spec }: Plan, show: Show): string {
  const place = cord?.notch.at[0]
  if (!cord || !place) return ''
  const over =
    place.across === spec.width ? 'on the bottom rail, so that the frame stays whole' : 'above the bottom'
  return `cord notch in one ${cord.face} panel ${over}: ${show.length(place.along, 'mark')} from the end of the panel, ${show.length(place.across, 'mark')} up`
}

/** One cutout in mm. */
export const cutoutFigure = ({ kind, parts, round, size, at }: Cutout): Figure => ({
  kind,
  parts,
  round,
  along: toMillimetres(size.along),
  across: toMillimetres(size.across),
  at: at.map(({ along, across }) => ({ along: toMillimetres(along), across: toMillimetres(across) })),
})

/** The sizes of what a plan has besides its four framed walls, in mm; no names where it has nothing else. */
export function extraFigures({
  halving,
  faces: [, , front],
  lid,
  bottom,
  cord,
  hardware,
}: Plan): Readonly<Record<string, Figure>> {
  const mm = toMillimetres
  return {
    ...(halving ? { slotWidth: mm(halving.slot), tail: mm(halving.tail) } : {}),
    ...(front ? { frontHeight: mm(front.height), frontGrooves: front.grooves } : {}),
    ...(lid
      ? { lid: { kind: lid.kind, length: mm(lid.length), width: mm(lid.width), gap: mm(lid.gap) } }
      : {}),
    ...(bottom
      ? {
          bottom: {
            on: bottom.on,
            length: mm(bottom.length),
            width: mm(bottom.width),
            feet: bottom.feet?.starts.map(mm) ?? null,
            drainHoles: bottom.drain?.at.length ?? 0,
            drainAlong: bottom.drain ? mm(bottom.drain.spacing.along) : null,
            drainAcross: bottom.drain ? mm(bottom.drain.spacing.across) : null,
          },
        }
      : {}),
    ...(cord ? { cord: { face: cord.face, ...(cutoutFigure(cord.notch) as Record<string, Figure>) } } : {}),
    ...(hardware.length > 0 ? { hardware: hardware.map((each) => ({ ...each })) } : {}),
  }
}
