import { fillContainers } from './containers.ts'
import { fillBoxes } from './fastenerBoxes.ts'
import { packFor } from './shoppingPacks.ts'
import { itemKey } from './shoppingPrices.ts'

/** A size that something is sold in: its name in full, how much it holds in the unit of the need, cents for one. */
export interface Sold {
  readonly item: string
  readonly holds: number
  readonly price?: number | undefined
}

/** Something that is needed, and how it is sold. */
export interface Wanted {
  /** Without a size: `latex paint`. */
  readonly thing: string
  /** mL of what is poured, pieces of what is boxed or bought one by one. */
  readonly amount: number
  readonly by: 'volume' | 'box' | 'piece'
  readonly sold: readonly Sold[]
  /** Pieces that are taken from what the channel has. */
  readonly taken?: number | undefined
  /** Some are bought over: they get spoilt, or come bent. */
  readonly spared: boolean
}

/** One size of one thing: how many are needed, how many of them are on hand, how many are bought. */
export interface ShoppingItem {
  readonly item: string
  readonly need: number
  readonly have: number
  readonly buy: number
  /** Bought over and above. */
  readonly spare: number
  /** Cents for one; undefined where nobody has said. */
  readonly price: number | undefined
}

/** Everything to buy, and what it costs in cents as far as prices are known. */
export interface ShoppingList {
  readonly items: readonly ShoppingItem[]
  readonly cost: number
  readonly spareCost: number
  /** What is bought and has no price, so that its cost is in neither sum. */
  readonly missing: readonly string[]
}

/**
 * Everything to buy: what is on hand is used up first, the rest is bought in the sizes that cost least, and where no price is
 * known in those that the trade's rules name. `onHand` counts by `itemKey`, `spare` is the part bought over, rounded up.
 */
export function listShopping(
  wanted: readonly Wanted[],
  onHand: ReadonlyMap<string, number>,
  spare: number,
): ShoppingList {
  const items = wanted.flatMap((each) => itemsOf(each, onHand, spare))
  const sum = (of: (item: ShoppingItem) => number): number =>
    items.reduce((total, item) => total + of(item) * (item.price ?? 0), 0)
  return {
    items,
    cost: sum(({ buy }) => buy),
    spareCost: sum((item) => item.spare),
    missing: items.filter(({ buy, price }) => buy > 0 && price === undefined).map(({ item }) => item),
  }
}

function itemsOf(
  wanted: Wanted,
  onHand: ReadonlyMap<string, number>,
  spare: number,
): readonly ShoppingItem[] {
  const { used, rest } = useUp(wanted, onHand)
  const bought = buy(rest, wanted)
  const sold = [...wanted.sold, ...looseOf(wanted)]
  return sold
    .map(({ item, price }) => {
      const have = used.get(item) ?? 0
      const count = bought.get(item) ?? 0
      const over = wanted.spared ? Math.ceil(count * spare - 1e-9) : 0
      return { item, need: have + count, have, buy: count, spare: over, price }
    })
    .filter(({ need }) => need > 0)
}

/** What comes in boxes may be on hand loose, by the piece. */
const looseOf = ({ by, thing }: Wanted): readonly Sold[] => (by === 'box' ? [{ item: thing, holds: 1 }] : [])

/** What is used of what is on hand, the largest first, and how much is then still needed. */
function useUp(wanted: Wanted, onHand: ReadonlyMap<string, number>) {
  const used = new Map<string, number>()
  let rest = wanted.amount
  const take = (item: string, holds: number, count: number): void => {
    const taken = Math.min(count, Math.max(0, Math.ceil(rest / holds - 1e-9)))
    if (taken <= 0) return
    used.set(item, (used.get(item) ?? 0) + taken)
    rest -= taken * holds
  }
  const [first] = wanted.sold
  if (first && wanted.taken) take(first.item, first.holds, wanted.taken)
  const sizes = [...wanted.sold, ...looseOf(wanted)].sort((a, b) => b.holds - a.holds)
  for (const { item, holds } of sizes) take(item, holds, onHand.get(itemKey(item)) ?? 0)
  return { used, rest }
}

/** How many of each size hold `rest`. */
function buy(rest: number, { by, sold }: Wanted): ReadonlyMap<string, number> {
  if (rest <= 0) return new Map()
  if (by === 'volume') {
    const cans = sold.map(({ item, holds, price }) => ({
      region: 'US' as const,
      name: item,
      volume: holds,
      price,
    }))
    return new Map(fillContainers(rest, cans).map(({ name, count }) => [name, count]))
  }
  const priced = sold.filter(({ price }) => price !== undefined)
  if (by === 'box' && priced.length === 0) {
    const sizes = fillBoxes(
      rest,
      sold.map(({ holds }) => holds),
      0,
    ).boxes
    return new Map(
      sizes.map(({ size, count }) => [sold.find(({ holds }) => holds === size)?.item ?? '', count]),
    )
  }
  const choice = priced.length > 0 ? priced : sold
  const counts = packFor(
    rest,
    choice.map(({ holds, price = 1 }) => ({ holds, cost: price })),
  )
  return new Map(choice.map(({ item }, index) => [item, counts[index] ?? 0]))
}
