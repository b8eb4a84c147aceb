import type { Length } from '../core/measure/length.ts'
import type { Listed } from './cutList.ts'
import type { Cell, Table } from './reply.ts'
import type { Show } from './show.ts'

/** The list as tables that fit a phone, one for each kind of stock. */
export function listTables(parts: readonly Listed[], show: Show): readonly Table[] {
  const into = (length: Length): Cell => ({ length, purpose: 'into' })
  const sheets = parts.filter(({ from }) => from === 'sheet')
  const lengths = parts.filter(({ from }) => from !== 'sheet')
  return [
    {
      title: `From sheets (${show.unit})`,
      columns: ['', 'No', 'Long', 'Wide'],
      rows: sheets.map(({ label, count, length, width }): Cell[] => [
        label,
        count,
        into(length),
        into(width ?? length),
      ]),
    },
    {
      title: `From boards and strips (${show.unit})`,
      columns: ['', 'No', 'Long', 'Section'],
      rows: lengths.map(({ label, count, length, width, thickness }): Cell[] => [
        label,
        count,
        into(length),
        [thickness, width]
          .map((side) => (side === undefined ? '' : show.mark(side, 'mark', true)))
          .filter((side) => side !== '')
          .join(' x ') || '-',
      ]),
    },
  ].filter(({ rows }) => rows.length > 0)
}
