import type { Plan } from '../core/plan.ts'
import type { FinishNeed } from '../core/quantities/finish.ts'
import type { Adhesive } from '../core/quantities/glueProduct.ts'
import type { FinishProduct } from '../core/quantities/product.ts'
import { listShopping, type ShoppingList, type Wanted } from '../core/quantities/shoppingList.ts'
import { itemKey } from '../core/quantities/shoppingPrices.ts'
import type { Context } from './context.ts'
import { cutListOf } from './cutList.ts'
import type { FinishAsked } from './finishNeed.ts'
import type { LaidJob } from './laidJob.ts'
import { layOut, searchTerms } from './layoutJob.ts'
import { planned } from './plannedSurround.ts'
import { type PriceBook, priceBook } from './prices.ts'
import { fastenersWanted, finishAndPaper, glueWanted, hardwareWanted } from './shoppingWants.ts'
import { measuredNotes, type Shop, woodWanted } from './shoppingWood.ts'
import { shopStockSchema } from './shopStock.ts'

/** What may be asked of a list. */
export interface ShoppingAsked extends Omit<FinishAsked, 'area'> {
  readonly glue?: Adhesive | undefined
}

/** What the plan takes besides wood. */
export interface Supplies {
  readonly wanted: readonly Wanted[]
  readonly product: FinishProduct
  readonly need: FinishNeed
  readonly glue: Adhesive
  /** Joints that no fastener on sale does for. */
  readonly unfastened: number
}

/** The channel's whole shopping, and what it was worked out from. */
export interface ShoppingJob {
  readonly list: ShoppingList
  readonly book: PriceBook
  readonly wood: LaidJob
  /** Undefined where only a cut list is kept. */
  readonly supplies: Supplies | undefined
  /** The wood is that of a cut list of the channel's own. */
  readonly ofCutList: boolean
  readonly spare: number
  /** What to know of the price of sheets that were measured, a line each. */
  readonly measured: readonly string[]
}

/** Works out all there is to buy, with the wood of `laid` where it is laid out already. Throws a Refusal where there is neither a plan nor a cut list. */
export async function shoppingJob(
  asked: ShoppingAsked,
  context: Context,
  laid?: LaidJob,
): Promise<ShoppingJob> {
  const { project, settings, reference } = context
  const plan = project && planned(project.choices, context).plan
  const book = await priceBook(context)
  const stock = await context.ofChannel('stock', shopStockSchema).read()
  const shop: Shop = { book, stock, context }
  const wood = laid ?? (await layOut(context, settings.search.seconds, searchTerms(context)))
  const supplies = plan && suppliesOf(plan, asked, shop)
  const wanted = [...woodWanted(wood, plan, shop), ...(supplies?.wanted ?? [])]
  const onHand = new Map(book.kept.have.map(({ item, count }) => [itemKey(item), count]))
  const spare = book.kept.spare === undefined ? reference.spare : book.kept.spare / 100
  const cutList = await cutListOf(context).read()
  return {
    list: listShopping(wanted, onHand, spare),
    book,
    wood,
    supplies,
    ofCutList: cutList !== undefined,
    spare,
    measured: measuredNotes(wood, plan, shop),
  }
}

function suppliesOf(plan: Plan, asked: ShoppingAsked, shop: Shop): Supplies {
  const { wanted: fasteners, unfastened } = fastenersWanted(plan, shop)
  const { wanted: bottles, glue } = glueWanted(plan, asked.glue, shop)
  const { wanted: finish, product, need } = finishAndPaper(plan, asked, shop)
  return {
    wanted: [...hardwareWanted(plan, shop), ...fasteners, bottles, ...finish],
    product,
    need,
    glue,
    unfastened,
  }
}
