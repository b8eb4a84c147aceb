import { type Length, nanometres } from '../measure/length.ts'

/** What changes on a brace where two of them cross. Angles in degrees. */
export interface Crossing {
  /** The angle between the two braces as seen from the stiles, above 90 where they are steep. */
  readonly crossing: number
  /** One brace cut in two: each half from its outer to its inner long point, and the inner cut from square. */
  readonly halfLength?: Length
  readonly innerSaw?: number
  /** Both halved: the notch along the strip, centred, and how deep where the thickness is known. */
  readonly notchWidth?: Length
  readonly notchDepth?: Length
}

/** Two equal braces at `slope` (degrees from level), each `length` tip to tip and `strip` wide. */
export interface Crossed {
  readonly slope: number
  readonly length: Length
  readonly strip: Length
  readonly thickness?: Length | undefined
}

/**
 * Equal braces at slope a cross at g = 2a. The one that is cut loses (w/2)/sin g to the edge of the whole one and its long
 * edge gains (w/2)/|tan g| back; a halving is w / sin g along the strip and half the thickness deep.
 */
export function crossBraces({ slope, length, strip, thickness }: Crossed, by: 'cut' | 'halving'): Crossing {
  const crossing = 2 * slope
  const g = (crossing * Math.PI) / 180
  if (by === 'cut') {
    const lost = strip / 2 / Math.sin(g) - strip / 2 / Math.abs(Math.tan(g))
    return { crossing, halfLength: nanometres(length / 2 - lost), innerSaw: Math.abs(90 - crossing) }
  }
  const notchWidth = nanometres(strip / Math.sin(g))
  return {
    crossing,
    notchWidth,
    ...(thickness === undefined ? {} : { notchDepth: nanometres(thickness / 2) }),
  }
}

/**
 * The strip width at which the lozenge where two braces cross would touch the frame of a `width` x `height` opening:
 * w / cos a = H or w / sin a = W at their slope a, solved for w. Only narrower strips cross within it.
 */
export function crossingLimit(width: Length, height: Length, ends: 'pointed' | 'rails' | 'stiles'): Length {
  const long = Math.hypot(width, height)
  const product = width * height
  if (ends === 'pointed') return nanometres(product / long)
  const along = long * long + (ends === 'rails' ? height : width) ** 2
  return nanometres((product * long) / Math.hypot(along, product))
}
