import Fraction from 'fraction.js'
import { isHyphen, isTight, markAt, type Parsed, type Rule, type Tokens, wordAt } from './cursor.ts'
import { type Denominator, denominator, hasSuffix } from './denominator.ts'
import { spokenNumber } from './spokenNumber.ts'
import { type TypedNumber, typedFraction } from './typedNumber.ts'
import { unitOf } from './unit.ts'

/** A fraction alone: `7/8`, `½`, `5/8ths`, `3 quarters`, `seven sixteenths`, `a 32nd`, `half`. */
export const fractionAt: Rule<TypedNumber> = (tokens, at) =>
  glyph(tokens, at) ?? strokes(tokens, at) ?? counted(tokens, at) ?? bareName(tokens, at)

function glyph(tokens: Tokens, at: number): Parsed<TypedNumber> | undefined {
  const token = tokens[at]
  if (token?.kind !== 'glyph') return undefined
  const [over = '', under = ''] = token.text.split('/')
  return { node: { ...typedFraction(over, under), deliberate: true }, next: skipSuffix(tokens, at + 1) }
}

/** `7/8`, `7 / 8`, `5/8ths`. */
function strokes(tokens: Tokens, at: number): Parsed<TypedNumber> | undefined {
  const [over, stroke, under] = [tokens[at], tokens[at + 1], tokens[at + 2]]
  if (over?.kind !== 'number' || stroke?.text !== '/' || under?.kind !== 'number') return undefined
  const next = skipSuffix(tokens, at + 3)
  return { node: { ...typedFraction(over.text, under.text), deliberate: next > at + 3 }, next }
}

const skipSuffix = (tokens: Tokens, at: number): number =>
  hasSuffix(tokens, at) || (isTight(tokens, at) && wordAt(tokens, at) === 's') ? at + 1 : at

/** So many of a part: `3 quarters`, `seven eighths`, `three-quarter`, `an eighth`, `a 32nd`. */
function counted(tokens: Tokens, at: number): Parsed<TypedNumber> | undefined {
  const top = numerator(tokens, at)
  if (!top) return undefined
  const below = denominator(tokens, isHyphen(tokens, top.next) ? top.next + 1 : top.next)
  if (!below) return undefined
  if (isQuarters(top.node, below.node))
    return { node: typedFraction(`${top.node.value}`, '4'), next: below.next }
  if (!belongs(top.node.value, below.node)) return undefined
  const value = new Fraction(top.node.value, below.node.parts)
  return {
    node: { value, form: 'fraction', spoken: true, deliberate: true, ...twoWays(top.node, below.node.parts) },
    next: below.next,
  }
}

interface Numerator {
  readonly spoken: boolean
  readonly value: number
  readonly tens: number
}

function numerator(tokens: Tokens, at: number): Parsed<Numerator> | undefined {
  if (/^an?$/u.test(wordAt(tokens, at))) return { node: { spoken: true, value: 1, tens: 0 }, next: at + 1 }
  const token = tokens[at]
  if (token?.kind === 'number' && /^\d{1,2}$/u.test(token.text))
    return { node: { spoken: false, value: Number(token.text), tens: 0 }, next: at + 1 }
  const said = spokenNumber(tokens, at)
  if (!said || said.node.decimal || said.node.value.gt(99)) return undefined
  const value = Number(said.node.value)
  return {
    node: { spoken: true, value, tens: value > 20 && value % 10 > 0 ? value - (value % 10) : 0 },
    next: said.next,
  }
}

/** `five quarter` is how the thickness of rough lumber is said: 5/4. */
const isQuarters = ({ spoken, value }: Numerator, { parts, plural }: Denominator): boolean =>
  spoken && !plural && parts === 4 && [4, 5, 6, 8].includes(value)

/** `3 quarter` is a slip for quarters, but `2 quarter inch strips` is two of a quarter. */
const belongs = (top: number, below: { parts: number; plural: boolean }): boolean =>
  below.plural || top === 1 || (top % 2 === 1 && top < below.parts)

/** `twenty three thirty-seconds` is 23/32, or 20 and 3/32. */
function twoWays({ value, tens }: Numerator, parts: number): { or?: Fraction } {
  return tens > 0 && value - tens < parts ? { or: new Fraction(value - tens, parts).add(tens) } : {}
}

/** `half an inch`, `quarter inch`, `half of 23 7/8`; `quarter` and smaller only where a unit follows. */
function bareName(tokens: Tokens, at: number): Parsed<TypedNumber> | undefined {
  const below = denominator(tokens, at)
  if (!below || below.node.plural || tokens[at]?.kind === 'number') return undefined
  const unitFollows =
    unitOf(wordAt(tokens, below.next)) !== undefined ||
    /^(?:of|an?|ply|sheet)$/u.test(wordAt(tokens, below.next))
  if (below.node.parts > 4 && !unitFollows) return undefined
  return {
    node: { value: new Fraction(1, below.node.parts), form: 'fraction', spoken: true, deliberate: true },
    next: below.next,
  }
}

/** True where `-` or `+` touches both a whole number and a fraction. */
export const tightSign = (tokens: Tokens, at: number): boolean =>
  isHyphen(tokens, at) || (markAt(tokens, at) === '+' && tokens[at]?.gap === tokens[at + 1]?.gap)
