import { layJoints } from '../core/plan/joints.ts'
import type { Plan } from '../core/plan.ts'
import { exposedSurfaces, finishedArea } from '../core/quantities/exposedSurface.ts'
import { USUAL_SPARE } from '../core/quantities/fastenerBoxes.ts'
import type { FinishNeed } from '../core/quantities/finish.ts'
import { gluedArea, glueNeeded } from '../core/quantities/glue.ts'
import type { Adhesive } from '../core/quantities/glueProduct.ts'
import type { FinishProduct } from '../core/quantities/product.ts'
import type { Sold, Wanted } from '../core/quantities/shoppingList.ts'
import { itemName } from '../core/quantities/shoppingPrices.ts'
import { sandpaperNeeded } from '../core/quantities/shoppingSandpaper.ts'
import { purchases } from './fastenerWords.ts'
import { type FinishAsked, finishWanted } from './finishNeed.ts'
import { fastenPlan } from './planFasteners.ts'
import { Refusal } from './refusal.ts'
import { boxOf, fastenerGauge, fastenerThing, gritThing } from './shoppingNames.ts'
import type { Shop } from './shoppingWood.ts'
import { chooseWood } from './wood.ts'

const soldAs = (item: string, holds: number, { book }: Shop, ...wider: readonly string[]): Sold => ({
  item,
  holds,
  price: book.priceOf(item, ...wider)?.cents,
})

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
