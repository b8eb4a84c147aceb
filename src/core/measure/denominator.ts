import { isHyphen, isTight, type Rule, type Tokens, wordAt } from './cursor.ts'

/** The bottom of a fraction, and whether it was said in the plural. */
export interface Denominator {
  readonly parts: number
  readonly plural: boolean
}

const NAMES: readonly (readonly [number, string])[] = [
  [2, 'half halves'],
  [3, 'third thirds'],
  [4, 'quarter quarters qtr qtrs fourth fourths'],
  [5, 'fifth fifths'],
  [6, 'sixth sixths'],
  [8, 'eighth eighths eigth eigths eights'],
  [10, 'tenth tenths'],
  [12, 'twelfth twelfths'],
  [16, 'sixteenth sixteenths sixteeth sixteeths sixteens'],
  [32, 'thirtysecond thirtyseconds'],
  [64, 'sixtyfourth sixtyfourths'],
  [100, 'hundredth hundredths'],
]

const BY_WORD: ReadonlyMap<string, Denominator> = new Map(
  NAMES.flatMap(([parts, words]) =>
    words.split(' ').map((word) => [word, { parts, plural: /s$/u.test(word) }] as const),
  ),
)

/** `thirty seconds`, `sixty-fourths`: two words, a hyphen between them or not. */
const PAIRS: ReadonlyMap<string, readonly [number, RegExp]> = new Map([
  ['thirty', [32, /^seconds?$/u]],
  ['sixty', [64, /^fourths?$/u]],
] as const)

const SUFFIX = /^(?:st|nd|rd|th)s?$/u

/** What a fraction is counted in: `eighths`, `quarter`, `16ths`, `32nd`, `thirty seconds`. */
export const denominator: Rule<Denominator> = (tokens, at) => {
  const word = wordAt(tokens, at)
  const pair = PAIRS.get(word)
  const second = isHyphen(tokens, at + 1) ? at + 2 : at + 1
  if (pair?.[1].test(wordAt(tokens, second)))
    return { node: { parts: pair[0], plural: wordAt(tokens, second).endsWith('s') }, next: second + 1 }
  const named = BY_WORD.get(word)
  return named ? { node: named, next: at + 1 } : ordinal(tokens, at)
}

function ordinal(tokens: Tokens, at: number): ReturnType<Rule<Denominator>> {
  const token = tokens[at]
  if (token?.kind !== 'number' || !/^\d{1,4}$/u.test(token.text) || !hasSuffix(tokens, at + 1))
    return undefined
  return { node: { parts: Number(token.text), plural: wordAt(tokens, at + 1).endsWith('s') }, next: at + 2 }
}

/** True for the `ths` of `7/16ths`. */
export const hasSuffix = (tokens: Tokens, at: number): boolean =>
  isTight(tokens, at) && SUFFIX.test(wordAt(tokens, at))
