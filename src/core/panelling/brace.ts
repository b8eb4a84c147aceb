import type { Length } from '../measure/length.ts'
import { type Diagonal, type DiagonalObstacle, diagonal } from './diagonal.ts'

/** The flush-ended brace to cut. `jig`: no cut is within the saw's range; `complement` is the setting with the strip turned a
 * quarter, its end against the fence in a square jig. */
export interface EndChoice {
  readonly status: 'within' | 'jig'
  readonly diagonal: Diagonal
  /** 90 - saw, degrees. */
  readonly complement: number
}

/**
 * Chooses whether a brace ends on the rails or on the stiles: the smaller saw setting, if `sawLimit` (degrees from square)
 * reaches it. One of the two is always under 45, because the settings add up to 90 - 2 asin(w / D).
 */
export function chooseEnds(
  width: Length,
  height: Length,
  strip: Length,
  sawLimit: number,
): EndChoice | DiagonalObstacle {
  const rails = diagonal({ width, height, strip, ends: 'rails' })
  const stiles = diagonal({ width, height, strip, ends: 'stiles' })
  if (rails.status === 'impossible') return rails
  if (stiles.status === 'impossible') return stiles
  const chosen = rails.saw < stiles.saw ? rails : stiles
  return { status: chosen.saw <= sawLimit ? 'within' : 'jig', diagonal: chosen, complement: 90 - chosen.saw }
}
