import type { StockItem } from '../core/cutting/job.ts'
import type { Length } from '../core/measure/length.ts'
import type { Plan } from '../core/plan.ts'
import type { Wanted } from '../core/quantities/shoppingList.ts'
import { itemName } from '../core/quantities/shoppingPrices.ts'
import { defaultSheet } from './completePlan.ts'
import type { Context } from './context.ts'
import { isSheets, type LaidGroup, type LaidJob, type LaidSheets, takenOf } from './laidJob.ts'
import { codeOf, type PriceBook } from './prices.ts'
import { measuredSize, nearestLabel, sheetThing, stockThing } from './shoppingNames.ts'
import type { ShopStock } from './shopStock.ts'

/** What the names and prices of a list depend on. */
export interface Shop {
  readonly book: PriceBook
  readonly stock: ShopStock | undefined
  readonly context: Context
}

/** Sheets and boards of a layout: whole ones, those on hand among them. */
export function woodWanted(job: LaidJob, plan: Plan | undefined, shop: Shop): readonly Wanted[] {
  const wanted = new Map<string, Wanted>()
  for (const laid of job.groups)
    for (const [label, count] of takenOf(laid)) {
      const found = laid.group.stock.find((item) => item.label === label)
      if (!found) throw new RangeError(`a layout takes ${label}, which is not in its stock`)
      const own = ownRow(found, shop)
      const item = own ? stockThing(own) : soldName(found, laid, plan, shop)
      const before = wanted.get(item)
      const price = own ? ownPrice(own, item, shop) : shop.book.priceOf(item)?.cents
      const amount = count + (before?.amount ?? 0)
      wanted.set(item, {
        thing: item,
        amount,
        by: 'piece',
        sold: [{ item, holds: 1, price }],
        taken: own?.onHand === undefined ? 0 : amount,
        spared: true,
      })
    }
  return [...wanted.values()]
}

/** The row of the channel's stock that a layout took; undefined for the usual stock of the region. */
const ownRow = ({ label, length, width, thickness }: StockItem, { stock }: Shop) =>
  stock?.items.find(
    (item) =>
      item.label === label && item.length === length && item.width === width && item.thickness === thickness,
  )

/** A price of the shopping list goes before that of the stock list, which counts only in the same money. */
function ownPrice(
  { price }: { readonly price?: number | undefined },
  item: string,
  { book, stock, context }: Shop,
) {
  const isSame =
    stock?.currency === undefined || codeOf(stock.currency, context.settled.region) === book.currency
  return book.priceOf(item)?.cents ?? (isSame ? price : undefined)
}

/** What a sheet is made of, and the label that it goes by; no label where it was measured and is near none. */
function soldSheet(
  { thickness }: StockItem,
  laid: LaidSheets,
  plan: Plan | undefined,
  { context }: Shop,
): { readonly material: string; readonly label: Length | undefined; readonly measured: boolean } {
  const { settings, settled, reference, project } = context
  const isOfPlan = plan !== undefined && Math.abs(plan.spec.sheet - thickness) <= 500_000
  const usual = defaultSheet(settings.usual[settled.region].sheet, {
    ...settled,
    units: undefined,
    stock: reference.stock,
  })
  const chosen = isOfPlan ? (project?.choices.sheet ?? usual) : undefined
  const material = laid.group.material ?? chosen?.material ?? 'plywood'
  const label = chosen?.label ?? nearestLabel(thickness, material, context)?.label
  return { material, label, measured: chosen?.label === undefined }
}

/** What the shop of the region calls it: `1/2 in plywood 4x8`, `2x6 8 ft`; what was measured and has no such name by its size. */
function soldName(item: StockItem, laid: LaidGroup, plan: Plan | undefined, shop: Shop): string {
  if (!isSheets(laid)) return item.label
  const { material, label } = soldSheet(item, laid, plan, shop)
  const thing =
    label === undefined ? `${measuredSize(item.thickness)} ${material}` : sheetThing({ label, material })
  return itemName(thing, item.label)
}

/** By which price a sheet goes that was measured, or that none is known for its thickness, a line each. */
export function measuredNotes(job: LaidJob, plan: Plan | undefined, shop: Shop): readonly string[] {
  return job.groups.filter(isSheets).flatMap((laid) =>
    laid.group.stock.flatMap((item) => {
      if (ownRow(item, shop) || !takenOf(laid).has(item.label)) return []
      const { material, label, measured } = soldSheet(item, laid, plan, shop)
      if (!measured || label === item.thickness) return []
      const size = measuredSize(item.thickness)
      return label === undefined
        ? [
            `${size} ${material} is no thickness that is sold here, so it goes by what was measured, at no price but your own`,
          ]
        : [`${size} as measured goes by the name and the price of ${sheetThing({ label, material })}`]
    }),
  )
}
