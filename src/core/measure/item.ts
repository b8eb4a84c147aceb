import type { Amount } from './amount.ts'

/** One piece of a phrase, spaces kept: a number with its unit, a separator, a word, or another mark. */
export type Item =
  | { readonly is: 'amount'; readonly amount: Amount; readonly text: string; readonly gap: boolean }
  | { readonly is: 'by' | 'word' | 'mark' | 'soup'; readonly text: string; readonly gap: boolean }

/** A phrase as typed, as made plain, and as items. */
export interface Phrase {
  /** As the person typed it, for quoting. */
  readonly text: string
  readonly items: readonly Item[]
}

/** The amount at `at`, or undefined. */
export const amountOf = (item: Item | undefined): Amount | undefined =>
  item?.is === 'amount' ? item.amount : undefined

/** True for a word that matches. */
export const isWord = (item: Item | undefined, words: RegExp): boolean =>
  item?.is === 'word' && words.test(item.text)

/** True for one of the marks. */
export const isMark = (item: Item | undefined, ...marks: readonly string[]): boolean =>
  item?.is === 'mark' && marks.includes(item.text)

/** Every amount of the phrase, in order. */
export const amountsOf = (items: readonly Item[]): readonly Amount[] =>
  items.flatMap((item) => (item.is === 'amount' ? [item.amount] : []))

/** Every word of the phrase, in order. */
export const wordsOf = (items: readonly Item[]): readonly string[] =>
  items.flatMap((item) => (item.is === 'word' ? [item.text] : []))

/** The items as plain text, words and numbers apart: what patterns of words are looked for in. */
export const plainOf = (items: readonly Item[]): string => items.map((item) => item.text).join(' ')
