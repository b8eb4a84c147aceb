import type { Length } from '../../core/measure/length.ts'
import type { Listed } from '../cutList.ts'
import { partNotes } from '../cutListReply.ts'
import { partPurpose } from '../partPurpose.ts'
import type { Show } from '../show.ts'
import { stockMark } from '../stockSize.ts'
import type { Block, HandoutCell, HandoutColumn, HandoutTable, Section } from './handout.ts'
import { points } from './points.ts'

/** One row of a printed cut list; `whose` only where it is for more than one. */
export interface PrintedPart extends Listed {
  readonly whose?: string
}

/** A box for each piece up to so many; beyond them one for the row, and a tally beside it. */
const MOST_BOXES = 8

/** Every part once: those cut now by what they are cut from, then those that wait for the day. */
export function cutListSection(
  parts: readonly PrintedPart[],
  show: Show,
  more: readonly Block[] = [],
): Section {
  const now = parts.filter(({ later }) => !later)
  const later = parts.filter((part) => part.later)
  return {
    title: 'Cut list',
    blocks: [
      ...stockKinds(now).map((kind) => partTable(`From ${kindWords(kind, show)}`, kind, show)),
      ...(later.length > 0 ? [partTable('Cut to fit on the day, not ahead', later, show)] : []),
      // What waits for the day has a table of its own.
      ...points(partNotes(parts.map((part) => ({ ...part, later: false })))),
      ...more,
    ],
  }
}

/** Parts with a box for each piece; the headings of the boxes and, where there is one, of the last column are `heads`. */
export function partTable(
  title: string,
  parts: readonly PrintedPart[],
  show: Show,
  heads = { boxes: 'Cut', whose: 'Whose' },
): HandoutTable {
  const isForMany = parts.some(({ whose }) => whose !== undefined)
  const isNamed = parts.some(({ name }) => name !== undefined)
  const columns: readonly HandoutColumn[] = [
    { heading: heads.boxes },
    { heading: 'Part', strong: true },
    { heading: 'No.', strong: true, right: true },
    { heading: `Long (${show.unit})`, strong: true, right: true },
    { heading: `Wide (${show.unit})`, strong: true, right: true },
    { heading: 'Thick', right: true },
    ...(isNamed ? [{ heading: 'What' }] : []),
    ...(isForMany ? [{ heading: heads.whose }] : []),
  ]
  const rows = parts.map((part): HandoutCell[] => {
    const purpose = partPurpose(part)
    const side = (length: Length | undefined): string =>
      length === undefined ? '-' : show.mark(length, purpose)
    return [
      { boxes: part.count > MOST_BOXES ? 1 : part.count },
      part.label,
      String(part.count),
      side(part.length),
      part.from === 'sheet' ? side(part.width) : stockMarkOf(part.width, show),
      stockMarkOf(part.thickness, show),
      ...(isNamed ? [part.name ?? ''] : []),
      ...(isForMany ? [part.whose ?? ''] : []),
    ]
  })
  return { block: 'table', title, columns, rows }
}

const stockMarkOf = (length: Length | undefined, show: Show): string =>
  length === undefined ? '-' : stockMark(length, show)

/** Parts from one kind of stock together, in the order in which they first come. */
function stockKinds<Part extends Listed>(parts: readonly Part[]): readonly (readonly Part[])[] {
  const kinds = new Map<string, Part[]>()
  for (const part of parts) {
    const { from, thickness, width, material } = part
    const key = JSON.stringify([from, thickness, from === 'sheet' ? material : width])
    kinds.set(key, [...(kinds.get(key) ?? []), part])
  }
  return [...kinds.values()]
}

function kindWords([part]: readonly Listed[], show: Show): string {
  if (!part) return ''
  const { from, thickness, width, material } = part
  const thick = thickness === undefined ? '' : `${stockMark(thickness, show)} ${show.unit} `
  if (from === 'sheet') return `${thick}${material ?? 'sheet'}`
  if (thickness === undefined || width === undefined) return `${from}s`
  return `${from}s ${stockMark(thickness, show)} x ${stockMark(width, show)} ${show.unit}`
}
