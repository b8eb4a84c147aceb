import { isTight, markAt, type Parsed, type Rule, type Tokens, wordAt } from './cursor.ts'
import { fractionAt, tightSign } from './fractionRule.ts'
import { spokenNumber } from './spokenNumber.ts'
import { type TypedNumber, typedNumber } from './typedNumber.ts'

/** Any number: `24`, `23 7/8`, `1-1/2`, `23⅞`, `23 & 7/8`, `twenty three and seven eighths`, `5,5`, `1 220`. */
export const numberAt: Rule<TypedNumber> = (tokens, at) => {
  const fraction = fractionAt(tokens, at)
  if (fraction) return fraction
  const whole = wholeAt(tokens, at)
  return whole && (mixed(tokens, whole) ?? spaced(tokens, at) ?? whole)
}

const wholeAt: Rule<TypedNumber> = (tokens, at) => {
  const token = tokens[at]
  if (token?.kind === 'number') return { node: typedNumber(token.text), next: at + 1 }
  const said = spokenNumber(tokens, at)
  return (
    said && {
      node: { value: said.node.value, form: said.node.decimal ? 'decimal' : 'whole', spoken: true },
      next: said.next,
    }
  )
}

/** A whole number and a fraction that belongs to it. */
function mixed(tokens: Tokens, whole: Parsed<TypedNumber>): Parsed<TypedNumber> | undefined {
  if (whole.node.form !== 'whole' || whole.node.fault) return undefined
  const from = joiner(tokens, whole.next)
  const rest = from === undefined ? undefined : fractionAt(tokens, from)
  if (!rest || (from === whole.next && !maySitBeside(tokens, from))) return undefined
  const { spoken = false } = whole.node
  const apart = from === whole.next && tokens[from]?.gap ? partsOf(whole.node, rest.node) : {}
  const counted = spoken && from === whole.next && !rest.node.spoken ? { or: rest.node.value } : {}
  return { node: { ...joined(whole.node, rest.node), ...apart, ...counted, spoken }, next: rest.next }
}

/** Without a joiner, a fraction said with an article or a name of its own is another number: `24 half inch`. */
const maySitBeside = (tokens: Tokens, at: number): boolean =>
  tokens[at]?.kind !== 'word' || spokenNumber(tokens, at) !== undefined

const partsOf = (whole: TypedNumber, rest: TypedNumber) => ({ parts: [whole.value, rest.value] as const })

function joined(whole: TypedNumber, rest: TypedNumber): TypedNumber {
  const { stroke, fault, deliberate, or } = rest
  return {
    value: whole.value.add(rest.value),
    form: 'mixed',
    ...(stroke && { stroke }),
    ...(fault && { fault }),
    ...(deliberate && { deliberate }),
    ...(or && { or: whole.value.add(or) }),
  }
}

/** Where the fraction of a mixed number may begin. */
function joiner(tokens: Tokens, at: number): number | undefined {
  if (tightSign(tokens, at)) return at + 1
  if (markAt(tokens, at) === '&') return at + 1
  if (/^(?:and|n)$/u.test(wordAt(tokens, at))) return at + 1
  if (tokens[at]?.kind === 'glyph' || (tokens[at]?.gap && !isTight(tokens, at))) return at
  return undefined
}

/** `1 220` before mm, or in a size that ends in mm, is one number with its thousands set apart. */
function spaced(tokens: Tokens, at: number): Parsed<TypedNumber> | undefined {
  const [head, tail, after] = [tokens[at], tokens[at + 1], tokens[at + 2]]
  if (head?.kind !== 'number' || !/^\d{1,2}$/u.test(head.text)) return undefined
  if (tail?.kind !== 'number' || !/^\d{3}(?:[.,]\d{1,2})?$/u.test(tail.text) || !tail.gap) return undefined
  if (
    !allSpaced(tokens) &&
    !tokens.some((token) => token.kind === 'word' && /^(?:mm|mms|millimet\w+)$/u.test(token.text))
  )
    return undefined
  if (after && !(/^(?:mm|mms|millimet\w+|x|by)$/u.test(after.text) || after.text === '*')) return undefined
  if (/[^s]s$/u.test(wordAt(tokens, at + 3))) return undefined
  return { node: typedNumber(`${head.text}${tail.text.replace(',', '.')}`), next: at + 2 }
}

/** `1 220 x 2 440`: every number of the phrase is set apart in the same way. */
function allSpaced(tokens: Tokens): boolean {
  const figures = tokens.filter(({ kind }) => kind === 'number')
  const paired = figures.every(({ text, gap }, at) =>
    at % 2 === 0 ? /^\d{1,2}$/u.test(text) : gap && /^\d{3}$/u.test(text),
  )
  return figures.length > 2 && figures.length % 2 === 0 && paired
}
