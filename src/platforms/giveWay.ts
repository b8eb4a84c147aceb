import { csvOf } from '../bot/csv.ts'
import { showCell } from '../bot/format.ts'
import type { File, Picture, Reply, Table } from '../bot/reply.ts'
import type { Show } from '../bot/show.ts'

/**
 * The message that says as much of `reply` as `fits`. Gives way in this order: notes, pictures, table rows, tables; of
 * each the last go first. What went is named in a note, and notes and tables are whole in a file. Answer and cautions
 * always stay, so the barest message may still be one that does not fit. `fits` must hold for less where it holds for more.
 */
export function giveWay<Message>(
  reply: Reply,
  render: (reply: Reply) => Message,
  fits: (message: Message) => boolean,
  show: Show,
): Message {
  const whole = render(reply)
  if (fits(whole)) return whole
  const csvFile = once((table) => csv(table, show))
  const holds = (kept: Kept) => fits(render(reduced(reply, kept, csvFile)))
  let kept = wholeOf(reply)
  for (const part of partsOf(reply)) {
    const most = (count: number) => part.keep(kept, count)
    const count = mostThat((each) => holds(most(each)), part.least, part.count)
    kept = most(count ?? part.least)
    if (count !== undefined) break
  }
  return render(reduced(reply, kept, csvFile))
}

/** How many are left of everything that can give way; a table of no rows is left out. */
interface Kept {
  readonly notes: number
  readonly pictures: number
  readonly rows: readonly number[]
}

const wholeOf = ({ notes = [], pictures = [], tables = [] }: Reply): Kept => ({
  notes: notes.length,
  pictures: pictures.length,
  rows: tables.map(({ rows }) => rows.length),
})

/** One thing that gives way, down to the least of it. */
interface Part {
  readonly count: number
  readonly least: number
  readonly keep: (kept: Kept, count: number) => Kept
}

function partsOf({ notes = [], pictures = [], tables = [] }: Reply): readonly Part[] {
  const ofTable =
    (index: number) =>
    (kept: Kept, count: number): Kept => ({ ...kept, rows: kept.rows.with(index, count) })
  const lastFirst = tables.map(({ rows }, index) => ({ rows, index })).toReversed()
  return [
    { count: notes.length, least: 0, keep: (kept, count) => ({ ...kept, notes: count }) },
    { count: pictures.length, least: 0, keep: (kept, count) => ({ ...kept, pictures: count }) },
    ...lastFirst.map(({ rows, index }) => ({
      count: rows.length,
      least: Math.min(1, rows.length),
      keep: ofTable(index),
    })),
    ...lastFirst.map(({ rows, index }) => ({
      count: Math.min(1, rows.length),
      least: 0,
      keep: ofTable(index),
    })),
  ]
}

/**
 * The largest number from `least` to `most` for which `holds`; undefined where it holds for none. Steps that double, then
 * halving: what is rendered to try is never much more than what has room.
 */
function mostThat(holds: (count: number) => boolean, least: number, most: number): number | undefined {
  if (!holds(least)) return undefined
  let low = least
  let step = 1
  while (low + step <= most && holds(low + step)) {
    low += step
    step *= 2
  }
  let high = Math.min(most, low + step - 1)
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if (holds(middle)) low = middle
    else high = middle - 1
  }
  return low
}

function reduced(reply: Reply, kept: Kept, csvFile: (table: Table) => string): Reply {
  const { notes = [], pictures = [], tables = [] } = reply
  const cut = tables
    .map((table, index) => ({ table, left: kept.rows[index] ?? 0, name: tableFile(table, index) }))
    .filter(({ table, left }) => left < table.rows.length)
  const lost = notes.slice(kept.notes)
  return {
    ...reply,
    notes: [
      ...cut.map(({ table, left, name }) => moreRows(table, left, name)),
      ...(lost.length > 0 ? [`${counted(lost.length, 'more note')} in the file ${NOTES}`] : []),
      ...lostPictures(pictures, kept.pictures),
      ...notes.slice(0, kept.notes),
    ],
    pictures: pictures.slice(0, kept.pictures),
    tables: tables.flatMap((table, index) => shortened(table, kept.rows[index] ?? 0)),
    files: [
      ...cut.map(({ table, name }) => ({ name, type: 'text/csv', content: csvFile(table) })),
      ...(lost.length > 0 ? [notesFile(notes)] : []),
      ...(reply.files ?? []),
    ],
  }
}

const NOTES = 'notes.txt'

const notesFile = (notes: readonly string[]): File => ({
  name: NOTES,
  type: 'text/plain',
  content: `${notes.join('\n')}\n`,
})

const shortened = (table: Table, rows: number): readonly Table[] =>
  rows === 0 && table.rows.length > 0 ? [] : [{ ...table, rows: table.rows.slice(0, rows) }]

const moreRows = ({ title, rows }: Table, left: number, file: string): string => {
  const of = title === undefined ? '' : ` of ${shortTitle(title)}`
  return left === 0
    ? `${counted(rows.length, 'row')}${of} in the file ${file}`
    : `${counted(rows.length - left, 'more row')}${of} in the file ${file}`
}

/** A title names the table here; the whole of it stands over the table. */
const shortTitle = (title: string): string =>
  title.length > 40 ? `${title.slice(0, 37).trimEnd()}...` : title

const lostPictures = (pictures: readonly Picture[], left: number): readonly string[] =>
  left === pictures.length ? [] : [`${counted(pictures.length - left, 'picture')} left out: no room here`]

const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`

const tableFile = ({ title = '' }: Table, index: number): string => {
  const name = title
    .toLowerCase()
    .replace(/[^a-z0-9]+/gu, '-')
    .replace(/^-|-$/gu, '')
    .slice(0, 30)
  return `${name || 'table'}-${index + 1}.csv`
}

/** The whole table with its lengths in the units of the person who asked. */
const csv = ({ columns, rows }: Table, show: Show): string =>
  csvOf([
    columns,
    ...rows.map((row) => row.map((cell) => (typeof cell === 'number' ? cell : showCell(cell, show)))),
  ])

/** `make` that makes the file of each table once, however often it is tried how much has room. */
function once(make: (table: Table) => string): (table: Table) => string {
  const made = new Map<Table, string>()
  return (table) => {
    const content = made.get(table) ?? make(table)
    made.set(table, content)
    return content
  }
}
