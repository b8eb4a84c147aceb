import type { Cell, Table } from './reply.ts'
import type { Show } from './show.ts'

/** The widest line of a table that does not wrap on a phone held upright. */
export const PHONE_COLUMNS = 28

/** A cell as text in the units of the person who asked. */
export const showCell = (cell: Cell, show: Show): string => {
  if (typeof cell === 'string') return cell
  return typeof cell === 'number' ? String(cell) : show.mark(cell.length, cell.purpose, cell.fine)
}

/**
 * A table as plain text lines, at most `width` columns wide. Columns are set side by side where they fit; where they do
 * not, each row becomes stacked lines of `heading value`, so nothing is ever lost or wrapped.
 */
export function tableLines(table: Table, show: Show, width = PHONE_COLUMNS): readonly string[] {
  const rows = table.rows.map((row) => row.map((cell) => showCell(cell, show)))
  const widths = table.columns.map((heading, column) =>
    Math.max(visible(heading), ...rows.map((row) => visible(row[column] ?? ''))),
  )
  const across = widths.reduce((sum, each) => sum + each, 0) + 2 * (widths.length - 1)
  const title = table.title === undefined ? [] : wrap(table.title, width)
  if (across > width) return [...title, ...rows.flatMap((row) => stack(row, table.columns, width))]
  const numeric = table.columns.map((_, column) => table.rows.every((row) => typeof row[column] !== 'string'))
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, column) => pad(cell, widths[column] ?? 0, numeric[column] ?? false))
      .join('  ')
      .trimEnd()
  return [...title, line(table.columns), widths.map((each) => '-'.repeat(each)).join('  '), ...rows.map(line)]
}

/** One row as lines: the first cell as a heading, then `column: value` each on a line of its own. */
const stack = (row: readonly string[], columns: readonly string[], width: number): readonly string[] =>
  row.flatMap((cell, column) =>
    column === 0
      ? wrap(cell, width)
      : wrap(`${columns[column]} ${cell}`, width - 1).map((line) => ` ${line}`),
  )

/** Breaks at spaces so that no line is over `width`; a single longer word is cut. */
export function wrap(text: string, width: number): readonly string[] {
  const lines: string[] = []
  for (const word of text.split(/\s+/u).filter((part) => part !== '')) {
    const last = lines.at(-1)
    if (last !== undefined && visible(last) + 1 + visible(word) <= width)
      lines[lines.length - 1] = `${last} ${word}`
    else lines.push(...(word.match(new RegExp(`.{1,${width}}`, 'gu')) ?? []))
  }
  return lines
}

const visible = (text: string): number => [...text].length

const pad = (text: string, width: number, right: boolean): string =>
  right ? ' '.repeat(width - visible(text)) + text : text + ' '.repeat(width - visible(text))
