import { inches, type Length, minus, nanometres, plus, times } from '../measure/length.ts'
import type { DrainWide, NoRoomForCleats } from '../panelling/surroundObstacle.ts'
import { gapOf, slackOf } from './interior.ts'
import type { Flat } from './lid.ts'
import type { Cutout } from './part.ts'
import type { BottomSpec, Spec } from './spec.ts'

/** A bottom worked out; what it is not made of is left out. */
export interface BottomPlan extends Flat {
  readonly on: BottomSpec['on']
  readonly gap: Length
  /** Lengths of the strips on the walls that it lies on, two each. */
  readonly cleats?: { readonly side: Length; readonly end: Length }
  /** Strips laid flat across under it: how long, and where each starts from one end of the panel. */
  readonly feet?: { readonly length: Length; readonly starts: readonly Length[] }
  readonly drain?: Cutout & { readonly spacing: { readonly along: Length; readonly across: Length } }
  /** How much it adds to the box once that is packed flat. */
  readonly thickness: Length
}

/** Feet stand no further apart than this, middle to middle: 16 in, common practice. */
const FEET_APART = inches(16)

/**
 * Lays the bottom between the walls: inside less the gap on each side, on cleats along all four walls, or loose on feet laid
 * flat across, one at each end and none further than 16 in from the next.
 */
export function layBottom(spec: Spec, inside: Flat): BottomPlan | NoRoomForCleats | DrainWide | undefined {
  const { bottom, sheet, strip } = spec
  if (!bottom) return undefined
  const gap = gapOf(spec)
  const panel = {
    length: minus(inside.length, times(gap, 2)),
    width: minus(inside.width, times(gap, 2)),
  }
  const short = tooSmall(spec, inside, gap)
  if (short) return short
  const base = { on: bottom.on, gap, ...panel }
  if (bottom.on === 'feet') {
    const starts = feetStarts(panel.length, spec.width)
    const bays = starts
      .slice(1)
      .map((start, index): Span => [plus(starts[index] as Length, spec.width), start])
    const drain = layDrain(bottom.drain, bays, [[0 as Length, panel.width]])
    if (drain && 'diameterAtMost' in drain) return drain
    return {
      ...base,
      feet: { length: panel.width, starts },
      ...(drain ? { drain } : {}),
      thickness: plus(sheet, strip),
    }
  }
  // Cleats reach s in from the walls, the panel begins a gap in from them.
  const edge = Math.max(0, minus(strip, gap)) as Length
  const clear = (length: Length): Span => [edge, minus(length, edge)]
  const drain = layDrain(bottom.drain, [clear(panel.length)], [clear(panel.width)])
  if (drain && 'diameterAtMost' in drain) return drain
  const cleats = {
    side: minus(inside.length, times(slackOf(spec), 2)),
    end: minus(inside.width, acrossCleats(spec)),
  }
  return { ...base, cleats, ...(drain ? { drain } : {}), thickness: sheet }
}

/** What the cleats of the sides, or the slots of halved corners, take from those of the ends. */
const acrossCleats = (spec: Spec): Length => times(Math.max(spec.strip, slackOf(spec)) as Length, 2)

function tooSmall(spec: Spec, inside: Flat, gap: Length): NoRoomForCleats | undefined {
  const { bottom, width } = spec
  const feet = bottom?.on === 'feet'
  const needs = {
    length: feet
      ? plus(times(width, 2), times(gap, 2))
      : (Math.max(times(gap, 2), acrossCleats(spec)) as Length),
    width: Math.max(times(gap, 2), feet ? 0 : acrossCleats(spec)) as Length,
  }
  for (const along of ['width', 'length'] as const)
    if (inside[along] <= needs[along]) return { kind: 'noRoomForCleats', along, insideAbove: needs[along] }
  return undefined
}

/** Where feet `width` wide start along a panel: flush with both ends, evenly between. */
function feetStarts(length: Length, width: Length): readonly Length[] {
  const span = length - width
  // Twice the width apart at the least, so that very wide feet never meet.
  const bays = Math.max(1, Math.ceil(span / Math.max(FEET_APART, 2 * width)))
  return Array.from({ length: bays + 1 }, (_, index) => nanometres((index * span) / bays))
}

type Span = readonly [from: Length, to: Length]

/**
 * Holes in a grid: in each free span as few as keep them `spacing` apart or nearer, half a space from its edges, so that none
 * lies over a cleat or a foot. Undefined without a drain; DrainWide where the holes would reach out of their spans.
 */
function layDrain(
  drain: BottomSpec['drain'],
  along: readonly Span[],
  across: readonly Span[],
): NonNullable<BottomPlan['drain']> | DrainWide | undefined {
  if (!drain) return undefined
  const [columns, rows] = [along, across].map((spans) => spans.flatMap((span) => gridOf(span, drain.spacing)))
  const step = (spans: readonly Span[]) =>
    Math.min(...spans.map(([from, to]) => (to - from) / holesIn([from, to], drain.spacing)))
  const spacing = { along: nanometres(step(along)), across: nanometres(step(across)) }
  // Half of a hole's diameter is left between two of them.
  const diameterAtMost = Math.floor((Math.min(spacing.along, spacing.across) * 2) / 3) as Length
  if (drain.diameter > diameterAtMost) return { kind: 'drainWide', diameterAtMost }
  const size = { along: drain.diameter, across: drain.diameter }
  const at = (columns ?? []).flatMap((x) => (rows ?? []).map((y) => ({ along: x, across: y })))
  return { kind: 'drain hole', parts: 1, round: true, size, at, spacing }
}

const holesIn = ([from, to]: Span, spacing: Length): number => Math.max(1, Math.ceil((to - from) / spacing))

function gridOf(span: Span, spacing: Length): readonly Length[] {
  const count = holesIn(span, spacing)
  const [from, to] = span
  return Array.from({ length: count }, (_, index) => nanometres(from + ((index + 0.5) * (to - from)) / count))
}
