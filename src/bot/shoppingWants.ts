import type { StockItem } from '../core/cutting/job.ts'
import { toMillimetres } from '../core/measure/length.ts'
import type { Plan } from '../core/plan.ts'
import { layJoints } from '../core/plan/joints.ts'
import { exposedSurfaces, finishedArea } from '../core/quantities/exposedSurface.ts'
import { USUAL_SPARE } from '../core/quantities/fastenerBoxes.ts'
import type { FinishNeed } from '../core/quantities/finish.ts'
import { gluedArea, glueNeeded } from '../core/quantities/glue.ts'
import type { Adhesive } from '../core/quantities/glueProduct.ts'
import type { FinishProduct } from '../core/quantities/product.ts'
import type { Sold, Wanted } from '../core/quantities/shoppingList.ts'
import { itemName } from '../core/quantities/shoppingPrices.ts'
import { sandpaperNeeded } from '../core/quantities/shoppingSandpaper.ts'
import { defaultSheet } from './completePlan.ts'
import type { Context } from './context.ts'
import { purchases } from './fastenerWords.ts'
import { finishWanted, type FinishAsked } from './finishNeed.ts'
import { isSheets, type LaidGroup, type LaidJob, takenOf } from './laidJob.ts'
import { fastenPlan } from './planFasteners.ts'
import { codeOf, type PriceBook } from './prices.ts'
import { Refusal } from './refusal.ts'
import {
  boxOf,
  fastenerGauge,
  fastenerThing,
  gritThing,
  nearestLabel,
  sheetThing,
  stockThing,
} from './shoppingNames.ts'
import type { ShopStock } from './shopStock.ts'
import { chooseWood } from './wood.ts'

/** What the names and prices of a list depend on. */
export interface Shop {
  readonly book: PriceBook
  readonly stock: ShopStock | undefined
  readonly context: Context
}

const soldAs = (item: string, holds: number, { book }: Shop, ...wider: readonly string[]): Sold => ({
  item,
  holds,
  price: book.priceOf(item, ...wider)?.cents,
})

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

/** What the shop of the region calls it: `1/2 in plywood 4x8`, `2x6 8 ft`. */
function soldName(
  { label, thickness }: StockItem,
  laid: LaidGroup,
  plan: Plan | undefined,
  { context }: Shop,
): string {
  if (!isSheets(laid)) return label
  const { settings, settled, reference, project } = context
  const isOfPlan = plan !== undefined && Math.abs(plan.spec.sheet - thickness) <= 500_000
  const usual = defaultSheet(settings.usual[settled.region].sheet, {
    ...settled,
    units: undefined,
    stock: reference.stock,
  })
  const chosen = isOfPlan ? (project?.choices.sheet ?? usual) : undefined
  const material = laid.group.material ?? chosen?.material ?? 'plywood'
  const sheet =
    chosen?.label === undefined
      ? nearestLabel(thickness, material, context)
      : { label: chosen.label, material }
  return itemName(sheet ? sheetThing(sheet) : `${toMillimetres(thickness)} mm ${material}`, label)
}

/** Fasteners of every size, in boxes, with a tenth to spare as `fasteners` has it. */
export function fastenersWanted(
  plan: Plan,
  shop: Shop,
): { readonly wanted: readonly Wanted[]; readonly unfastened: number } {
  const { context } = shop
  const { wood } = chooseWood(undefined, context)
  const joints = fastenPlan(
    plan,
    { kind: undefined, wood, region: context.settled.region },
    context.reference,
  )
  const counts = joints.flatMap((each) =>
    'fastening' in each ? [[each.fastening.size, each.joint.count * each.fastening.row.count] as const] : [],
  )
  const wanted = purchases(counts).map(
    ({ size, count }): Wanted => ({
      thing: fastenerThing(size),
      amount: Math.ceil(count * (1 + USUAL_SPARE) - 1e-9),
      by: 'box',
      sold: size.boxes.map((box) =>
        soldAs(
          itemName(fastenerThing(size), boxOf(box)),
          box,
          shop,
          itemName(fastenerGauge(size), boxOf(box)),
        ),
      ),
      spared: false,
    }),
  )
  return { wanted, unfastened: joints.length - counts.length }
}

/** Glue for every joint that is glued, by the bottle. */
export function glueWanted(
  plan: Plan,
  asked: Adhesive | undefined,
  shop: Shop,
): { readonly wanted: Wanted; readonly glue: Adhesive } {
  const { reference, settled } = shop.context
  const glue = asked ?? reference.glue.adhesives[0]
  if (!glue) throw new Refusal('fault', 'the settings know no glue; add one to config/adhesives.yaml')
  const area = gluedArea(layJoints(plan).filter(({ fixing }) => fixing === 'glued'))
  const { volume } = glueNeeded(area, glue, settled.region, reference.glue)
  const bottles = reference.glue.bottles.filter(({ region }) => region === settled.region)
  return { glue, wanted: poured(glue.name, volume, bottles, shop) }
}

const poured = (
  thing: string,
  amount: number,
  packs: readonly { readonly name: string; readonly volume: number }[],
  shop: Shop,
): Wanted => ({
  thing,
  amount,
  by: 'volume',
  sold: packs.map(({ name, volume }) => soldAs(itemName(thing, name), volume, shop)),
  spared: false,
})

/** Finish for all that is exposed, and the sandpaper before it and between its coats. */
export function finishAndPaper(
  plan: Plan,
  asked: Omit<FinishAsked, 'area'>,
  shop: Shop,
): {
  readonly wanted: readonly Wanted[]
  readonly product: FinishProduct
  readonly need: FinishNeed
} {
  const { reference, settled } = shop.context
  const area = finishedArea(exposedSurfaces(plan), 'all')
  const { chosen, need } = finishWanted({ ...asked, area }, shop.book, shop.context)
  const cans = reference.containers.filter(({ region }) => region === settled.region)
  const filmCoats = need.dryFilm === undefined ? 0 : need.coats
  const paper = sandpaperNeeded({ area, filmCoats }, reference.sanding)
  return {
    product: chosen,
    need,
    wanted: [
      poured(chosen.name, need.volume, cans, shop),
      ...paper.map(({ grit, sheets }) => pieces(gritThing(grit), sheets, false, shop)),
    ],
  }
}

/** Brackets and the like that are screwed on. */
export const hardwareWanted = ({ hardware }: Plan, shop: Shop): readonly Wanted[] =>
  hardware.map(({ name, count }) => pieces(name, count, true, shop))

const pieces = (thing: string, amount: number, spared: boolean, shop: Shop): Wanted => ({
  thing,
  amount,
  by: 'piece',
  sold: [soldAs(thing, 1, shop)],
  spared,
})
