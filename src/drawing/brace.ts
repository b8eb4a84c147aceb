import type { Length } from '../core/measure/length.ts'
import type { Diagonal } from '../core/panelling/diagonal.ts'
import type { Point } from './scene.ts'

/** A strip `strip` wide across an opening. */
export interface BraceAcross {
  readonly opening: { readonly width: Length; readonly height: Length }
  readonly strip: Length
  readonly ends: Diagonal['ends']
  /** Degrees from level. */
  readonly slope: number
}

/**
 * The outline of a brace that rises from the lower left corner of its opening, in nanometres from that corner, right and up.
 * Flush ends: each long edge runs into one of the two corners. Pointed: the middle of the strip does.
 */
export function braceOutline({ opening, strip, ends, slope }: BraceAcross): readonly Point[] {
  const { width, height } = opening
  const turn = (slope * Math.PI) / 180
  const [level, upright] = [strip / Math.sin(turn), strip / Math.cos(turn)]
  switch (ends) {
    case 'rails':
      return [
        [0, 0],
        [level, 0],
        [width, height],
        [width - level, height],
      ]
    case 'stiles':
      return [
        [0, 0],
        [width, height - upright],
        [width, height],
        [0, upright],
      ]
    case 'pointed':
      return [
        [0, 0],
        [level / 2, 0],
        [width, height - upright / 2],
        [width, height],
        [width - level / 2, height],
        [0, upright / 2],
      ]
  }
}
