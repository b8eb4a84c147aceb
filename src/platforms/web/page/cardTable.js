import { element } from './element.js'

/** @typedef {import('../card.ts').CardTable} CardTable */

/** Columns that fit on a phone held upright. */
const NARROW = 4

/**
 * A table with its first column as headings of the rows. One that is too wide for the screen can be moved, by keyboard too.
 *
 * @param {CardTable} table
 */
export function tableOf({ title, columns, numeric, rows }) {
  const cellClass = (/** @type {number} */ column) => (numeric[column] ? 'number' : undefined)
  const headings = columns.map((text, column) =>
    text === '' ? element('td') : element('th', { scope: 'col', class: cellClass(column) }, [text]),
  )
  const lines = rows.map((row) =>
    element(
      'tr',
      {},
      row.map((text, column) =>
        column === 0 && columns.length > 1
          ? element('th', { scope: 'row', class: cellClass(column) }, [text])
          : element('td', { class: cellClass(column) }, [text]),
      ),
    ),
  )
  const isWide = columns.length > NARROW
  const table = element('table', { 'aria-label': title }, [
    element('thead', {}, [element('tr', {}, headings)]),
    element('tbody', {}, lines),
  ])
  const wide = isWide
    ? { class: 'wide', tabindex: 0, role: 'group', 'aria-label': title ?? 'Table' }
    : { class: 'wide' }
  return element('div', { class: 'table' }, [
    // A caption would be no wider than its table, and break at every word.
    ...(title === undefined ? [] : [element('p', { class: 'title', 'aria-hidden': 'true' }, [title])]),
    element('div', wide, [table]),
  ])
}
