/** Whole cents, and the currency sign or code where one was typed. */
export interface Money {
  readonly status: 'read'
  readonly cents: number
  readonly currency?: string | undefined
}

/** Up to ten million; thousands may be set apart; at most two decimals, a comma or a point before them. */
const MONEY =
  /^\s*(?<before>(?:A|US|NZ|CA)?[$£€]|[A-Za-z]{3})?\s*(?<whole>\d{1,7}|\d{1,3}(?:,\d{3}){1,2}|\d{1,3}(?:[ '’]\d{3}){1,2})(?:[.,](?<part>\d{1,2}))?\s*(?<after>[$£€]|[A-Za-z]{3})?\s*$/u

/** The codes of ISO 4217, as the platform lists them, so that no other three letters are taken for one. */
const CODES: ReadonlySet<string> = new Set(Intl.supportedValuesOf('currency'))

const DOLLARS: Readonly<Record<string, string>> = { A$: 'AUD', US$: 'USD', NZ$: 'NZD', CA$: 'CAD' }

/** The sign or code as it is kept; undefined where letters are no currency. */
function readCurrency(text: string): string | undefined {
  const written = text.toUpperCase()
  if (DOLLARS[written]) return DOLLARS[written]
  return /^[$£€]$/u.test(written) || CODES.has(written) ? written : undefined
}

/**
 * Reads a price: `42.50`, `$42.50`, `42,50 EUR`, `$1,250`. Undefined for anything else. A sign beside a code, as in
 * `$42.50 CAD`, is that code.
 */
export function readMoney(text: string): Money | undefined {
  const { before, whole, part = '', after } = MONEY.exec(text)?.groups ?? {}
  if (whole === undefined) return undefined
  const written = [before, after].filter((each) => each !== undefined)
  const read = written.map(readCurrency)
  if (read.includes(undefined)) return undefined
  const signs = read.filter((each) => each?.length === 1)
  const codes = read.filter((each) => each?.length === 3)
  if (signs.length > 1 || codes.length > 1) return undefined
  const cents = Number(whole.replace(/\D/gu, '')) * 100 + Number(part.padEnd(2, '0'))
  return { status: 'read', cents, currency: codes[0] ?? signs[0] }
}

/** `$42.50`, `42.50 EUR`, or `42.50` where no currency is known. */
export function showMoney(cents: number, currency?: string): string {
  const amount = (cents / 100).toFixed(2)
  if (!currency) return amount
  return currency.length === 1 ? `${currency}${amount}` : `${amount} ${currency}`
}
