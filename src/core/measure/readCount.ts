import { countIn, withoutCount } from './count.ts'
import { amountOf, amountsOf, type Item, isWord } from './item.ts'
import { phraseOf } from './phrase.ts'
import type { Invalid } from './reading.ts'
import { tooLong } from './refuseFirst.ts'
import { invalid, quoted } from './wording.ts'

/** A number of things. */
export interface CountRead {
  readonly status: 'read'
  readonly count: number
}

/** A whole number from 1 to 10 000, in figures or words: `3`, `three`, `x3`, `3 off`, `qty 3`. */
export function readCount(text: string): CountRead | Invalid {
  const long = tooLong(text)
  if (long) return long
  const { items } = phraseOf(text)
  const amounts = amountsOf(items)
  const count =
    amounts.length === 1 && items.every(mayStand)
      ? (countIn(amounts[0]) ?? grouped(items))
      : withoutCount(items).count
  if (count !== undefined && amounts.length === 1) return { status: 'read', count }
  return invalid(`cannot read ${quoted(text)} as a count; write a whole number`)
}

const mayStand = (item: Item): boolean =>
  amountOf(item) !== undefined ||
  item.is === 'by' ||
  isWord(item, /^(?:x|off|pcs|pc|pieces?|ea|each|qty|quantity|times|no|nr|of|sets?|kits?)$/u)

/** `1,000`: three figures after a comma, where a whole number is wanted, are thousands. */
function grouped(items: readonly Item[]): number | undefined {
  const [amount] = amountsOf(items)
  const count =
    amount?.number.comma === 'three' && !amount.unit ? Number(amount.number.value.mul(1000)) : undefined
  return count !== undefined && Number.isInteger(count) && count <= 10_000 ? count : undefined
}
