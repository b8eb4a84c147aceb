import type { CutOrder, SawStep } from '../core/cutting/order/cutOrder.ts'
import { type Length, toMillimetres } from '../core/measure/length.ts'
import type { Cell, Figure, Table } from './reply.ts'
import type { Show } from './show.ts'

const TITLES = { sheet: 'Sheets', board: 'Boards', strip: 'Strips, after ripping' } as const

/** The settings in order: what to set, which way to cut, and what comes off. */
export const orderTable = ({ steps }: CutOrder, kind: keyof typeof TITLES, show: Show): Table => ({
  title: `${TITLES[kind]}: set to nearest tooth (${show.unit})`,
  columns: ['', 'Set', 'Cut'],
  rows: steps.map((step, index): Cell[] => [
    index + 1,
    show.mark(step.mark as Length, 'mark', true),
    `${step.kind}: ${gives(step)}`,
  ]),
})

/** Parts that the step finishes, else how many pieces to cut further. */
function gives({ cuts }: SawStep): string {
  const parts = new Map<string, number>()
  for (const part of cuts.flatMap((cut) => cut.parts)) parts.set(part, (parts.get(part) ?? 0) + 1)
  const pieces = cuts.flatMap(({ out }) => out).filter(({ becomes }) => becomes === 'piece').length
  const said = [...parts].map(([part, count]) => `${count} ${part}`)
  return [...said, ...(said.length === 0 && pieces > 0 ? [`${pieces} to cut on`] : [])].join(', ') || 'edge'
}

export const stepFigure = ({ setting, mark, kind, of, cuts, remaining }: SawStep): Figure => ({
  setting: toMillimetres(setting as Length),
  mark: toMillimetres(mark as Length),
  kind,
  of,
  cuts: cuts.length,
  parts: cuts.flatMap(({ parts }) => parts),
  narrow: cuts.some(({ narrow }) => narrow !== undefined),
  remaining: remaining.map(({ length, width, count }) => ({
    length: toMillimetres(length as Length),
    width: toMillimetres(width as Length),
    count,
  })),
})
