import type { Money } from '../../core/measure/money.ts'
import type { Context } from '../context.ts'
import { codeOf, priceBook } from '../prices.ts'
import { Refusal } from '../refusal.ts'

/** The cents of an amount in the money of the channel. Throws a Refusal where it is written in another. */
export async function centsOf(
  { cents, currency }: Pick<Money, 'cents' | 'currency'>,
  context: Context,
): Promise<number> {
  if (currency === undefined) return cents
  const book = await priceBook(context)
  if (codeOf(currency, context.settled.region) === book.currency) return cents
  throw new Refusal(
    'invalid',
    `this channel reckons in ${book.currency}, not ${currency}; write the amount in ${book.currency}, or first: shopping currency ${currency}`,
  )
}
