import type { Length } from './length.ts'

/**
 * What a rounded number is for: a part that goes INTO something rounds down, one that COVERS rounds up, a MARK on the
 * wood goes to the nearest.
 */
export type Purpose = 'into' | 'cover' | 'mark'

export type Direction = 'nearest' | 'down' | 'up'

/** The whole multiple of `step` (a positive length) next to `length`, exact on integers; nearest rounds a half up. */
export function roundTo(length: Length, step: Length, direction: Direction): Length {
  const over = ((length % step) + step) % step
  const up = direction === 'up' ? over > 0 : direction === 'nearest' && over * 2 >= step
  return (length - over + (up ? step : 0)) as Length
}

const DIRECTIONS: Readonly<Record<Purpose, Direction>> = { into: 'down', cover: 'up', mark: 'nearest' }

/** `length` rounded to a whole multiple of `step`, the safe way for what the number is for. */
export const roundFor = (length: Length, step: Length, purpose: Purpose): Length =>
  roundTo(length, step, DIRECTIONS[purpose])
