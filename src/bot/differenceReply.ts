import type { Part } from '../core/plan.ts'
import type { PartChange, PlanDifference } from '../core/plan/difference.ts'
import { type Length, toMillimetres } from '../core/measure/length.ts'
import type { Cell, Figure, Table } from './reply.ts'
import type { Show } from './show.ts'

/** What a change of the plan did, as a table that fits a phone: each part that changed, as it was and as it is now. */
export function differenceTables({ parts }: PlanDifference, show: Show): readonly Table[] {
  if (parts.length === 0) return []
  return [
    {
      title: `Parts that changed (${show.unit})`,
      columns: ['', 'Was', 'Now', 'For'],
      rows: parts.flatMap((change) => partRows(change, show)),
    },
  ]
}

const DIMENSIONS = ['length', 'width', 'thickness'] as const

function partRows({ label, name, before, after, change }: PartChange, show: Show): readonly Cell[][] {
  if (!before || !after || !change) {
    return [[label, before ? said(before, show) : 'none', after ? said(after, show) : 'none', name]]
  }
  const changed = DIMENSIONS.filter((dimension) => change[dimension] !== 0)
  const rows = changed.map((dimension): Cell[] => [
    label,
    cell(before[dimension], dimension),
    cell(after[dimension], dimension),
    dimension === 'length' ? name : `${name}, ${dimension === 'width' ? 'wide' : 'thick'}`,
  ])
  const count: Cell[][] = change.count === 0 ? [] : [[label, `${before.count}x`, `${after.count}x`, name]]
  return [...count, ...rows]
}

const cell = (length: Length, dimension: (typeof DIMENSIONS)[number]): Cell =>
  dimension === 'thickness' ? { length, fine: true } : { length, purpose: 'into' }

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
