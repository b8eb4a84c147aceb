import { z } from 'zod'
import { itemKey, itemName, type PriceList } from '../core/quantities/shoppingPrices.ts'
import { REGIONS } from '../core/stock/stock.ts'
import { ratio } from './amounts.ts'

/** Whole cents of an amount with at most two decimals. */
const amount = z
  .number()
  .min(0)
  .max(10_000_000)
  .refine((value) => Math.abs(value * 100 - Math.round(value * 100)) < 1e-6, {
    error: 'an amount of whole cents such as 18.5 or 42',
  })
  .transform((value) => Math.round(value * 100))

const list = z.strictObject({
  regions: z.array(z.enum(REGIONS)).min(1),
  currency: z.string().regex(/^(?:[$£€]|[A-Z]{3})$/, { error: 'a sign or a code such as $, £, € or AUD' }),
  asOf: z.string().min(1),
  source: z.string(),
  items: z.record(z.string().min(1), z.record(z.string().min(1), amount)),
})

/** The shape of config/prices.yaml, read as one price list for each region. */
export const pricesFile = z
  .strictObject({ spare: z.strictObject({ source: z.string(), part: ratio }), lists: z.array(list).min(1) })
  .transform(({ spare, lists }, context) => {
    for (const issue of repeated(lists)) context.addIssue(issue)
    return { prices: lists.flatMap(priceLists), spare: spare.part }
  })

function priceLists({ regions, currency, asOf, items }: z.output<typeof list>): readonly PriceList[] {
  const prices = new Map(
    Object.entries(items).flatMap(([thing, packs]) =>
      Object.entries(packs).map(([pack, cents]) => [itemKey(itemName(thing, pack)), cents] as const),
    ),
  )
  return regions.map((region) => ({ region, currency, asOf, prices }))
}

/** A region with two lists, and a thing that stands twice in one however it is written. */
function repeated(lists: readonly z.output<typeof list>[]) {
  const regions = new Set<string>()
  return lists.flatMap(({ regions: own, items }, at) => {
    const twice = own.filter((region) => regions.has(region))
    for (const region of own) regions.add(region)
    const names = new Set<string>()
    const again = Object.entries(items).flatMap(([thing, packs]) =>
      Object.keys(packs).flatMap((pack) => {
        const key = itemKey(itemName(thing, pack))
        if (!names.has(key)) return names.add(key) && []
        return [issue(['lists', at, 'items', thing, pack], 'a name that nothing else in the list has')]
      }),
    )
    return [...twice.map((region) => issue(['lists', at, 'regions'], `one list for ${region}`)), ...again]
  })
}

const issue = (path: readonly PropertyKey[], message: string) => ({
  code: 'custom' as const,
  path: [...path],
  message,
})
