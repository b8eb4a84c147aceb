/** Rows under headings as aligned text: the first column to the left, the others to the right. */
export function layTable(headings: readonly string[], rows: readonly (readonly string[])[]): string {
  const all = [headings, ...rows]
  const widths = headings.map((_, column) => Math.max(...all.map((row) => (row[column] ?? '').length)))
  return all
    .map((row) =>
      row
        .map((cell, column) => (column === 0 ? cell.padEnd(widths[column]!) : cell.padStart(widths[column]!)))
        .join('  '),
    )
    .join('\n')
}

/** The middle value; the lower of the two middle ones for an even count; 0 of none. */
export const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor((values.length - 1) / 2)] ?? 0

/** `12 ms`, `3.4 s`. */
export const showTime = (milliseconds: number): string =>
  milliseconds < 1000 ? `${Math.round(milliseconds)} ms` : `${(milliseconds / 1000).toFixed(1)} s`
