import { INCH, type Length, MILLIMETRE, nanometres } from '../core/measure/length.ts'
import { showLength } from '../core/measure/show.ts'
import type { FastenerSize } from '../core/quantities/fastenerSize.ts'
import { itemKey, itemName } from '../core/quantities/shoppingPrices.ts'
import type { SheetLabel } from '../core/stock/stock.ts'
import type { Context } from './context.ts'
import { quoted, Refusal } from './refusal.ts'
import type { ShopStock, Stocked } from './shopStock.ts'
import { didYouMean } from './suggest.ts'

/** A size in the unit that it is whole in, whoever asks: `1/2 in`, `12 mm`. It is part of a name. */
export const namedSize = (length: Length): string =>
  showLength(length, {
    // 2 1/2 in is whole in half millimetres as well.
    units: length % (INCH / 8) !== 0 && length % (MILLIMETRE / 2) === 0 ? 'metric' : 'inch',
    tape: 64,
    millimetreStep: 0.5,
  })

/** `1/2 in plywood`. */
export const sheetThing = ({ label, material }: Pick<SheetLabel, 'label' | 'material'>): string =>
  `${namedSize(label)} ${material}`

/** `18 gauge 3/4 in brads`, `#8 2 in screws`, `6d nails`, whose length goes without saying. */
export const fastenerThing = ({ kind, name, length }: FastenerSize): string =>
  kind === 'nail' ? `${name} nails` : `${name} ${namedSize(length)} ${kind}s`

/** The same without the length: prices often go by gauge and box alone. */
export const fastenerGauge = ({ kind, name }: FastenerSize): string => `${name} ${kind}s`

/** `box of 1000`. */
export const boxOf = (count: number): string => `box of ${count}`

/** `120 grit sandpaper`, which is bought by the sheet. */
export const gritThing = (grit: number): string => `${grit} grit sandpaper`

/** A row of the channel's own stock: `S1 plywood 4ft x 8ft`. */
export const stockThing = ({ label, name }: Pick<Stocked, 'label' | 'name'>): string =>
  name === undefined ? label : `${label} ${name}`

/** How far a measured sheet may be from its label's size: 0.8 mm, 1/32 in, the most that PS 1 allows. */
const NEAR = nanometres(0.8 * MILLIMETRE)

/** The label that a sheet of that thickness most likely has; undefined where none is near. */
export function nearestLabel(
  thickness: Length,
  material: string,
  { settled, reference }: Context,
): SheetLabel | undefined {
  const off = ({ actual }: SheetLabel): number => Math.abs(actual - thickness)
  const [nearest] = reference.stock.labels
    .filter((label) => label.region === settled.region && label.material === material && off(label) <= NEAR)
    .toSorted((a, b) => off(a) - off(b))
  return nearest
}

/**
 * The name in full of what was typed, among all that a list can hold in this region. Throws a Refusal that offers what was
 * likely meant where it is none of them.
 */
export function knownItem(text: string, stock: ShopStock | undefined, context: Context): string {
  const names = knownNames(stock, context)
  const found = names.get(itemKey(text))
  if (found !== undefined) return found
  const size = [...new Set(names.values())].find((name) => itemKey(name).includes(itemKey(text)))
  const more =
    size === undefined || itemKey(text) === ''
      ? ''
      : ` It is sold in sizes: write the size too, such as ${size}.`
  throw new Refusal(
    'invalid',
    `nothing on a shopping list is called ${quoted(text)}; write its name as the list has it, such as latex paint quart.${more || didYouMean(text, [...new Set(names.values())])}`,
  )
}

/** Every name by its key, and what else people call it. */
function knownNames(stock: ShopStock | undefined, context: Context): ReadonlyMap<string, string> {
  const names = new Map<string, string>()
  const add = (name: string, typed: string = name): void => {
    if (!names.has(itemKey(typed))) names.set(itemKey(typed), name)
  }
  for (const item of stock?.items ?? []) {
    add(stockThing(item))
    add(stockThing(item), item.label)
  }
  addWood(context, add)
  addPoured(context, add)
  addFasteners(context, add)
  for (const grit of [...context.reference.sanding.grits, context.reference.sanding.betweenGrit])
    add(gritThing(grit))
  add('corner bracket')
  return names
}

type Add = (name: string, typed?: string) => void

function addWood({ settled, reference }: Context, add: Add): void {
  const sold = <Row extends { readonly region: string }>(rows: readonly Row[]): readonly Row[] =>
    rows.filter(({ region }) => region === settled.region)
  const { labels, sizes, boards, lengths } = reference.stock
  for (const label of sold(labels))
    for (const { name, aliasOf } of sold(sizes))
      add(itemName(sheetThing(label), aliasOf ?? name), itemName(sheetThing(label), name))
  for (const { name, aliasOf } of sold(boards))
    for (const length of sold(lengths))
      add(itemName(aliasOf ?? name, length.name), itemName(name, length.name))
}

function addPoured({ settled, reference }: Context, add: Add): void {
  const { finishes, containers, glue } = reference
  const poured = [
    { things: finishes, packs: containers },
    { things: glue.adhesives, packs: glue.bottles },
  ]
  for (const { things, packs } of poured)
    for (const { name: thing, alsoCalled } of things)
      for (const { name } of packs.filter(({ region }) => region === settled.region))
        for (const called of [thing, ...alsoCalled]) add(itemName(thing, name), itemName(called, name))
}

function addFasteners({ settled, reference }: Context, add: Add): void {
  for (const size of reference.fasteners.sizes.filter(({ region }) => region === settled.region)) {
    for (const thing of [fastenerThing(size), fastenerGauge(size)])
      for (const count of size.boxes) add(itemName(thing, boxOf(count)))
    add(fastenerThing(size))
  }
}
