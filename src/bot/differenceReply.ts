import type { Part } from '../core/plan.ts'
import type { PartChange, PlanDifference } from '../core/plan/difference.ts'
import { toMillimetres } from '../core/measure/length.ts'
import type { Cell, Figure, Table } from './reply.ts'
import type { Show } from './show.ts'

/** What a change of the plan did, as a table that fits a phone: each part that changed, as it was and as it is now. */
export function differenceTables({ parts }: PlanDifference, show: Show): readonly Table[] {
  const rows = parts.flatMap((change) => partRows(change, show))
  if (rows.length === 0) return []
  return [
    {
      title: `Parts that changed (${show.unit})`,
      columns: ['', 'Was', 'Now', 'For'],
      rows,
    },
  ]
}

/** Sides only: how thick the stock is says differenceNotes, once for all that is cut from it. */
const SIDES = ['length', 'width'] as const

function partRows({ label, name, before, after, change }: PartChange, show: Show): readonly Cell[][] {
  if (!before || !after || !change) {
    return [[label, before ? said(before, show) : 'none', after ? said(after, show) : 'none', name]]
  }
  const rows = SIDES.filter((side) => change[side] !== 0).map((side): Cell[] => [
    label,
    { length: before[side], purpose: 'into' },
    { length: after[side], purpose: 'into' },
    side === 'length' ? name : `${name}, wide`,
  ])
  const count: Cell[][] = change.count === 0 ? [] : [[label, `${before.count}x`, `${after.count}x`, name]]
  return [...count, ...rows]
}

/** Stock that got thicker or thinner, one line for all the parts of it. */
export function differenceNotes({ parts }: PlanDifference, show: Show): readonly string[] {
  const labels = new Map<string, string[]>()
  for (const { label, before, after, change } of parts) {
    if (!before || !after || !change || change.thickness === 0) continue
    const line = `now ${show.length(after.thickness, 'mark', true)} thick, not ${show.length(before.thickness, 'mark', true)}`
    labels.set(line, [...(labels.get(line) ?? []), label])
  }
  return [...labels].map(([line, which]) => `${which.join(', ')} ${line}`)
}

const said = ({ count, length }: Part, show: Show): string => `${count}x ${show.mark(length, 'into')}`

/** The first line after a change: what it did to the whole. */
export function differenceAnswer({ parts, sizes }: PlanDifference, show: Show): string {
  if (parts.length === 0 && sizes.length === 0) return 'Nothing changes: every part stays as it is'
  const kinds = parts.length === 1 ? '1 part changes' : `${parts.length} parts change`
  const outside = sizes
    .filter(({ name }) => name.startsWith('outside') || name === 'height' || name.startsWith('inside'))
    .map(({ name, after }) => `${name} now ${show.length(after, 'cover')}`)
  return [kinds, ...outside].join('; ')
}

export const differenceFigures = ({ parts, sizes }: PlanDifference): Readonly<Record<string, Figure>> => ({
  changedParts: parts.map(({ label, name, before, after }) => ({
    label,
    name,
    before: before ? inMillimetres(before) : null,
    after: after ? inMillimetres(after) : null,
  })),
  changedSizes: sizes.map(({ name, before, after }) => ({
    name,
    before: toMillimetres(before),
    after: toMillimetres(after),
  })),
})

const inMillimetres = ({ count, length, width, thickness }: Part): Figure => ({
  count,
  length: toMillimetres(length),
  width: toMillimetres(width),
  thickness: toMillimetres(thickness),
})
