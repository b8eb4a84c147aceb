import { listShopping, type Wanted } from '../../core/quantities/shoppingList.ts'
import type { Context } from '../context.ts'
import { searchTerms } from '../layoutJob.ts'
import { priceBook } from '../prices.ts'
import { fastenersWanted, finishAndPaper, glueWanted, hardwareWanted } from '../shoppingWants.ts'
import { type Shop, woodWanted } from '../shoppingWood.ts'
import { groupParts, layOutGroup, pooledStock, searchSeconds } from './cutting.ts'
import { type Group, MOST_NEEDS, type Need } from './group.ts'
import { isSameThing } from './thing.ts'

/** Something that the kits take, in whole packs; `cost` in cents where it is not wood and the channel has a price of it. */
type Taken = Pick<Need, 'name' | 'count' | 'cost'>

/**
 * What all kits together take and is not there yet: the sheets and boards of the layout that are neither on hand nor
 * brought, fasteners, glue, finish and sandpaper in whole packs for everybody, and glasses, one pair a head (common
 * practice). What wood costs is shared by the layout, so it has no cost here.
 */
export async function neededByKits(context: Context): Promise<readonly Taken[]> {
  const parts = await groupParts(context)
  const pooled = await pooledStock(parts.group, context)
  const seconds = searchSeconds(context)
  const job = await layOutGroup(parts, pooled, { context, seconds, terms: searchTerms(context) })
  const book = await priceBook(context)
  const shop: Shop = { book, stock: pooled.stock, context }
  const plans = parts.worked.flatMap(({ worked }) => (worked ? [worked.plan] : []))
  const supplies = plans.flatMap((plan) => [
    ...hardwareWanted(plan, shop),
    ...fastenersWanted(plan, shop).wanted,
    glueWanted(plan, undefined, shop).wanted,
    ...finishAndPaper(plan, {}, shop).wanted,
  ])
  const buy = (wanted: readonly Wanted[]) =>
    listShopping(wanted, new Map(), 0).items.filter((item) => item.buy > 0)
  return [
    ...buy(woodWanted(job, undefined, shop)).map((item) => ({ name: named(item.item), count: item.buy })),
    ...buy(together(supplies)).map((item) => {
      const price = book.priceOf(item.item)
      return {
        name: named(item.item),
        count: Math.min(item.buy, 1000),
        ...(price && !price.isExample && { cost: price.cents * item.buy }),
      }
    }),
    { name: 'safety glasses', count: plans.length },
  ]
}

const named = (item: string): string => item.slice(0, 60).trim()

/** One row of each thing for all kits: sixty people share a box of brads. */
function together(wanted: readonly Wanted[]): readonly Wanted[] {
  const rows = new Map<string, Wanted>()
  for (const each of wanted)
    rows.set(each.thing, { ...each, amount: each.amount + (rows.get(each.thing)?.amount ?? 0) })
  return [...rows.values()]
}

/** The group with what its kits take on the list, and off it what they no longer take and nobody brings. */
export function withTaken(group: Group, taken: readonly Taken[]): Group {
  const isTaken = ({ name }: Need) => taken.some((each) => isSameThing(each.name, name))
  const kept = group.needs.filter((row) => !row.ofKits || row.claims.length > 0 || isTaken(row))
  const fresh = taken.filter(({ name }) => !kept.some((row) => isSameThing(row.name, name)))
  return {
    ...group,
    needs: [
      ...kept.map((row) => {
        const now = taken.find(({ name }) => isSameThing(row.name, name))
        return now ? { ...row, count: now.count, cost: now.cost ?? row.cost } : row
      }),
      ...fresh.map((row) => ({ ...row, claims: [], ofKits: true })),
    ].slice(0, MOST_NEEDS),
  }
}
