import { type Length, minus, nanometres, plus, ZERO } from '../measure/length.ts'
import { halve } from '../panelling/halved.ts'
import type { Cutout, Place } from './part.ts'
import type { FaceName, Spec } from './spec.ts'

/** How high the front is: as the box, unless it was asked for lower. */
export const frontHeight = ({ front, height }: Spec): Length => front?.height ?? height

/**
 * The slots of one panel of halved corners. A side or front has both from below, half its own height deep; an end has one from
 * the top over each of those, down to where it meets their slots, so that every panel stands on the floor. The front crosses
 * at the beginning of an end's length.
 */
export function slotsOf(spec: Spec, face: FaceName, panel: Length): readonly Cutout[] {
  const { sheet, height, corner } = spec
  if (corner !== 'halved') return []
  const { tail, slot, slack } = halve(spec)
  // The sheet stands in the middle of its slot; an odd nanometre of play is on the outside.
  const first = minus(plus(tail, sheet, slack), slot)
  const last = minus(panel, tail, sheet, slack)
  const meets = (across: Length): Length => nanometres(across / 2)
  if (face !== 'end') {
    const deep = meets(face === 'front' ? frontHeight(spec) : height)
    return [
      slots(slot, deep, [
        { along: first, across: ZERO },
        { along: last, across: ZERO },
      ]),
    ]
  }
  const [front, back] = [meets(frontHeight(spec)), meets(height)]
  if (front === back)
    return [
      slots(slot, minus(height, back), [
        { along: first, across: back },
        { along: last, across: back },
      ]),
    ]
  return [
    slots(slot, minus(height, front), [{ along: first, across: front }]),
    slots(slot, minus(height, back), [{ along: last, across: back }]),
  ]
}

const slots = (along: Length, across: Length, at: readonly Place[]): Cutout => ({
  kind: 'slot',
  parts: 1,
  round: false,
  size: { along, across },
  at,
})
