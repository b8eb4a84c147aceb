import type { Amount, AmountDoubt } from './amount.ts'
import { isTight, markAt, type Parsed, type Rule, type Tokens, wordAt } from './cursor.ts'
import { isBy, quantityAt, textOf } from './quantityRule.ts'
import { CM, DEGREE, FT, IN, M, MM, type Unit, YD } from './unit.ts'
import { decimalText, inInches, typed } from './wording.ts'

/** An amount in full: one number with its unit, or feet and inches, metres and centimetres, degrees and minutes. */
export const amountAt: Rule<Amount> = (tokens, at) => {
  const first = quantityAt(tokens, at)
  if (!first) return undefined
  const second = secondPart(tokens, first)
  return second ? { ...second, node: { ...second.node, text: textOf(tokens, at, second.next) } } : first
}

function secondPart(tokens: Tokens, first: Parsed<Amount>): Parsed<Amount> | undefined {
  const { unit } = first.node
  if (!unit || first.node.number.fault) return undefined
  if (unit === DEGREE) return minutes(tokens, first)
  if (wordAt(tokens, first.next) === 'and') return withAnd(tokens, first, unit)
  if (unit === FT) return withInches(tokens, first)
  if (unit === YD) return named(tokens, first, first.next, [FT, IN])
  if (unit === M || unit === CM) return withSmaller(tokens, first, unit)
  return undefined
}

/** `2 ft 6 in`, `2' 3-1/2`, `2ft6`, `2'-6"`; not the 2 of `8 ft 2x4`. */
function withInches(tokens: Tokens, feet: Parsed<Amount>): Parsed<Amount> | undefined {
  const dash = markAt(tokens, feet.next) === '-'
  const comma = markAt(tokens, feet.next) === ','
  const from = dash || comma ? feet.next + 1 : feet.next
  const inches = quantityAt(tokens, from)
  if (!inches || isOther(tokens, inches, from)) return undefined
  const { unit, number } = inches.node
  if (unit !== undefined && unit !== IN) return undefined
  if (unit === undefined && (comma || !mayBeInches(tokens, inches, from))) return undefined
  if (number.fault) return { node: { ...feet.node, number }, next: inches.next }
  if (isPower(tokens, from))
    return sum(feet, inches, IN, {
      readings: [`${typed(feet.node.number.value)}ft ${number.value.toFraction()}in`],
      why: 'or an area',
    })
  const apart = dash && tokens[feet.next]?.gap && tokens[from]?.gap
  return sum(feet, inches, IN, apart ? dashDoubt(feet.node, inches.node) : feetDoubt(feet.node, inches.node))
}

/** The 2 of `10 ft2` may be a power. */
const isPower = (tokens: Tokens, at: number): boolean =>
  isTight(tokens, at) &&
  /^[23]$/u.test(tokens[at]?.text ?? '') &&
  tokens[at - 1]?.kind === 'word' &&
  tokens[at - 1]?.gap === true

/** The inches belong to a size or a board of their own: `8 ft 2x4`, `4 ft, 3 @ 3 ft`, `2 ft 4x8`. */
function isOther(tokens: Tokens, inches: Parsed<Amount>, from: number): boolean {
  if (inches.node.unit || inches.node.number.form !== 'whole') return false
  if (markAt(tokens, inches.next) === '@' || inches.node.plural) return true
  if (!isBy(tokens, inches.next) || isTight(tokens, from)) return false
  const other = quantityAt(tokens, inches.next + 1)
  return other !== undefined && other.node.unit !== FT
}

const mayBeInches = (tokens: Tokens, { node, next }: Parsed<Amount>, from: number): boolean =>
  node.number.form !== 'whole' ||
  isTight(tokens, from) ||
  next >= tokens.length ||
  tokens[next]?.kind !== 'word' ||
  isBy(tokens, next) ||
  /^(?:long|wide|high|tall|deep|and|by|board|boards)$/u.test(wordAt(tokens, next))

function feetDoubt(feet: Amount, inches: Amount): AmountDoubt | undefined {
  const total = feet.size?.add(inches.number.value.mul(IN.size))
  if (!total) return undefined
  if (feet.number.form !== 'whole')
    return { readings: [inInches(total)], why: 'inches after a part of a foot' }
  if (inches.number.value.lt(12)) return undefined
  const slip = `${typed(feet.number.value)}ft ${decimalText(inches.number.value.div(10))}in`
  return { readings: [inInches(total), slip], why: 'there are 12 in in a foot' }
}

function dashDoubt(feet: Amount, inches: Amount): AmountDoubt | undefined {
  const rest = inches.number.value.mul(IN.size)
  const joined = `${typed(feet.number.value)}ft ${typed(inches.number.value)}in`
  return (
    feet.size && { readings: [joined, inInches(feet.size.sub(rest))], why: 'the dash may join or take away' }
  )
}

