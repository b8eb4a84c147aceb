import { INCH, type Length, MILLIMETRE, nanometres, toMillimetres } from '../core/measure/length.ts'
import { showDecimal } from '../core/measure/showDecimal.ts'
import { showLength } from '../core/measure/show.ts'
import type { FastenerSize } from '../core/quantities/fastenerSize.ts'
import { itemKey, itemName } from '../core/quantities/shoppingPrices.ts'
import type { SheetLabel } from '../core/stock/stock.ts'
import type { Context } from './context.ts'
import { quoted, Refusal } from './refusal.ts'
import type { ShopStock, Stocked } from './shopStock.ts'
import { didYouMean, listed } from './suggest.ts'

/** A size in the unit that it is whole in, whoever asks: `1/2 in`, `12 mm`. It is part of a name. */
export const namedSize = (length: Length): string =>
  showLength(length, {
    // 2 1/2 in is whole in half millimetres as well.
    units: length % (INCH / 8) !== 0 && length % (MILLIMETRE / 2) === 0 ? 'metric' : 'inch',
    tape: 64,
    millimetreStep: 0.5,
  })

/** What was measured, as people say it: a fraction of an inch where it is one, else tenths of a millimetre. */
export const measuredSize = (length: Length): string =>
  length % (INCH / 64) === 0
    ? showLength(length, { units: 'inch', tape: 64, millimetreStep: 0.5 })
    : `${showDecimal(toMillimetres(length), 1)} mm`

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

/** What a typed name is looked for among. */
export interface Named {
  readonly stock: ShopStock | undefined
  /** Items of the channel's list as it stands, asked for only where the name is not plain: a list takes a layout. */
  readonly onList: () => Promise<readonly string[]>
  /** A name that stands for several of them will do, as a price by gauge does for every length. */
  readonly wider?: boolean
}

/**
 * The name in full of what was typed: as it is written, else the one item of the channel's list that has all its words, else
 * the one of all that a list can hold in this region. Throws a Refusal that names what it could be where it is not one.
 */
export async function knownItem(
  text: string,
  { stock, onList, wider = false }: Named,
  context: Context,
): Promise<string> {
  const names = knownNames(stock, context)
  const exact = names.get(itemKey(text))
  if (exact !== undefined) return exact
  const typed = wordsOf(text)
  const all = [...new Set(names.values())]
  const meant = (among: readonly string[]): readonly string[] =>
    typed.length === 0 ? [] : among.filter((name) => hasAll(wordsOf(name), typed))
  const near = meant(await onList())
  const found = near.length > 0 ? near : meant(all)
  const stands =
    wider && near.length > 1
      ? meant(all).filter((name) => near.every((each) => hasAll(wordsOf(each), wordsOf(name))))
      : found
  if (stands.length === 1 && stands[0] !== undefined) return stands[0]
  if (found.length > 1)
    throw new Refusal(
      'ambiguous',
      `${quoted(text)} could be ${listOf(found)}; write more of its name, such as ${found[0]}`,
    )
  throw new Refusal(
    'invalid',
    `nothing on a shopping list is called ${quoted(text)}; write its name as the list has it, such as latex paint quart.${didYouMean(text, all)}`,
  )
}

/** Candidates that are named; more are counted. */
const CANDIDATES = 4

const listOf = (names: readonly string[]): string =>
  names.length <= CANDIDATES
    ? listed(names, 'or')
    : `${names.slice(0, CANDIDATES - 1).join(', ')} or ${names.length - CANDIDATES + 1} more`

/** What people say for short. */
const SHORT: Readonly<Record<string, string>> = { ply: 'plywood' }

const wordsOf = (name: string): readonly string[] =>
  itemKey(name)
    .split(' ')
    .flatMap((word) => (word === '' ? [] : [SHORT[word] ?? word]))

const BARE = /^[\d./]+$/u
const UNITS = ['in', 'mm', 'oz', 'l', 'gauge', 'grit']

/** A number may leave its unit out: `1/2 ply` is 1/2 in plywood. */
const hasAll = (words: readonly string[], typed: readonly string[]): boolean =>
  typed.every((word) =>
    words.some((each) => each === word || (BARE.test(word) && UNITS.some((unit) => each === word + unit))),
  )

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
