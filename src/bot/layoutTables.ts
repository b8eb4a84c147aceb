import type { LengthLayout, Rectangle } from '../core/cutting/problem.ts'
import type { Length } from '../core/measure/length.ts'
import { isSheets, type LaidGroup, type LaidJob, type LaidLengths, type LaidSheets } from './laidJob.ts'
import type { Cell, Table } from './reply.ts'
import type { Show } from './show.ts'
import { stockMark, stockSize } from './stockSize.ts'

/** One row for each way that a sheet, a board or a strip is cut. */
export const layoutTables = ({ groups, show }: LaidJob): readonly Table[] =>
  groups.map((laid) => (isSheets(laid) ? sheetTable(laid, show) : lengthTable(laid, show)))

const columnsOf = (laid: LaidGroup): readonly string[] =>
  hasChoice(laid) ? ['', 'No', 'Of', 'Left', 'Parts'] : ['', 'No', 'Left', 'Parts']

/** Which stock a row is of is said only where there is more than one. */
const hasChoice = ({ layouts }: LaidGroup): boolean => new Set(layouts.map(({ stock }) => stock)).size > 1

const rowOf = (
  laid: LaidGroup,
  index: number,
  { stock, count }: { readonly stock: string; readonly count: number },
  left: string,
  parts: readonly string[],
): Cell[] => [index + 1, count, ...(hasChoice(laid) ? [stock] : []), left, tally(parts)]

const sheetTable = (laid: LaidSheets, show: Show): Table => ({
  title: `Sheets ${laid.group.material ? `of ${laid.group.material} ` : ''}${stockSize(laid.group.thickness, show)} thick`,
  columns: columnsOf(laid),
  rows: laid.layouts.map((layout, index) =>
    rowOf(
      laid,
      index,
      layout,
      largest(layout.offcuts, show),
      layout.placements.map(({ part }) => part),
    ),
  ),
})

const lengthTable = (laid: LaidLengths, show: Show): Table => ({
  title: `${laid.group.kind === 'strip' ? 'Strips' : 'Boards'} ${stockMark(laid.group.thickness, show)} x ${stockSize(laid.group.width, show)}`,
  columns: columnsOf(laid),
  rows: laid.layouts.map((layout, index) =>
    rowOf(laid, index, layout, leftOf(layout, laid, show), layout.parts),
  ),
})

const leftOf = ({ offcut }: LengthLayout, { group }: LaidLengths, show: Show): string =>
  offcut >= group.problem.keepable && offcut > 0 ? show.mark(offcut as Length, 'into') : '-'

/** `2 A, 1 B`: how many of each part, in the order in which they first come. */
function tally(parts: readonly string[]): string {
  const counts = new Map<string, number>()
  for (const part of parts) counts.set(part, (counts.get(part) ?? 0) + 1)
  return [...counts].map(([part, count]) => `${count} ${part}`).join(', ')
}

function largest(offcuts: readonly Rectangle[], show: Show): string {
  const [first] = [...offcuts].sort((a, b) => b.length * b.width - a.length * a.width)
  return first
    ? `${show.mark(first.length as Length, 'into')} x ${show.mark(first.width as Length, 'into')}`
    : '-'
}
