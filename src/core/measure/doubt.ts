import Fraction from 'fraction.js'
import type { Amount } from './amount.ts'
import type { Ambiguous, Invalid } from './reading.ts'
import { FT, IN, M, MM, type Unit } from './unit.ts'
import { ambiguous, couldBe, inInches, inMillimetres, inUnit, invalid, quoted, typed } from './wording.ts'

/** What decides whether a number that reads well may still mean another. */
export interface Setting {
  /** The unit stands beside the number, or governs it from the end of the size. */
  readonly united: boolean
  /** Only a length can be meant here, so a bare fraction such as 13/16 is one. */
  readonly expected: boolean
}

/** The question that a careful person asks about this amount, read in `unit`; undefined when there is none. */
export function doubtOf(amount: Amount, unit: Unit, setting: Setting): Ambiguous | undefined {
  const { number, doubt, text } = amount
  if (doubt) return couldBe(text, doubt.readings, doubt.why)
  return (
    commas(amount, unit) ??
    lostSpace(amount, unit, setting) ??
    said(text, number, unit) ??
    offTape(amount, unit)
  )
}

/** The longest and the shortest that is a part of anything built here: 20 m and 0.1 mm. */
const LONGEST_PART = M.size.mul(20)
const SHORTEST_PART = MM.size.div(10)

/** The refusal of a size outside 0.1 mm to 20 m; undefined inside. */
export function outOfRange(text: string, size: Fraction): Invalid | undefined {
  if (size.compare(LONGEST_PART) > 0)
    return invalid(
      `cannot read ${quoted(text)}: it is longer than 20 m; write a length such as 96in or 2440mm`,
    )
  if (size.compare(SHORTEST_PART) < 0)
    return invalid(
      `cannot read ${quoted(text)}: it is less than 0.1 mm; write a length such as 1/64in or 0.5mm`,
    )
  return undefined
}

/** Rule 9 of commas: three figures before mm are thousands, before m decimals; elsewhere either is possible. */
function commas({ number, text }: Amount, unit: Unit): Ambiguous | undefined {
  const { comma, value, places = 0 } = number
  if (comma === 'three' && unit !== MM && unit !== M)
    return couldBe(
      text,
      [inUnit(value, unit), inUnit(value.mul(1000), unit.system === 'inch' ? MM : unit)],
      'a comma for thousands or for decimals',
    )
  if (comma === 'few' && unit.system === 'inch' && places > 1)
    return couldBe(
      text,
      [
        inUnit(value, unit),
        text
          .replace(/[a-z"' ]+$/u, '')
          .replace(',', `${unit.name} x `)
          .concat(unit.name),
      ],
      'a decimal comma or two numbers',
    )
  if (comma === 'three' && unit === MM && mayBeDecimals(value))
    return couldBe(
      text,
      [inUnit(value, MM), inUnit(value.mul(1000), MM)],
      'a comma for decimals or for thousands',
    )
  const zeros = !comma && places === 3 && unit === MM && /^[1-9]\.\d\d0/u.test(text)
  return zeros
    ? couldBe(text, [inUnit(value, MM), inUnit(value.mul(1000), MM)], 'a point for decimals or for thousands')
    : undefined
}

/** `3,175 mm` is 1/8 in to a thousandth of a mm; `12,125 mm` would be 12 m. */
const mayBeDecimals = (value: Fraction): boolean =>
  value.compare(10) >= 0 || value.mul(MM.size).div(IN.size).mul(64).d === 1n

/**
 * A fraction that may have lost the space after its whole number: 11/4 for 1 1/4. A top-heavy one is in doubt always, a
 * proper one (13/16) only while nothing says that it is a length.
 */
function lostSpace(
  { number, text, compound }: Amount,
  unit: Unit,
  { united, expected }: Setting,
): Ambiguous | undefined {
  if (!number.stroke || number.form === 'decimal') return undefined
  const { over, under } = number.stroke
  const topHeavy = Number(over) >= Number(under)
  const others = splits(over, Number(under))
  if (number.form === 'mixed' || compound) {
    if (!topHeavy || Number(over) === Number(under)) return undefined
    return couldBe(
      text,
      [inUnit(number.value, unit), ...others.map((value) => inUnit(value, unit))],
      'the fraction is more than one',
    )
  }
  if (number.deliberate) return undefined
  if (topHeavy && Number(over) % Number(under) === 0 && under !== '4')
    return couldBe(text, [inUnit(number.value, unit)], 'a division, or a fraction')
  if (others.length > 0 && (topHeavy || !(united || expected)))
    return couldBe(
      text,
      [inUnit(number.value, unit), ...others.map((value) => inUnit(value, unit))],
      'a space may be lost',
    )
  return topHeavy && !(united || expected) ? quarters(text, number.value, under) : undefined
}

/** `5/4` bare is a length, or the name of five-quarter lumber; other top-heavy fractions have one reading. */
const quarters = (text: string, value: Fraction, under: string): Ambiguous | undefined =>
  under === '4'
    ? ambiguous(
        `${quoted(text)} could be ${inUnit(value, IN)}, or rough lumber of ${value.mul(4).toFraction()} quarters, which is thinner once planed and has to be measured; write ${inUnit(value, IN)} if it is the length`,
      )
    : undefined

/** Every whole number and proper fraction that the figures of `over` can be cut into: 237/8 is 23 7/8. */
function splits(over: string, under: number): readonly Fraction[] {
  const found: Fraction[] = []
  if (![2, 4, 8, 16, 32, 64].includes(under)) return found
  for (let cut = 1; cut < over.length; cut += 1) {
    const [head, tail] = [over.slice(0, cut), over.slice(cut)]
    if (!tail.startsWith('0') && Number(tail) < under && Number(head) > 0)
      found.push(new Fraction(Number(tail), under).add(Number(head)))
  }
  return found
}

const said = (text: string, { or, value }: Amount['number'], unit: Unit): Ambiguous | undefined =>
  or && couldBe(text, [inUnit(value, unit), inUnit(or, unit)], 'said the same way')

/** `1/3 m` ends in no whole number of nanometres. */
function unevenMetric(text: string, { form }: Amount['number'], size: Fraction): Ambiguous | undefined {
  const uneven = (form === 'fraction' || form === 'mixed') && size.d !== 1n
  return uneven
    ? couldBe(text, [inUnit(size.div(MM.size).mul(10).round().div(10), MM)], 'to the nearest 0.1 mm')
    : undefined
}

/** A fraction of an inch that no tape has: thirds, tenths. Decimals are what a caliper shows, and are read. */
function offTape({ number, unit: own, size, text, compound }: Amount, unit: Unit): Ambiguous | undefined {
  if (unit.system === 'metric') return unevenMetric(text, number, size ?? number.value.mul(unit.size))
  if (unit.system !== 'inch' || (number.form !== 'fraction' && number.form !== 'mixed')) return undefined
  const exact = size ?? number.value.mul((own ?? unit).size)
  const parts = exact.div(IN.size).mul(64)
  if (parts.d === 1n || (compound && unit === FT)) return undefined
  const near = inInches(parts.mul(1, 4).round().mul(4).div(64).mul(IN.size))
  const fine = inInches(parts.mul(1, 2).round().mul(2).div(64).mul(IN.size))
  return couldBe(
    text,
    [...new Set([near, fine])].filter((mark) => mark !== '0in').concat(inMillimetres(exact)),
    `a tape has no ${typedParts(number.value)}`,
  )
}

const typedParts = (value: Fraction): string =>
  typed(value.mod(1)).includes('.') ? value.mod(1).toFraction() : typed(value)
