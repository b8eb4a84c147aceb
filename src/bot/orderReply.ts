import type { CutOrder, EasySwap, SawStep } from '../core/cutting/order/cutOrder.ts'
import { type Length, toMillimetres } from '../core/measure/length.ts'
import { labelled } from './cutListReply.ts'
import type { Cell, Figure, Table } from './reply.ts'
import type { Show } from './show.ts'
import type { Marking } from './showCovering.ts'

const TITLES = { sheet: 'Sheets', board: 'Boards', strip: 'Strips, after ripping' } as const

/** The settings in order: what to set, which way to cut, and what comes off. */
export const orderTable = (
  { steps }: CutOrder,
  kind: keyof typeof TITLES,
  { unit }: Show,
  marking: Marking,
): Table => ({
  title: `${TITLES[kind]}: set to nearest tooth (${unit})`,
  columns: ['', 'Set', 'Cut'],
  rows: steps.map((step, index): Cell[] => [
    index + 1,
    marking.mark(step.setting as Length),
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

/** Pairs that are said; of more the list is no help at the saw. */
const MOST_PAIRS = 6

/** Parts that are easily mixed up, in one line. */
export function swapNote(swaps: readonly EasySwap[]): readonly string[] {
  if (swaps.length === 0) return []
  const pairs = swaps.map(({ first, second }) => `${first} and ${second}`)
  const said = pairs.slice(0, MOST_PAIRS).join('; ')
  const more = pairs.length > MOST_PAIRS ? `; and ${pairs.length - MOST_PAIRS} more pairs` : ''
  return [
    swaps.length === 1
      ? `${said} are nearly the same size: mark them as you cut`
      : `nearly the same size, so mark them as you cut: ${said}${more}`,
  ]
}

/** Stock that is a part as it stands. */
export function uncutNote(orders: readonly CutOrder[]): readonly string[] {
  const labels = [...new Set(orders.flatMap(({ uncut }) => uncut.flatMap(({ part }) => part ?? [])))]
  return labels.length === 0 ? [] : [`${labelled(labels)}: no cut, the stock is the part`]
}

/** A saw setting, the mark it is set by, and whether it is a side of a part. */
interface Marked {
  readonly setting: number
  readonly mark: number
  readonly isSide: boolean
}

/** What rounding to the tape does: to a part what its list says, to anything else never more than half a step. */
export const roundingNote = (settings: readonly Marked[], show: Show): readonly string[] => {
  const off = settings.filter(({ setting, mark }) => setting !== mark)
  const half = show.units === 'inch' ? '1/64 in' : '0.25 mm'
  return [
    ...(off.some(({ isSide }) => isSide)
      ? [
          'a side of a part is set by the mark that the list of parts has: down where the part goes into its place',
        ]
      : []),
    ...(off.some(({ isSide }) => !isSide)
      ? [
          `other settings are to the nearest mark, so a part may be up to ${half} over or under; less than a saw holds`,
        ]
      : []),
  ]
}

export const stepFigure = (
  { setting, kind, of, cuts, remaining, waiting }: SawStep,
  { exact }: Marking,
): Figure => ({
  setting: toMillimetres(setting as Length),
  mark: toMillimetres(exact(setting as Length)),
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
  waiting,
})
