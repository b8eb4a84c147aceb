import type { Block } from './handout.ts'

/** Notes of a reply as points on paper; no block where there are none. */
export const points = (notes: readonly string[]): readonly Block[] =>
  notes.length === 0 ? [] : [{ block: 'points', items: [...new Set(notes.map(onPaper))] }]

/** A note without what is only of use to somebody who types: `(product=, coats=)`, `(stock add)`. */
export const onPaper = (note: string): string =>
  note
    .replace(/: [a-z]+=\)/gu, ')')
    .replace(/ \([^()]*[a-z]=[^()]*\)/gu, '')
    .replace(/ \((?:stock|shopping|layout|steps|grooves)\b[^()]*\)/gu, '')
