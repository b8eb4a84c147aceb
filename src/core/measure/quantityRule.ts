import Fraction from 'fraction.js'
import { type Amount, sizeIn } from './amount.ts'
import { isTight, markAt, type Parsed, type Rule, type Tokens, wordAt } from './cursor.ts'
import { fractionAt } from './fractionRule.ts'
import { numberAt } from './numberRule.ts'
import type { TypedNumber } from './typedNumber.ts'
import { type Unit, unitOf } from './unit.ts'
import { unitAt, unitOfFraction } from './unitRule.ts'

/** One number and its unit, if it carries one: `24`, `24in`, `half an inch`, `a foot`, `3/4-inch`, `24s`. */
export const quantityAt: Rule<Amount> = (tokens, at) =>
  oneUnit(tokens, at) ?? unitAlone(tokens, at) ?? counted(tokens, at)

/** `an inch`, `a foot`, `a metre`. */
const oneUnit: Rule<Amount> = (tokens, at) => {
  return /^an?$/u.test(wordAt(tokens, at)) ? oneOf(tokens, at, at + 1) : undefined
}

/** `inch and a quarter`, `foot and a half`: said without its article, the unit is one where a part of it follows. */
const unitAlone: Rule<Amount> = (tokens, at) => {
  const part = wordAt(tokens, at + 1) === 'and' && !/['"\d]$/u.test(tokens[at - 1]?.text ?? '')
  return part && fractionAt(tokens, at + 2) ? oneOf(tokens, at, at) : undefined
}

function oneOf(tokens: Tokens, from: number, at: number): Parsed<Amount> | undefined {
  const word = wordAt(tokens, at)
  const unit =
    word.length > 3 && /^(?:inch|foot|yard|metre|meter|milli|centi)/u.test(word) ? unitOf(word) : undefined
  return (
    unit &&
    quantity(
      tokens,
      from,
      { node: { value: new Fraction(1), form: 'whole', spoken: true }, next: at },
      { node: unit, next: at + 1 },
    )
  )
}

const counted: Rule<Amount> = (tokens, at) => {
  const number = numberAt(tokens, at)
  if (!number) return undefined
  const isFraction = number.node.form === 'fraction'
  const unit = unitAt(tokens, number.next) ?? (isFraction ? unitOfFraction(tokens, number.next) : undefined)
  return quantity(tokens, at, number, unit)
}

function quantity(
  tokens: Tokens,
  at: number,
  number: Parsed<TypedNumber>,
  unit?: Parsed<Unit>,
): Parsed<Amount> {
  const end = unit?.next ?? number.next
  const plural = !unit && isTight(tokens, end) && wordAt(tokens, end) === 's'
  const next = plural ? end + 1 : end
  return {
    node: {
      text: textOf(tokens, at, end),
      number: number.node,
      ...(unit && sized(number.node, unit.node)),
      ...(plural && { plural }),
    },
    next,
  }
}

const sized = (number: TypedNumber, unit: Unit) => ({ unit, size: sizeIn(number, unit) })

/** The plain text from one token up to another, for quoting; a fraction glyph stands apart from its whole number. */
export const textOf = (tokens: Tokens, from: number, to: number): string =>
  tokens
    .slice(from, to)
    .map((token, index) => (index > 0 && (token.gap || token.kind === 'glyph') ? ' ' : '') + token.text)
    .join('')

/** True where an x or `by` separates two numbers. */
export const isBy = (tokens: Tokens, at: number): boolean =>
  /^(?:x|by)$/u.test(wordAt(tokens, at)) || markAt(tokens, at) === '*'
