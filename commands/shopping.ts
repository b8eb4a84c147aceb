import { z } from 'zod'
import { defineAction, defineVerbs } from '../src/bot/command.ts'
import type { Context } from '../src/bot/context.ts'
import { adhesive, choice, count, first, money, percent, product, words } from '../src/bot/option.ts'
import { codeOf, priceBook } from '../src/bot/prices.ts'
import { Refusal, quoted } from '../src/bot/refusal.ts'
import type { Reply } from '../src/bot/reply.ts'
import { shoppingJob } from '../src/bot/shoppingJob.ts'
import { MOST_KEPT, NOTHING_KEPT, replaced, type ShoppingKept, shoppingOf } from '../src/bot/shoppingKept.ts'
import { knownItem } from '../src/bot/shoppingNames.ts'
import { keptReply } from '../src/bot/shoppingKeptReply.ts'
import { shoppingReply } from '../src/bot/shoppingReply.ts'
import { shopStockSchema } from '../src/bot/shopStock.ts'
import { undoVerbs } from '../src/bot/undoVerbs.ts'
import { readMoney } from '../src/core/measure/money.ts'

const list = defineAction({
  summary: 'Everything to buy for the plan of this channel, what it costs, and what is on hand',
  options: z.strictObject({
    product: product('the finish', 'latex paint').optional(),
    coats: count('how many coats of it', 1, 10).optional(),
    surface: choice('planed and sanded, or sawn and weathered', ['smooth', 'rough']).optional(),
    glue: adhesive('the glue').optional(),
  }),
  run: async (input, context) => shoppingReply(await shoppingJob(input, context)),
})

/** Keeps what `edit` makes of what is kept, and says it. */
async function keep(
  context: Context,
  said: string,
  edit: (kept: ShoppingKept) => ShoppingKept,
): Promise<Reply> {
  const { after } = await shoppingOf(context).change((kept = NOTHING_KEPT) => withinBounds(edit(kept)))
  return keptReply(after, said, context)
}

function withinBounds(kept: ShoppingKept): ShoppingKept {
  if (Math.max(kept.prices.length, kept.have.length) <= MOST_KEPT) return kept
  throw new Refusal(
    'invalid',
    `a channel keeps ${MOST_KEPT} prices and ${MOST_KEPT} things on hand; take one off first`,
  )
}

const named = async (text: string, context: Context, wider = false): Promise<string> => {
  const stock = await context.ofChannel('stock', shopStockSchema).read()
  return knownItem(text, { stock, onList: () => itemsListed(context), wider }, context)
}

/** What the list of the channel has now; nothing where there is none yet. */
async function itemsListed(context: Context): Promise<readonly string[]> {
  try {
    return (await shoppingJob({}, context)).list.items.map(({ item }) => item)
  } catch (error) {
    if (error instanceof Refusal) return []
    throw error
  }
}

const price = defineAction({
  summary: 'What one of something costs here, in place of the example',
  options: z.strictObject({
    item: first(words('its name as the list has it, with the size', 'latex paint quart')),
    price: money('of one'),
  }),
  run: async ({ item, price: { cents, currency } }, context) => {
    const name = await named(item, context, true)
    const book = await priceBook(context)
    const { region } = context.settled
    if (currency !== undefined && codeOf(currency, region) !== book.currency)
      throw new Refusal(
        'invalid',
        `this list is in ${book.currency}, not ${currency}; write the price in ${book.currency}, or first: shopping currency ${currency}`,
      )
    // From now on the list is in this money, whatever region somebody asks from.
    return keep(context, `${name} at ${book.show(cents)}`, (kept) => ({
      ...kept,
      currency: book.currency,
      prices: replaced(kept.prices, name, { item: name, cents }),
    }))
  },
})

const have = defineAction({
  summary: 'What is on hand and need not be bought; count=0 takes it off again',
  options: z.strictObject({
    item: first(words('its name as the list has it, with the size', '18 gauge 3/4 in brads box of 1000')),
    count: count('how many there are', 0, 10_000).default(1),
  }),
  run: async ({ item, count: there }, context) => {
    const name = await named(item, context)
    return keep(context, there === 0 ? `${name}: none on hand` : `${name}: ${there} on hand`, (kept) => ({
      ...kept,
      have: replaced(kept.have, name, there === 0 ? undefined : { item: name, count: there }),
    }))
  },
})

const spare = defineAction({
  summary: 'How much to buy over of sheets, boards and hardware',
  options: z.strictObject({ part: first(percent('of what is bought, rounded up to whole ones', '10%')) }),
  run: ({ part }, context) =>
    keep(context, `${part.percent} % to spare`, (kept) => ({ ...kept, spare: part.percent })),
})

const currency = defineAction({
  summary: 'What the prices of this channel are in; those kept in another are taken off',
  options: z.strictObject({ currency: first(words('a sign or a code', 'EUR')) }),
  run: async ({ currency: typed }, context) => {
    const code = codeOf(readMoney(`1 ${typed}`)?.currency, context.settled.region)
    if (code === undefined)
      throw new Refusal(
        'invalid',
        `${quoted(typed)} is no currency; write a sign such as $, £ or €, or a code such as CAD`,
      )
    const others = (kept: ShoppingKept): number => (kept.currency === code ? 0 : kept.prices.length)
    const off = others((await shoppingOf(context).read()) ?? NOTHING_KEPT)
    const gone = off === 0 ? '' : `, ${off} in other money taken off ("shopping undo" brings them back)`
    return keep(context, `Prices in ${code}${gone}`, (kept) => ({
      ...kept,
      currency: code,
      prices: others(kept) > 0 ? [] : kept.prices,
    }))
  },
})

const kept = defineAction({
  summary: "This channel's own prices, and what is on hand",
  options: z.strictObject({}),
  run: async (_input, context) =>
    keptReply((await shoppingOf(context).read()) ?? NOTHING_KEPT, 'Kept', context),
})

const { undo, redo } = undoVerbs({
  name: 'shopping list',
  open: shoppingOf,
  reply: (body, context, said) => keptReply(body ?? NOTHING_KEPT, said, context),
})

export default defineVerbs({
  name: 'shopping',
  summary: 'Everything to buy for the plan and what it costs; prices, what is on hand, spares',
  examples: [
    'shopping',
    'shopping list product=varnish coats=3',
    'shopping price latex paint quart price=18.50',
    'shopping have yellow glue 8 oz count=1',
    'shopping spare 10%',
    'shopping currency CAD',
    'shopping kept',
  ],
  verbs: { list, price, have, spare, currency, kept, undo, redo },
  fallback: 'list',
})
