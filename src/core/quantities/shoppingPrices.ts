import type { Region } from '../stock/stock.ts'

/** What things cost in one region: cents for one, by `itemKey` of their name. */
export interface PriceList {
  readonly region: Region
  /** A sign or a code, as in `money.ts`. */
  readonly currency: string
  /** When the prices were written down. */
  readonly asOf: string
  readonly prices: ReadonlyMap<string, number>
}

/** The name of what is sold and of the size it is sold in, as one: `latex paint quart`; `each` goes without saying. */
export const itemName = (thing: string, pack: string): string =>
  pack === 'each' ? thing : `${thing} ${pack}`

/**
 * What a name comes down to, however it is typed: small letters, no quotation marks or commas, a unit joined to its number, no
 * filling words, and its words in one order, so that `quart of latex paint` is `Latex paint, quart`.
 */
export const itemKey = (name: string): string =>
  name
    .toLowerCase()
    .replace(/(\d)\s*["”″]/gu, '$1 in')
    .replace(/["'“”‘’(),;]/gu, ' ')
    .replace(/×/gu, 'x')
    .replace(/\binch(?:es)?\b/gu, 'in')
    .replace(/(\d)\s*(gauge|grit|mm|ml|in|ft|oz|l|m|d)\b/gu, '$1$2')
    .split(/\s+/u)
    .filter((word) => word !== '' && !FILLING.has(word))
    .map((word) => (word.length > 3 ? word.replace(/(?<=[a-z])s$/u, '') : word))
    .sort()
    .join(' ')

const FILLING: ReadonlySet<string> = new Set([
  'of',
  'a',
  'an',
  'the',
  'box',
  'boxes',
  'bottle',
  'bottles',
  'can',
  'cans',
  'sheet',
  'sheets',
])
