import type Fraction from 'fraction.js'
import type { TypedNumber } from './typedNumber.ts'
import { DEGREE, MM, type Unit } from './unit.ts'

/** A number with the unit it carries, if any; or feet and inches, which carry two. */
export interface Amount {
  /** The piece of plain text it was read from. */
  readonly text: string
  readonly number: TypedNumber
  readonly unit?: Unit
  /** Nanometres (degrees for angles), exact, once the number has a unit. */
  readonly size?: Fraction
  /** Feet and inches, metres and centimetres: made of two numbers. */
  readonly compound?: boolean
  /** Two ways in which the amount can be meant, in the unit named, and why. */
  readonly doubt?: AmountDoubt
  /** `24s`: several pieces of that size. */
  readonly plural?: boolean
}

/** What an amount could be: as it would be typed to be sure (`2ft 6in`), and why there is a doubt. */
export interface AmountDoubt {
  readonly readings: readonly string[]
  readonly why: string
}

/** Nanometres of a number in `unit` (degrees for degrees). Three figures after a comma are thousands when they are mm. */
export function sizeIn({ value, comma }: TypedNumber, unit: Unit): Fraction {
  if (unit === DEGREE) return value
  return (comma === 'three' && unit === MM ? value.mul(1000) : value).mul(unit.size)
}
