import type { Amount } from './amount.ts'
import { amountOf, isMark, isWord, type Item } from './item.ts'

/** A phrase with the count of pieces taken out of it. */
export interface Counted {
  readonly items: readonly Item[]
  readonly count?: number | undefined
}

const COUNT_WORDS = /^(?:off|pcs|pc|pieces?|ea|each|no|nr|qty|sets?|times)$/u

/** Takes the number of pieces out: `three 2x4x8`, `3 off ...`, `3 @ 4 ft`, `3x 24in x 36in`, `... (x3)`, `qty 3 ...`. */
export function withoutCount(items: readonly Item[]): Counted {
  return inBrackets(items) ?? atEnd(items) ?? named(items) ?? leading(items) ?? { items }
}

/** A bare whole number from 1 to 10 000, as a count. */
export function countIn(amount: Amount | undefined): number | undefined {
  if (!amount || amount.unit || amount.plural || amount.number.form !== 'whole' || amount.number.fault)
    return undefined
  const count = Number(amount.number.value)
  return count >= 1 && count <= 10_000 ? count : undefined
}

/** `(x3)`, `(3)`, `(3 off)`. */
function inBrackets(items: readonly Item[]): Counted | undefined {
  const open = items.findIndex((item) => isMark(item, '('))
  const close = items.findIndex((item) => isMark(item, ')'))
  if (open < 0 || close <= open) return undefined
  const inner = items.slice(open + 1, close)
  const numbers = inner.filter((item) => amountOf(item))
  const rest = inner.filter((item) => !amountOf(item) && item.is !== 'by' && !isWord(item, COUNT_WORDS))
  const count = numbers.length === 1 && rest.length === 0 ? countIn(amountOf(numbers[0])) : undefined
  return count === undefined
    ? undefined
    : { items: [...items.slice(0, open), ...items.slice(close + 1)], count }
}

/** `... qty 3`, `... x3` after a size whose last number has its unit, `... 3 off`. */
function atEnd(items: readonly Item[]): Counted | undefined {
  const last = items.length - 1
  if (last < 2) return undefined
  const bare = countIn(amountOf(items[last]))
  if (bare !== undefined && isWord(items[last - 1], /^(?:qty|quantity)$/u))
    return { items: items.slice(0, last - 1), count: bare }
  if (isWord(items[last], /^(?:off|pcs|ea|each|qty|pieces)$/u)) {
    const count = countIn(amountOf(items[last - 1]))
    if (count !== undefined && items[last - 2]?.is !== 'by') return { items: items.slice(0, last - 1), count }
    return undefined
  }
  return undefined
}

/** `qty 3 24 x 36in`, `3 off 610 x 400`, `3 @ 4 ft`, `3x 24in x 36in`, each with a part's letter before it or not. */
function named(all: readonly Item[]): Counted | undefined {
  const labelled =
    isWord(all[0], /^[a-z]$/u) && countIn(amountOf(all[1])) !== undefined && all[2]?.gap === false
  const items = labelled ? all.slice(1) : all
  const from = isWord(items[0], /^(?:qty|quantity)$/u) ? 1 : 0
  const count = countIn(amountOf(items[from]))
  if (count === undefined) return undefined
  const after = items[from + 1]
  const follows =
    amountOf(items[from + 2]) !== undefined || items[from + 2]?.is === 'word' || isMark(items[from + 2], '@')
  if (from === 1 && amountOf(after)) return { items: items.slice(2), count }
  if (!follows) return undefined
  const at = isMark(items[from + 2], '@') ? 3 : 2
  if (isMark(after, '@') || isWord(after, COUNT_WORDS)) return { items: items.slice(from + at), count }
  if (isWord(after, /^(?:sheets|boards|panels|lengths|sticks|studs|posts)$/u))
    return { items: items.slice(from + 1), count }
  const times = after?.is === 'by' && after.text === 'x' && !after.gap && items[from + 2]?.gap
  return times ? timesSize(items, from, count) : undefined
}

/** `3x 24in x 36in` is three; `3x 24in` may be a size, and is left alone. */
function timesSize(items: readonly Item[], from: number, count: number): Counted | undefined {
  const rest = items.slice(from + 2)
  const bys = rest.filter((item) => item.is === 'by')
  return bys.length > 0 && bys.every((item) => item.gap === bys[0]?.gap) ? { items: rest, count } : undefined
}

/** `three 2x4x8`, `3 2x4x8`, `four 24s`: a number directly before a size, or a spoken one before another number. */
function leading(items: readonly Item[]): Counted | undefined {
  const from = isWord(items[0], /^(?:the|my|about)$/u) ? 1 : 0
  const count = countIn(amountOf(items[from]))
  const [next, after] = [amountOf(items[from + 1]), items[from + 2]]
  if (count === undefined || !next || !items[from + 1]?.gap) return undefined
  const sized =
    after?.is === 'by' ||
    next.plural ||
    (amountOf(items[from])?.number.spoken === true && !next.number.spoken)
  const things = after?.is === 'word' && /[^s]s$/u.test(after.text) && next.size !== undefined
  return sized || things ? { items: items.slice(from + 1), count } : undefined
}
