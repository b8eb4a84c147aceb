import { type Length, toMillimetres } from '../core/measure/length.ts'
import type { Listed } from './cutList.ts'
import { purposeOf } from './planReply.ts'
import type { Cell, Figure, Purpose, Table } from './reply.ts'
import type { Show } from './show.ts'

/** The list as tables that fit a phone, one for each kind of stock. `asker` is how the reply itself will be shown. */
export function listTables(parts: readonly Listed[], show: Show, asker: Show): readonly Table[] {
  const cell = (length: Length, purpose: Purpose = 'into'): Cell =>
    show.units === asker.units ? { length, purpose } : show.mark(length, purpose)
  const lengths = parts.filter(({ from }) => from !== 'sheet')
  const kinds = sheetKinds(parts.filter(({ from }) => from === 'sheet'))
  return [
    ...kinds.map((sheets) => ({
      title: `From ${kinds.length === 1 ? 'sheets' : kindName(sheets[0], show)} (${show.unit})`,
      columns: ['', 'No', 'Long', 'Wide'],
      rows: sheets.map(({ label, count, length, width }): Cell[] => [
        label,
        count,
        cell(length),
        cell(width ?? length),
      ]),
    })),
    {
      title: `From boards and strips (${show.unit})`,
      columns: ['', 'No', 'Long', 'Section'],
      rows: lengths.map(({ label, name = '', count, length, width, thickness }): Cell[] => [
        label,
        count,
        cell(length, purposeOf({ name })),
        [thickness, width]
          .map((side) => (side === undefined ? '' : show.mark(side, 'mark', true)))
          .filter((side) => side !== '')
          .join(' x ') || '-',
      ]),
    },
  ].filter(({ rows }) => rows.length > 0)
}

/** Parts of one thickness and material together, in the order in which they first come. */
function sheetKinds(parts: readonly Listed[]): readonly (readonly Listed[])[] {
  const kinds = new Map<string, Listed[]>()
  for (const part of parts) {
    const key = `${part.thickness} ${part.material}`
    kinds.set(key, [...(kinds.get(key) ?? []), part])
  }
  return [...kinds.values()]
}

const kindName = (part: Listed | undefined, show: Show): string =>
  [part?.thickness === undefined ? '' : show.length(part.thickness, 'mark', true), part?.material ?? 'sheet']
    .filter((word) => word !== '')
    .join(' ')

/** `1 part`, `2 parts`. */
export const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`

/** `A, B and C`, or the first few and how many more. */
export function labelled(labels: readonly string[], most = 12): string {
  const said = labels.slice(0, most)
  const more = labels.length - said.length
  if (more > 0) return `${said.join(', ')} and ${more} more`
  const [last = '', ...others] = [...said].reverse()
  return others.length === 0 ? last : `${others.reverse().join(', ')} and ${last}`
}

/** What to know of some parts: their grain, and whether they wait. */
export function partNotes(parts: readonly Listed[]): readonly string[] {
  const grained = parts.filter(({ grain }) => grain)
  const waiting = parts.filter(({ later }) => later)
  const only = waiting.length === 1 ? waiting[0] : undefined
  const who = only ? `${only.label}${only.name ? ` ${only.name}` : ''}` : labelled(labelsOf(waiting))
  return [
    ...(grained.length > 0 ? [`${labelled(labelsOf(grained))}: grain along the length, not turned`] : []),
    ...(waiting.length > 0 ? [`${who}: cut to fit on the day`] : []),
  ]
}

const labelsOf = (parts: readonly Listed[]): readonly string[] => parts.map(({ label }) => label)

/** One row in millimetres; null where a side is not known. */
export const partFigure = ({ length, width, thickness, ...part }: Listed): Figure => ({
  ...part,
  name: part.name ?? null,
  material: part.material ?? null,
  length: toMillimetres(length),
  width: width === undefined ? null : toMillimetres(width),
  thickness: thickness === undefined ? null : toMillimetres(thickness),
})
