import { showMoney } from '../core/measure/money.ts'
import { itemKey } from '../core/quantities/shoppingPrices.ts'
import type { Region } from '../core/stock/stock.ts'
import type { Context } from './context.ts'
import { shopStockSchema } from './shopStock.ts'
import { NOTHING_KEPT, type ShoppingKept, shoppingOf } from './shoppingKept.ts'

/** Cents for one, and whether it is one of the examples in the settings. */
export interface Price {
  readonly cents: number
  readonly isExample: boolean
}

/** What things cost in this channel. */
export interface PriceBook {
  /** The code of what every price is in. */
  readonly currency: string | undefined
  /** Cents as a person writes them. */
  readonly show: (cents: number) => string
  /** When the examples were written down; undefined where they do not count here. */
  readonly asOf: string | undefined
  /** What prices are in here, and what the examples are in, where those do not count. */
  readonly foreign: { readonly own: string | undefined; readonly examples: string } | undefined
  /** By the first of the names that has a price: the channel's own before any example. */
  readonly priceOf: (...names: readonly string[]) => Price | undefined
  readonly kept: ShoppingKept
}

/**
 * The channel's own prices, then the examples of its region. Nothing is converted: where the channel reckons in another currency
 * than the examples, they do not count.
 */
export async function priceBook(context: Context): Promise<PriceBook> {
  const { region } = context.settled
  const kept = (await shoppingOf(context).read()) ?? NOTHING_KEPT
  const stock = await context.ofChannel('stock', shopStockSchema).read()
  const examples = context.reference.prices.find((list) => list.region === region)
  const currency = codeOf(kept.currency ?? stock?.currency ?? examples?.currency, region)
  const counts = examples && codeOf(examples.currency, region) === currency
  const own = new Map(kept.prices.map(({ item, cents }) => [itemKey(item), cents]))
  const find = (names: readonly string[], prices: ReadonlyMap<string, number> | undefined) =>
    names.map((name) => prices?.get(itemKey(name))).find((cents) => cents !== undefined)
  return {
    currency,
    show: (cents) => showMoney(cents, signOf(currency, region)),
    asOf: counts ? examples.asOf : undefined,
    foreign: examples && !counts ? { own: signOf(currency, region), examples: examples.currency } : undefined,
    kept,
    priceOf: (...names) => {
      const said = find(names, own)
      if (said !== undefined) return { cents: said, isExample: false }
      const example = find(names, counts ? examples.prices : undefined)
      return example === undefined ? undefined : { cents: example, isExample: true }
    },
  }
}

/** The code of a currency: a sign means the money of its region, `$` is `AUD` in Australia and `USD` elsewhere. */
export function codeOf(currency: string | undefined, region: Region): string | undefined {
  if (currency === '$') return region === 'AU' ? 'AUD' : 'USD'
  return currency === undefined ? undefined : (CODES[currency] ?? currency)
}

const CODES: Readonly<Record<string, string>> = { '£': 'GBP', '€': 'EUR' }

/** How a currency is written beside an amount: by its sign where that says which it is in the region. */
export function signOf(code: string | undefined, region: Region): string | undefined {
  if (code === 'USD' && region !== 'AU') return '$'
  return Object.keys(CODES).find((sign) => CODES[sign] === code) ?? code
}

/** What to know of prices that are examples, with a thing that has one; none where none was used. */
export const exampleNote = (
  { asOf }: PriceBook,
  used: boolean,
  item = 'latex paint quart',
): readonly string[] =>
  used && asOf !== undefined
    ? [`example prices as of ${asOf}, not your shop's (shopping price ${item} price=18.50)`]
    : []

/** Why the examples do not count; none where they do. */
export const foreignNote = ({ foreign }: Pick<PriceBook, 'foreign'>): readonly string[] =>
  foreign === undefined
    ? []
    : [`prices in ${foreign.own}: the examples, in ${foreign.examples}, do not count; nothing is converted`]

/** How amounts of the stock list are written: in its own money, else in that of the shopping list. */
export async function stockMoney(context: Context): Promise<string | undefined> {
  const { region } = context.settled
  const stock = await context.ofChannel('stock', shopStockSchema).read()
  const { currency } = await priceBook(context)
  return signOf(codeOf(stock?.currency ?? currency, region), region)
}
