import { toMillimetres } from '../core/measure/length.ts'
import { showMoney } from '../core/measure/money.ts'
import { counted } from './cutListReply.ts'
import type { Cell, Figure, Reply } from './reply.ts'
import type { Stocked, ShopStock } from './shopStock.ts'
import type { Show } from './show.ts'

/** The stock list: what there is, what it costs in `money`, and how it is trimmed. */
export function stockReply(stock: ShopStock, said: string, show: Show, money: string | undefined): Reply {
  const { items } = stock
  const rows = items.map(({ label, length, width, onHand, price }): Cell[] => [
    label,
    onHand ?? 'shop',
    `${show.mark(length)} x ${show.mark(width)}`,
    price === undefined ? '-' : showMoney(price, money),
  ])
  return {
    answer: items.length === 0 ? said : `${said}: ${counted(items.length, 'row')}`,
    tables:
      rows.length === 0
        ? []
        : [{ title: `Stock (${show.unit})`, columns: ['', 'No', 'Size', 'Price'], rows }],
    notes: [...items.map((item) => itemNote(item, show)), ...termNotes(stock, show)],
    ...(items.length > 0 ? { buttons: [{ label: 'Layout', line: 'layout' }] } : {}),
    figures: { items: items.map(itemFigure) },
  }
}

const itemNote = ({ label, name, thickness }: Stocked, show: Show): string =>
  `${label}: ${name ?? 'stock'}, ${show.length(thickness, 'mark', true)} thick`

const termNotes = ({ sheetTrim, boardTrim, keepable }: ShopStock, show: Show): readonly string[] => [
  ...(sheetTrim ? [`${show.length(sheetTrim, 'mark', true)} off every edge of a bought sheet`] : []),
  ...(boardTrim ? [`${show.length(boardTrim, 'mark', true)} off one end of every board`] : []),
  ...(keepable ? [`offcuts are kept from ${show.length(keepable)} on`] : []),
]

const itemFigure = (item: Stocked): Figure => ({
  label: item.label,
  kind: item.kind,
  length: toMillimetres(item.length),
  width: toMillimetres(item.width),
  thickness: toMillimetres(item.thickness),
  price: item.price === undefined ? null : item.price / 100,
  onHand: item.onHand ?? null,
})
