import { showCell } from '../format.ts'
import type { Cell, Table } from '../reply.ts'
import type { Show } from '../show.ts'
import type { HandoutCell, HandoutColumn, HandoutTable } from './handout.ts'

/** How a table of a reply is set on paper, where headings have room. */
export interface Setting {
  /** What a column is called on paper, by its heading in the chat; `''` is that of the first column without one. */
  readonly headings?: Readonly<Record<string, string>>
  /** A box to tick before each row. */
  readonly boxes?: boolean
  /** Headings of the columns whose numbers are cut or bought by. */
  readonly strong?: readonly string[]
}

/** A table of a reply on paper: the same rows and numbers. */
export function printTable(
  { title, columns, rows }: Table,
  show: Show,
  { headings = {}, boxes = false, strong = [] }: Setting = {},
): HandoutTable {
  const isNumeric = (column: number): boolean =>
    rows.length > 0 && rows.every((row) => typeof row[column] === 'number')
  const set = columns.map(
    (heading, index): HandoutColumn => ({
      heading: headings[heading] ?? heading,
      strong: strong.includes(heading),
      right: isNumeric(index),
    }),
  )
  const box: readonly HandoutCell[] = boxes ? [{ boxes: 1 }] : []
  return {
    block: 'table',
    ...(title === undefined ? {} : { title }),
    columns: [...(boxes ? [{ heading: '' }] : []), ...set],
    rows: rows.map((row: readonly Cell[]) => [...box, ...row.map((cell) => showCell(cell, show))]),
  }
}
