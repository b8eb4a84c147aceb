import type { Token } from './token.ts'

/** What was read, and where the next token stands. */
export interface Parsed<Node> {
  readonly node: Node
  readonly next: number
}

/** The tokens of one text, in order. */
export type Tokens = readonly Token[]

/** A rule of the grammar: what stands at `at`, or undefined where it does not stand there. */
export type Rule<Node> = (tokens: Tokens, at: number) => Parsed<Node> | undefined

/** The word at `at`; empty when something else is there. */
export const wordAt = (tokens: Tokens, at: number): string => {
  const token = tokens[at]
  return token?.kind === 'word' ? token.text : ''
}

/** The mark at `at`; empty when something else is there. */
export const markAt = (tokens: Tokens, at: number): string => {
  const token = tokens[at]
  return token?.kind === 'mark' ? token.text : ''
}

/** True when the token at `at` touches the one before it. */
export const isTight = (tokens: Tokens, at: number): boolean => tokens[at]?.gap === false

/** A dash that touches both its neighbours: `1-1/2`, `twenty-three`, `8-in`. */
export const isHyphen = (tokens: Tokens, at: number): boolean =>
  markAt(tokens, at) === '-' && isTight(tokens, at) && isTight(tokens, at + 1)
