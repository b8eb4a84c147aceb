/** What a column of a pasted table holds. */
export type Column = 'label' | 'count' | 'length' | 'width' | 'thickness' | 'size' | 'material'

/** A heading: which column it names, and the unit it gives for bare numbers. */
export interface Heading {
  readonly column: Column | undefined
  readonly unit: string
  readonly text: string
}

const HEADINGS: Readonly<Record<Column, RegExp>> = {
  label: /^(?:part|parts|label|name|item|description|id|piece|component)$/iu,
  count: /^(?:qty|quantity|count|number|no|nos|pcs|pieces|how many|copies|#)$/iu,
  length: /^(?:length|long|l|height|grain)$/iu,
  width: /^(?:width|wide|w|depth)$/iu,
  thickness: /^(?:thickness|thick|thk|t)$/iu,
  size: /^(?:size|dimensions?|dims?)$/iu,
  material: /^(?:material|stock|wood|sheet|species|from)$/iu,
}

const UNIT = /[([\s]*(mm|cm|millimet(?:re|er)s?|inch(?:es)?|in|ft|feet|")[)\]\s.]*$/iu

const readHeading = (cell: string): Heading => {
  const unit = UNIT.exec(cell)?.[1] ?? ''
  const name = (unit === '' ? cell : cell.replace(UNIT, '')).trim().replace(/[.:]$/u, '')
  const found = (Object.keys(HEADINGS) as Column[]).find((column) => HEADINGS[column].test(name))
  return { column: found, unit: unit.startsWith('mill') ? 'mm' : unit, text: cell }
}

/**
 * Cells of one row. A cell may be quoted, with quotes doubled inside; a lone inch mark (24") is part of its cell.
 * The rows of a pasted list are single lines, so that a quoted cell never runs over two.
 */
export function splitRow(line: string, separator: string): string[] {
  const cell = new RegExp(
    String.raw`[^\S\t]*(?:"((?:[^"]|"")*)"\s*|([^${separator}]*))(?:${separator}|$)`,
    'uy',
  )
  const cells: string[] = []
  while (cell.lastIndex < line.length || cells.length === 0) {
    const [, quoted, bare] = cell.exec(line) ?? []
    if (quoted === undefined && bare === undefined) break
    cells.push((quoted === undefined ? bare! : quoted.replaceAll('""', '"')).trim())
  }
  return cells
}

/** The mark that parts the cells of a table: a tab, a bar, a semicolon, or else a comma. */
export const separatorOf = (line: string): string =>
  line.includes('\t') ? String.raw`\t` : line.includes('|') ? String.raw`\|` : line.includes(';') ? ';' : ','

/** The columns that a first line names; undefined when it is no header: it must name a length or a size. */
export function readHeader(line: string): readonly Heading[] | undefined {
  const headings = splitRow(line, separatorOf(line)).map(readHeading)
  const named = headings.filter(({ column }) => column !== undefined)
  const hasSize = named.some(({ column }) => column === 'length' || column === 'size')
  const columns = new Set(named.map(({ column }) => column))
  return hasSize && named.length > 1 && columns.size === named.length ? headings : undefined
}
