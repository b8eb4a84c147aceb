import type { StockItem } from '../core/cutting/job.ts'
import { type RipStep, ripOrder } from '../core/cutting/ripOrder.ts'
import { type Length, nanometres, toMillimetres } from '../core/measure/length.ts'
import { counted } from './cutListReply.ts'
import { isSheets, type LaidGroup, stripsPerBoard, takenOf } from './laidJob.ts'
import type { Cell, Figure, Table } from './reply.ts'
import type { Show } from './show.ts'

/** The boards of one stock that are ripped into strips of one thickness. */
export interface Rips {
  readonly label: string
  readonly board: StockItem
  readonly strip: Length
  /** Whole boards that are taken, and strips of them that are used. */
  readonly boards: number
  readonly strips: number
  readonly steps: readonly RipStep[]
}

/** How the boards of a group of strips are ripped, stock by stock; none for other groups. */
export function ripsOf(laid: LaidGroup, kerf: Length): readonly Rips[] {
  const { group } = laid
  if (isSheets(laid) || group.kind !== 'strip') return []
  const perBoard = stripsPerBoard(laid)
  const taken = takenOf(laid)
  return group.stock.flatMap((board) => {
    const { label, width } = board
    const strips = laid.layouts
      .filter(({ stock }) => stock === label)
      .reduce((sum, { count }) => sum + count, 0)
    const strip = group.thickness
    const steps = ripOrder({ width, strip, kerf, perBoard: perBoard.get(label) ?? 1, strips })
    return strips > 0 ? [{ label, board, strip, strips, boards: taken.get(label) ?? 0, steps }] : []
  })
}

/** The fence settings of one stock, each with the boards to run at it. */
export const ripTable = ({ label, strip, steps }: Rips, safe: Length, show: Show): Table => ({
  title: `First rip ${label} into strips of ${show.length(strip, 'mark', true)}: fence to nearest tooth (${show.unit}); the strip falls free`,
  columns: ['', 'Set', 'Cut'],
  rows: steps.map(({ setting, boards }, index): Cell[] => [
    index + 1,
    show.mark(setting, 'mark', true),
    `rip ${counted(boards, 'board')}${setting < safe ? ', push block' : ''}`,
  ]),
})

/** The rips as steps of the cut order; `step` is the finest mark of the tape. */
export const ripFigures = ({ steps }: Rips, safe: Length, step: Length): readonly Figure[] =>
  steps.map(({ setting, boards }) => ({
    setting: toMillimetres(setting),
    mark: toMillimetres(nanometres(Math.round(setting / step) * step)),
    kind: 'rip',
    of: 'board',
    cuts: boards,
    parts: [],
    narrow: setting < safe,
    remaining: [],
    waiting: 0,
  }))
