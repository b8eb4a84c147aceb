import { isHyphen, isTight, markAt, type Rule, type Tokens, wordAt } from './cursor.ts'
import { THOU, type Unit, unitOf } from './unit.ts'

/** The unit that follows a number: `in.`, `-inch`, `"`, `linear ft`. The preposition of `fit 24 in a box` is none. */
export const unitAt: Rule<Unit> = (tokens, at) => {
  const from = isHyphen(tokens, at) ? at + 1 : at
  const word = skipLinear(tokens, from)
  const found = unitOf(tokens[word]?.kind === 'soup' ? '' : (tokens[word]?.text ?? ''))
  if (!found || tokens[word]?.kind === 'number' || isPreposition(tokens, word)) return undefined
  return { node: found, next: skipAfter(tokens, word + 1, found) }
}

/** `half an inch`, `5/8ths of an inch`, `a quarter of a foot`: the unit of a fraction. */
export const unitOfFraction: Rule<Unit> = (tokens, at) => {
  const of = wordAt(tokens, at) === 'of' ? at + 1 : at
  const from = /^an?$/u.test(wordAt(tokens, of)) ? of + 1 : of
  return from === at || wordAt(tokens, from).length < 2 ? undefined : unitAt(tokens, from)
}

function skipLinear(tokens: Tokens, at: number): number {
  if (!/^(?:linear|lineal|lin|running)$/u.test(wordAt(tokens, at))) return at
  return markAt(tokens, at + 1) === '.' ? at + 2 : at + 1
}

/** The stop of an abbreviation; and `of an inch` after thousandths. */
function skipAfter(tokens: Tokens, at: number, unit: Unit): number {
  if (
    markAt(tokens, at) === '.' &&
    isTight(tokens, at) &&
    !(tokens[at + 1]?.kind === 'number' && isTight(tokens, at + 1))
  )
    return at + 1
  const inch = unit === THOU ? unitOfFraction(tokens, at) : undefined
  return inch?.next ?? at
}

const isPreposition = (tokens: Tokens, at: number): boolean =>
  wordAt(tokens, at) === 'in' && /^(?:an?|the|my|our|your|each|this|that|it)$/u.test(wordAt(tokens, at + 1))
