import type { Cell, Table } from './reply.ts'
import type { Show } from './show.ts'

/** The widest line of a table that does not wrap on a phone held upright. */
export const PHONE_COLUMNS = 28

/** A cell as text in the units of the person who asked. */
export const showCell = (cell: Cell, show: Show): string => {
  if (typeof cell === 'string') return cell
  return typeof cell === 'number' ? String(cell) : show.mark(cell.length, cell.purpose, cell.fine)
}

/** A last column of words may be wrapped under itself while it keeps this many columns. */
const LEAST_LAST = 8

/**
 * A table as plain text lines, at most `width` columns wide. Columns are set side by side, closer where they must, with the
 * words of the last one wrapped under each other; where even that does not fit, each row becomes stacked lines of
 * `heading value`, so nothing is ever lost or broken by the phone.
 */
export function tableLines(table: Table, show: Show, width = PHONE_COLUMNS): readonly string[] {
  const rows = table.rows.map((row) => row.map((cell) => showCell(cell, show)))
  const title = table.title === undefined ? [] : wrap(table.title, width)
  const columns = columnsOf(table, rows, width)
  if (!columns) return [...title, ...rows.flatMap((row) => stack(row, table.columns, width))]
  const rule = columns.widths.map((each) => '-'.repeat(each)).join(' '.repeat(columns.gap))
  return [
    ...title,
    ...rowLines(table.columns, columns),
    rule,
    ...rows.flatMap((row) => rowLines(row, columns)),
  ]
}

interface Columns {
  readonly gap: number
  readonly widths: readonly number[]
  /** Numbers are set to the right. */
  readonly numeric: readonly boolean[]
}

/** How the columns can stand side by side; undefined where they cannot. */
function columnsOf(table: Table, rows: readonly (readonly string[])[], width: number): Columns | undefined {
  const numeric = table.columns.map((_, column) => table.rows.every((row) => typeof row[column] !== 'string'))
  const natural = table.columns.map((heading, column) =>
    Math.max(visible(heading), ...rows.map((row) => visible(row[column] ?? ''))),
  )
  const others = natural.slice(0, -1).reduce((sum, each) => sum + each, 0)
  const last = natural.at(-1) ?? 0
  for (const gap of [2, 1]) {
    const room = width - others - gap * (natural.length - 1)
    if (last <= room) return { gap, widths: natural, numeric }
    const wraps = gap === 1 && numeric.at(-1) === false && room >= LEAST_LAST
    if (wraps) return { gap, widths: [...natural.slice(0, -1), room], numeric }
  }
  return undefined
}

/** One row, on more than one line where its last cell is wrapped. */
function rowLines(cells: readonly string[], { gap, widths, numeric }: Columns): readonly string[] {
  const wrapped = wrap(cells.at(-1) ?? '', widths.at(-1) ?? 1)
  const lasts = wrapped.length === 0 ? [''] : wrapped
  return lasts.map((last, line) =>
    [...cells.slice(0, -1).map((cell) => (line === 0 ? cell : '')), last]
      .map((cell, column) => pad(cell, widths[column] ?? 0, numeric[column] ?? false))
      .join(' '.repeat(gap))
      .trimEnd(),
  )
}

/** One row as lines: the first cell as a heading, then `column value` each on a line of its own. */
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
