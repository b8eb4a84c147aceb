import { showMoney } from '../core/measure/money.ts'
import type { Context } from './context.ts'
import { codeOf, foreignNote, signOf } from './prices.ts'
import type { Cell, Reply } from './reply.ts'
import type { ShoppingKept } from './shoppingKept.ts'

/** What a channel keeps for its shopping; `said` begins the first line. */
export function keptReply(kept: ShoppingKept, said: string, context: Context): Reply {
  const { prices, have, currency, spare } = kept
  const { settled, reference } = context
  const examples = reference.prices.find(({ region }) => region === settled.region)
  const code = codeOf(currency ?? examples?.currency, settled.region)
  const money = signOf(code, settled.region)
  const isOther = examples !== undefined && codeOf(examples.currency, settled.region) !== code
  return {
    answer: `${said}: ${prices.length} of your own prices, ${have.length} on hand`,
    tables: [
      {
        title: 'Prices, each',
        columns: ['Price', ''],
        rows: prices.map(({ item, cents }): Cell[] => [showMoney(cents, money), item]),
      },
      {
        title: 'On hand',
        columns: ['No', ''],
        rows: have.map(({ item, count }): Cell[] => [count, item]),
      },
    ].filter(({ rows }) => rows.length > 0),
    notes: [
      ...(spare === undefined ? [] : [`${spare} % to spare on sheets, boards and hardware`]),
      ...(isOther ? foreignNote({ foreign: { own: money, examples: examples.currency } }) : []),
    ],
    buttons: [{ label: 'Shopping list', line: 'shopping' }],
    figures: {
      prices: prices.map(({ item, cents }) => ({ item, price: cents / 100 })),
      have: have.map((each) => ({ ...each })),
      spare: spare ?? null,
      currency: code ?? null,
    },
  }
}
