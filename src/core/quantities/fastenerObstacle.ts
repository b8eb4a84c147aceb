import { type Length, minus, plus } from '../measure/length.ts'
import { type Driven, gradeSize, leastBite } from './fastenerBite.ts'
import type { FastenerRules, FastenerSize } from './fastenerSize.ts'

/** Why no size does, and what would. */
export type FastenerObstacle =
  | {
      /** Whatever bites enough comes through the far face. */
      readonly reason: 'receiver thin'
      readonly receiverAtLeast: Length
      /** Undefined where no thinner held piece would do either. */
      readonly heldAtMost?: Length | undefined
      /** Glued it would do as it is. */
      readonly withGlue: boolean
    }
  | { readonly reason: 'held thick'; readonly heldAtMost: Length }
  | { readonly reason: 'narrow'; readonly widthAtLeast: Length }

/** What stands against every one of `sold`, none of which grades; `clear` is the width that each needs. */
export function explainObstacle(
  sold: readonly FastenerSize[],
  driven: Driven,
  rules: FastenerRules,
  clear: (size: FastenerSize) => Length,
): FastenerObstacle {
  const bite = leastBite(driven, rules)
  const long = sold.filter((size) => reachOf(size, bite) >= driven.held)
  if (long.length === 0)
    return { reason: 'held thick', heldAtMost: most(sold.map((size) => reachOf(size, bite))) }
  const slim = long.filter((size) => clear(size) <= (driven.width ?? Infinity))
  if (slim.length === 0) return { reason: 'narrow', widthAtLeast: least(long.map(clear)) }
  const glued = { ...driven, glued: true }
  return {
    reason: 'receiver thin',
    receiverAtLeast: least(slim.map(({ length }) => plus(minus(length, driven.held), rules.tipShort))),
    heldAtMost: thinner(
      sold.filter((size) => clear(size) <= (driven.width ?? Infinity)),
      driven,
      rules,
    ),
    withGlue: sold.some((size) => clear(size) <= (driven.width ?? Infinity) && isFit(size, glued, rules)),
  }
}

/** The thickest piece that a size holds in a receiver as deep as may be. */
const reachOf = ({ length, heldUpTo }: FastenerSize, bite: Length): Length =>
  Math.min(minus(length, bite), heldUpTo ?? Infinity) as Length

const isFit = (size: FastenerSize, driven: Driven, rules: FastenerRules): boolean =>
  (size.heldUpTo ?? Infinity) >= driven.held && gradeSize(size, driven, rules) !== undefined

/** The thickest held piece below this one that one of `sold` would hold in this receiver. */
function thinner(sold: readonly FastenerSize[], driven: Driven, rules: FastenerRules): Length | undefined {
  const bite = leastBite(driven, rules)
  const held = sold
    .map((size) => ({ size, held: reachOf(size, bite) }))
    .filter(({ size, held }) => held > 0 && held < driven.held && isFit(size, { ...driven, held }, rules))
  return held.length > 0 ? most(held.map((each) => each.held)) : undefined
}

const least = (lengths: readonly Length[]): Length => Math.min(...lengths) as Length
const most = (lengths: readonly Length[]): Length => Math.max(0, ...lengths) as Length
