import type { Adhesive, GlueTiming } from './glueProduct.ts'
import type { Range } from './product.ts'

/** How long each step takes, hours. */
export interface GlueTimes {
  readonly status: 'timed'
  /** From spreading to closing the joint, as the maker says for a warm shop. */
  readonly open: Range
  /** In the clamps, where nothing strains the joint; strained, until full strength. */
  readonly clamp: number
  readonly full: number
  /** How much slower than in a warm shop. */
  readonly slower: number
}

/** The glue does not set here: degrees Celsius that it needs at least. */
export interface TooCold {
  readonly status: 'too cold'
  readonly lowest: number
}

/**
 * Times at `temperature` degrees Celsius, that of the wood: 1 h in the clamps at 70 F, double for every 15 F colder, the full
 * strength alike. Warmer than that nothing is taken off, since a maker's time is the least. Under the glue's lowest
 * temperature it is a hard stop. Throws where the temperature is no number.
 */
export function glueTimes(adhesive: Adhesive, temperature: number, timing: GlueTiming): GlueTimes | TooCold {
  if (!Number.isFinite(temperature)) throw new RangeError(`temperature must be a number: ${temperature}`)
  const { lowest, open, clamp, full } = adhesive
  if (temperature < lowest) return { status: 'too cold', lowest }
  const slower = 2 ** (Math.max(0, timing.ratedAt - temperature) / timing.doublesPer)
  return { status: 'timed', open, clamp: clamp * slower, full: full * slower, slower }
}
