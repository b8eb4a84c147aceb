/** Whole cents, and the currency sign or code where one was typed. */
export interface Money {
  readonly status: 'read'
  readonly cents: number
  readonly currency?: string | undefined
}

/** Up to a million, with at most two decimals, a comma or a point before them. */
const MONEY = /^\s*(?<sign>[$£€]|[A-Za-z]{3}\s)?\s*(?<whole>\d{1,7})(?:[.,](?<part>\d{1,2}))?\s*(?<code>[$£€]|[A-Za-z]{3})?\s*$/u

/** Reads a price: `42.50`, `$42.50`, `42,50 EUR`. Undefined for anything else. */
export function readMoney(text: string): Money | undefined {
  const { sign, whole, part = '', code } = MONEY.exec(text)?.groups ?? {}
  if (whole === undefined || (sign && code)) return undefined
  const currency = (sign ?? code)?.trim().toUpperCase()
  return { status: 'read', cents: Number(whole) * 100 + Number(part.padEnd(2, '0')), currency }
}

/** `$42.50`, `42.50 EUR`, or `42.50` where no currency is known. */
export function showMoney(cents: number, currency?: string): string {
  const amount = (cents / 100).toFixed(2)
  if (!currency) return amount
  return currency.length === 1 ? `${currency}${amount}` : `${amount} ${currency}`
}
