import type { ShoppingItem, ShoppingList } from '../core/quantities/shoppingList.ts'
import { labelled } from './cutListReply.ts'
import { isOptimal } from './layoutValue.ts'
import { exampleNote, foreignNote } from './prices.ts'
import type { Cell, Figure, Reply, Table } from './reply.ts'
import type { ShoppingJob, Supplies } from './shoppingJob.ts'

/** Everything to buy: the sum first, then each thing with its cost, what is bought over, and what is on hand. */
export function shoppingReply(job: ShoppingJob): Reply {
  const { list, book } = job
  const used = list.items.filter(({ buy }) => buy > 0)
  const example = used.find(({ item, price }) => price !== undefined && isFromExamples(item, job))
  return {
    answer: answer(list, book.show),
    tables: [buyTable(list), spareTable(list), handTable(list)].filter(({ rows }) => rows.length > 0),
    notes: [
      ...missingNotes(list),
      ...job.measured,
      ...spareNotes(job),
      ...exampleNote(book, example !== undefined, example?.item),
      ...(list.missing.length > 0 ? foreignNote(book) : []),
      ...woodNotes(job),
      ...(job.supplies
        ? supplyNotes(job.supplies)
        : ['the wood of the cut list only: start a project for the rest']),
    ],
    buttons: [{ label: 'Layout', line: 'layout' }],
    figures: shoppingFigures(list, book.currency),
  }
}

/** A gauge may stand for every length of it, so the price is looked for as the list did. */
const isFromExamples = (item: string, { book }: ShoppingJob): boolean => {
  const price = book.priceOf(item, item.replace(/^(\S+(?: gauge)?) [\d /.]+(?:mm|in) /u, '$1 '))
  return price?.isExample ?? false
}

function answer({ items, cost, spareCost, missing }: ShoppingList, say: (cents: number) => string): string {
  const kinds = items.filter(({ buy }) => buy > 0).length
  if (kinds === 0) return 'Nothing to buy: all of it is on hand'
  const things = `${kinds} ${kinds === 1 ? 'thing' : 'things'}`
  const known = kinds > missing.length
  if (!known) return `Buy ${things}; no price is known for any of them`
  const least = missing.length > 0 ? 'at least ' : ''
  const without = missing.length > 0 ? `, ${missing.length} of them without a price` : ''
  const over = spareCost > 0 ? `; ${say(spareCost)} more for spares` : ''
  return `Buy for ${least}${say(cost)}: ${things}${without}${over}`
}

/** Columns that leave most of a phone's line to the name. */
const amount = (cents: number | undefined): string => (cents === undefined ? '?' : (cents / 100).toFixed(2))

const costOf = (count: number, { price }: ShoppingItem): number | undefined =>
  price === undefined ? undefined : count * price

const buyTable = ({ items }: ShoppingList): Table => ({
  title: 'Buy',
  columns: ['No', 'Cost', ''],
  rows: items
    .filter(({ buy }) => buy > 0)
    .map((each): Cell[] => [each.buy, amount(costOf(each.buy, each)), each.item]),
})

const spareTable = ({ items }: ShoppingList): Table => ({
  title: 'To spare',
  columns: ['No', 'Cost', ''],
  rows: items
    .filter(({ spare }) => spare > 0)
    .map((each): Cell[] => [each.spare, amount(costOf(each.spare, each)), each.item]),
})

const handTable = ({ items }: ShoppingList): Table => ({
  title: 'Used of what is on hand',
  columns: ['No', ''],
  rows: items.filter(({ have }) => have > 0).map(({ have, item }): Cell[] => [have, item]),
})

const missingNotes = ({ missing }: ShoppingList): readonly string[] =>
  missing.length === 0
    ? []
    : [`no price, so in no sum: ${labelled(missing, NAMED)} (shopping price ${missing[0]} price=...)`]

/** More names than this are left to the table, where a question mark stands in place of their cost. */
const NAMED = 3

function spareNotes({ list, spare }: ShoppingJob): readonly string[] {
  const percent = Math.round(spare * 1000) / 10
  return list.items.some((item) => item.spare > 0)
    ? [
        `${percent} % over on sheets, boards and hardware, in whole ones, apart from the rest (shopping spare 0%)`,
      ]
    : []
}

const woodNotes = ({ wood, ofCutList, supplies }: ShoppingJob): readonly string[] => [
  ...(ofCutList && supplies
    ? ["sheets and boards for the channel's cut list, all else for its project"]
    : []),
  ...(isOptimal(wood) ? [] : ['fewer sheets or boards may do: layout seconds=8']),
]

function supplyNotes({ product, need, glue, unfastened }: Supplies): readonly string[] {
  return [
    `${need.coats} ${need.coats === 1 ? 'coat' : 'coats'} of ${product.name} (product=, coats=), ${glue.name} (glue=)`,
    'a tenth more fasteners and glue than are used, and what stays in tray and brush, are in what is needed',
    'sandpaper by a rule of thumb: about 16 sq ft (1.5 m²) of bare wood a sheet',
    ...(unfastened > 0
      ? [
          `${unfastened} ${unfastened === 1 ? 'kind of joint takes' : 'kinds of joint take'} no fastener on sale: see "fasteners"`,
        ]
      : []),
  ]
}

/** Money in whole units of the currency; the sums are null while something that is bought has no price. */
function shoppingFigures(
  { items, cost, spareCost, missing }: ShoppingList,
  currency: string | undefined,
): Reply['figures'] {
  const whole = missing.length === 0
  const inUnits = (cents: number | undefined): number | null => (cents === undefined ? null : cents / 100)
  return {
    items: items.map(
      ({ item, need, have, buy, price }): Figure => ({
        item,
        need,
        have,
        buy,
        price: inUnits(price),
        cost: buy === 0 ? 0 : inUnits(price === undefined ? undefined : price * buy),
      }),
    ),
    cost: whole ? cost / 100 : null,
    spareCost: whole ? spareCost / 100 : null,
    currency: currency ?? null,
    missingPrices: [...missing],
    knownCost: cost / 100,
    knownSpareCost: spareCost / 100,
    spares: items
      .filter(({ spare }) => spare > 0)
      .map(
        ({ item, spare, price }): Figure => ({
          item,
          buy: spare,
          cost: inUnits(price === undefined ? undefined : price * spare),
        }),
      ),
  }
}
