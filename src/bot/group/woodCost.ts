import type { Context } from '../context.ts'
import type { LaidJob } from '../laidJob.ts'
import type { PriceBook } from '../prices.ts'
import { woodWanted } from '../shoppingWood.ts'
import type { ShopStock } from '../shopStock.ts'

/** What the sheets or boards of one group of a layout cost. */
export interface WoodCost {
  /** Labels of the parts that are cut from them. */
  readonly parts: ReadonlySet<string>
  /** Of all that is bought; what has no price is not in it. */
  readonly cents: number
  /** Names of what has no price. */
  readonly unpriced: readonly string[]
  /** Some of it is an example of the settings, not the channel's own. */
  readonly example: boolean
}

/**
 * What each group of a layout costs: by the channel's own prices where they cover all that was to choose from, else what is
 * taken at its own price, or for want of one at the price book's. What is on hand costs nothing.
 */
export const woodCosts = (
  job: LaidJob,
  stock: ShopStock,
  book: PriceBook,
  context: Context,
): readonly WoodCost[] =>
  job.groups.map((laid) => {
    const parts = new Set(laid.group.problem.parts.map(({ id }) => id))
    if (laid.group.priced) return { parts, cents: laid.value, unpriced: [], example: false }
    return { parts, ...bought({ ...job, groups: [laid] }, stock, book, context) }
  })

function bought(job: LaidJob, stock: ShopStock, book: PriceBook, context: Context) {
  const rows = woodWanted(job, undefined, { book, stock, context })
    .map(({ thing, amount, taken = 0, sold: [piece] }) => ({
      thing,
      count: amount - taken,
      price: piece?.price,
    }))
    .filter(({ count }) => count > 0)
  return {
    cents: rows.reduce((sum, { count, price = 0 }) => sum + count * price, 0),
    unpriced: rows.filter(({ price }) => price === undefined).map(({ thing }) => thing),
    example: rows.some(({ thing }) => book.priceOf(thing)?.isExample === true),
  }
}
