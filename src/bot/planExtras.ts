import { inches } from '../core/measure/length.ts'
import { gapOf } from '../core/plan/interior.ts'
import type { FrontSpec, Spec } from '../core/plan/spec.ts'
import type { PlanChoices } from './planChoices.ts'
import { Refusal } from './refusal.ts'
import type { Show } from './show.ts'

/** Drain holes are no further apart than this where nobody has said: 6 in, common practice. */
const DRAIN_SPACING = inches(6)

/** What the front is compared with. */
type Walls = Pick<Spec, 'height' | 'braces' | 'grooves'>

type Extras = Pick<Spec, 'front' | 'lid' | 'bottom' | 'cord' | 'gap'>

/** What was chosen besides the four framed walls; nothing where nothing was. Throws a Refusal for a way without a size. */
export function extrasOf(choices: PlanChoices, walls: Walls, show: Show): Extras {
  const {
    lid = 'none',
    handle = 'none',
    bottom = 'none',
    drain,
    spacing,
    cord,
    cordIn = 'side',
    gap,
  } = choices
  const front = frontOf(choices, walls)
  if (choices.cordIn !== undefined && cordIn !== 'none' && !cord)
    throw new Refusal(
      'invalid',
      `how large is the plug? Add cord=${show.units === 'inch' ? '2in x 1 1/2in' : '50mm x 40mm'}, width x height of the notch`,
    )
  return {
    ...(front ? { front } : {}),
    ...(lid === 'none' ? {} : { lid: { kind: lid, ...(handle === 'none' ? {} : { handle }) } }),
    ...(bottom === 'none'
      ? {}
      : {
          bottom: {
            on: bottom,
            ...(drain ? { drain: { diameter: drain, spacing: spacing ?? DRAIN_SPACING } } : {}),
          },
        }),
    ...(cord && cordIn !== 'none' ? { cord: { ...cord, face: cordIn } } : {}),
    ...(gap === undefined ? {} : { gap }),
  }
}

/** A front that comes out like the back is no front of its own. */
function frontOf(
  { front, frontBrace, frontGrooves }: PlanChoices,
  { height, braces, grooves }: Walls,
): FrontSpec | undefined {
  const sidesBraced = braces === 'all' || braces === 'sides'
  const differs =
    (front ?? height) !== height ||
    (frontBrace ?? sidesBraced) !== sidesBraced ||
    (frontGrooves ?? grooves) !== grooves
  return differs ? { height: front, braced: frontBrace, grooves: frontGrooves } : undefined
}

/** What was taken for extras that were asked for, one line each. */
export function extraAssumptions(choices: PlanChoices, spec: Spec, show: Show): readonly string[] {
  const { lid, bottom } = spec
  return [
    (lid || bottom) && choices.gap === undefined
      ? `${show.length(gapOf(spec), 'mark', true)} on each side of ${[lid && 'lid', bottom && 'bottom'].filter(Boolean).join(' and ')} (gap=)`
      : '',
    lid && !lid.handle ? 'no handle on the lid (handle=strip or notch)' : '',
    bottom?.drain && choices.spacing === undefined
      ? `drain holes at most ${show.length(DRAIN_SPACING)} apart (spacing=)`
      : '',
    spec.cord && choices.cordIn === undefined ? `the cord goes through one ${spec.cord.face} (cordin=)` : '',
  ].filter((line) => line !== '')
}
