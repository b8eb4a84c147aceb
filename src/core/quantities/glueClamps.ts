import { type Length, minus, times, toMillimetres } from '../measure/length.ts'
import type { Clamping, Hardness } from './glueProduct.ts'
import type { Range } from './product.ts'

/** Clamps along one joint and how hard they squeeze. */
export interface ClampPlan {
  /** With the clamps as far apart as they may be, and as near. */
  readonly count: Range
  /** Pascals on the glue. */
  readonly pressure: Range
  /** N that each of the fewest clamps has to give, for the least and the most pressure. */
  readonly force: Range
}

/** Clamps for a joint `length` by `width`: 8 to 12 in apart, an inch and a half to two from the ends. Throws where either is not above 0. */
export function planClamps(length: Length, width: Length, wood: Hardness, clamping: Clamping): ClampPlan {
  if (!(length > 0 && width > 0)) throw new RangeError(`a joint must be above 0: ${length} x ${width}`)
  const { apart, fromEnds } = clamping
  const count = {
    low: clampsAlong(minus(length, times(fromEnds.high, 2)), apart.high),
    high: clampsAlong(minus(length, times(fromEnds.low, 2)), apart.low),
  }
  const pressure = clamping.pressure[wood]
  const each = ((toMillimetres(length) / 1000) * (toMillimetres(width) / 1000)) / count.low
  return { count, pressure, force: { low: pressure.low * each, high: pressure.high * each } }
}

/** One where there is no length left between the ends. */
const clampsAlong = (between: Length, apart: Length): number =>
  between <= 0 ? 1 : Math.ceil(between / apart) + 1
