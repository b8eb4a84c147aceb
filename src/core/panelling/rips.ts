import type { Length } from '../measure/length.ts'
import type { Ripping } from './strips.ts'

/** Fence settings in order, one strip a cut, and what is left against the fence after the last. */
export interface Rips {
  /** Fence to nearest tooth; each strip falls free on the other side of the blade. */
  readonly settings: readonly Length[]
  /** How many strips can be taken so: as many as there are settings. */
  readonly count: number
  /** Width of the piece left at the fence: the last setting, or the whole board where no cut is safe. */
  readonly left: Length
}

/**
 * Settings for thin strips with the wide part kept on the fence: cut i is at B - i(s + k). It stops before the piece
 * between fence and blade gets narrower than `safe`. Sizes that make no sense give no setting.
 */
export function ripSettings({ board, strip, kerf, safe }: Ripping & { readonly safe: Length }): Rips {
  const least = Math.max(safe, 1)
  const step = strip + kerf
  const count = board > 0 && strip > 0 && kerf >= 0 ? Math.max(0, Math.floor((board - least) / step)) : 0
  const settings = Array.from({ length: count }, (_, cut) => (board - (cut + 1) * step) as Length)
  return { settings, count, left: settings.at(-1) ?? board }
}
