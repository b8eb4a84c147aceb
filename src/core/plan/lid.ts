import { inches, type Length, minus, nanometres, plus, times, ZERO } from '../measure/length.ts'
import type { LidOnSlope, NoRoomForCleats, NotchInRim } from '../panelling/surroundObstacle.ts'
import { gapOf, slackOf } from './interior.ts'
import type { Cutout } from './part.ts'
import type { Spec } from './spec.ts'

/** A rectangle lying flat, its length along the box. */
export interface Flat {
  readonly length: Length
  readonly width: Length
}

/** A lid worked out; what it is not made of is left out. */
export interface LidPlan extends Flat {
  readonly kind: 'inset' | 'overlapping'
  readonly gap: Length
  /** Inset: lengths of the strips on the walls that it drops on, two each. */
  readonly ledgers?: { readonly side: Length; readonly end: Length }
  /** Overlapping: lengths of the strips that hang down round the box, two each, the short ones between the long. */
  readonly rim?: { readonly long: Length; readonly short: Length }
  /** Length of the handle strip. */
  readonly handle?: Length
  readonly notch?: Cutout
  /** How much it adds to the box once that is packed flat. */
  readonly thickness: Length
}

/** A handle is 6 in long, or half the lid where that is shorter; a finger notch 4 in, or a third (common practice). */
const HANDLE = inches(6)
const NOTCH = inches(4)
/** What a finger notch leaves to grip beyond the ledger: 3/4 in, common practice. */
const GRIP = inches(3, 4)

/**
 * Lays the lid over a box. Inset: inside less the gap on each side, on ledgers along the walls, between the blocks of cleated
 * and clear of the slots of halved corners. Overlapping: outside and a gap and a strip thickness on each side, the rim strips on edge under its own edge.
 */
export function layLid(
  spec: Spec,
  inside: Flat,
  outside: Flat,
): LidPlan | LidOnSlope | NotchInRim | NoRoomForCleats | undefined {
  const { lid, front, height } = spec
  if (!lid) return undefined
  if ((front?.height ?? height) !== height) return { kind: 'lidOnSlope', height }
  return lid.kind === 'inset' ? insetLid(spec, inside) : overlappingLid(spec, outside)
}

function insetLid(spec: Spec, inside: Flat): LidPlan | NoRoomForCleats {
  const { sheet, strip, width, corner } = spec
  const gap = gapOf(spec)
  const ends = times(corner === 'cleated' ? width : slackOf(spec), 2)
  const across = times(Math.max(strip, slackOf(spec)) as Length, 2)
  const panel = {
    length: minus(inside.length, times(gap, 2)),
    width: minus(inside.width, times(gap, 2)),
  }
  const ledgers = { side: minus(inside.length, ends), end: minus(inside.width, across) }
  const most = Math.max(across, times(gap, 2)) as Length
  if (ledgers.end <= 0 || panel.width <= 0)
    return { kind: 'noRoomForCleats', along: 'width', insideAbove: most }
  const long = Math.max(ends, most) as Length
  if (inside.length <= long) return { kind: 'noRoomForCleats', along: 'length', insideAbove: long }
  return {
    kind: 'inset',
    gap,
    ...panel,
    ledgers,
    ...handleOf(spec, panel),
    thickness: plus(sheet, spec.lid?.handle === 'strip' ? width : ZERO),
  }
}

function overlappingLid(spec: Spec, outside: Flat): LidPlan | NotchInRim {
  const { lid, sheet, strip, width } = spec
  if (lid?.handle === 'notch') return { kind: 'notchInRim' }
  const gap = gapOf(spec)
  const over = times(plus(gap, strip), 2)
  const panel = { length: plus(outside.length, over), width: plus(outside.width, over) }
  return {
    kind: 'overlapping',
    gap,
    ...panel,
    rim: { long: panel.length, short: plus(outside.width, times(gap, 2)) },
    ...handleOf(spec, panel),
    thickness: plus(sheet, width, lid?.handle === 'strip' ? width : ZERO),
  }
}

function handleOf({ lid, strip }: Spec, { length, width }: Flat): Pick<LidPlan, 'handle' | 'notch'> {
  if (lid?.handle === 'strip') return { handle: Math.min(HANDLE, nanometres(length / 2)) as Length }
  if (lid?.handle !== 'notch') return {}
  const size = {
    along: Math.min(NOTCH, nanometres(length / 3)) as Length,
    across: Math.min(plus(strip, GRIP), nanometres(width / 2)) as Length,
  }
  const at = [{ along: nanometres((length - size.along) / 2), across: ZERO }]
  return { notch: { kind: 'finger notch', parts: 1, round: false, size, at } }
}