/** `1m20`, `1 m 20 cm`, `2 m 400 mm`, `3cm5`, `one metre twenty`. */
function withSmaller(tokens: Tokens, first: Parsed<Amount>, unit: Unit): Parsed<Amount> | undefined {
  const smaller = named(tokens, first, first.next, unit === M ? [CM, MM] : [MM])
  if (smaller) return smaller
  const part = quantityAt(tokens, first.next)
  if (
    !part ||
    part.node.unit ||
    part.node.plural ||
    part.node.number.form !== 'whole' ||
    part.node.number.fault
  )
    return undefined
  if (isOther(tokens, part, first.next) || (part.next < tokens.length && !isBy(tokens, part.next)))
    return undefined
  const figures = part.node.number.spoken ? part.node.number.value.toFraction() : part.node.text
  if (unit === CM) return figures.length === 1 ? sum(first, part, MM) : undefined
  if (figures.length > 3) return undefined
  if (figures.length > 1) return sum(first, part, figures.length === 3 ? MM : CM)
  const metres = typed(first.node.number.value)
  return sum(first, part, CM, {
    readings: [`${metres}.0${figures}m`, `${metres}.${figures}m`],
    why: 'centimetres or tenths',
  })
}

const bare = (tokens: Tokens, at: number): Amount => quantityAt(tokens, at)?.node as Amount

/** A second part that names its unit: `20 cm` after metres, `6 in` after yards. */
function named(
  tokens: Tokens,
  first: Parsed<Amount>,
  at: number,
  units: readonly Unit[],
): Parsed<Amount> | undefined {
  const part = quantityAt(tokens, at)
  return part?.node.unit && units.includes(part.node.unit) && !part.node.number.fault
    ? sum(first, part, part.node.unit)
    : undefined
}

/** `2 ft and 6 in`; `an inch and a half`, `a foot and a half`, where the half is one of the unit before it. */
function withAnd(tokens: Tokens, first: Parsed<Amount>, unit: Unit): Parsed<Amount> | undefined {
  const smaller: Readonly<Record<string, readonly Unit[]>> = {
    ft: [IN],
    yd: [FT, IN],
    m: [CM, MM],
    cm: [MM],
    in: [],
  }
  const whole = named(tokens, first, first.next + 1, smaller[unit.name] ?? [])
  if (whole) return whole.node.unit === IN && unit === FT ? withDoubt(whole, tokens, first) : whole
  const part = quantityAt(tokens, first.next + 1)
  if (part?.node.number.form !== 'fraction' || part.node.number.fault || part.node.size) return undefined
  if (first.node.number.form !== 'whole' || part.node.number.value.compare(1) >= 0) return undefined
  return sum(first, part, unit, unit === FT ? footDoubt(first.node, part.node) : undefined)
}

function withDoubt(whole: Parsed<Amount>, tokens: Tokens, feet: Parsed<Amount>): Parsed<Amount> {
  const inches = quantityAt(tokens, feet.next + 1)?.node
  const doubt = inches && feetDoubt(feet.node, inches)
  return doubt ? { ...whole, node: { ...whole.node, doubt } } : whole
}

/** `a foot and a half` is 18 in; `two feet and a half`, `a foot and an eighth` may mean inches. */
function footDoubt(feet: Amount, part: Amount): AmountDoubt | undefined {
  if (!feet.size || (feet.number.value.equals(1) && part.number.value.d <= 4n)) return undefined
  const { value } = part.number
  return {
    readings: [inInches(feet.size.add(value.mul(FT.size))), inInches(feet.size.add(value.mul(IN.size)))],
    why: 'part of a foot or of an inch',
  }
}

/** `31° 36' 18"`, `31 deg 36 min`. */
function minutes(tokens: Tokens, degrees: Parsed<Amount>): Parsed<Amount> | undefined {
  const first = sexagesimal(tokens, degrees, /^(?:'|min|mins|minutes?|m)$/u, 60)
  const second = sexagesimal(tokens, first ?? degrees, /^(?:"|sec|secs|seconds?|s)$/u, 3600)
  return second ?? first
}

function sexagesimal(
  tokens: Tokens,
  before: Parsed<Amount>,
  mark: RegExp,
  parts: number,
): Parsed<Amount> | undefined {
  const token = tokens[before.next]
  if (
    token?.kind !== 'number' ||
    !/^\d+(?:\.\d+)?$/u.test(token.text) ||
    !mark.test(tokens[before.next + 1]?.text ?? '')
  )
    return undefined
  const { value } = bare(tokens, before.next).number
  const size = before.node.size?.add(value.div(parts))
  const doubt =
    value.compare(60) >= 0 && size
      ? { readings: [`${decimalText(size)}deg`], why: 'there are 60 minutes in a degree' }
      : before.node.doubt
  return (
    size && { node: { ...before.node, size, compound: true, ...(doubt && { doubt }) }, next: before.next + 2 }
  )
}

function sum(first: Parsed<Amount>, second: Parsed<Amount>, unit: Unit, doubt?: AmountDoubt): Parsed<Amount> {
  const size = (first.node.size ?? first.node.number.value).add(second.node.number.value.mul(unit.size))
  const { number } = second.node
  const kept = {
    value: first.node.number.value,
    form: first.node.number.form,
    ...(number.stroke && { stroke: number.stroke }),
    ...(number.deliberate && { deliberate: true }),
  }
  return {
    node: { ...first.node, number: kept, unit, size, compound: true, ...(doubt && { doubt }) },
    next: second.next,
  }
}
