import type { LengthLayout, Rectangle, SheetLayout } from '../core/cutting/problem.ts'
import { type Length, toMillimetres } from '../core/measure/length.ts'
import type { LaidGroup, LaidJob } from './layoutJob.ts'
import type { Cell, Figure, Table } from './reply.ts'
import type { Show } from './show.ts'

type SheetGroup = Extract<LaidGroup, { group: { kind: 'sheet' } }>
type LengthGroup = Exclude<LaidGroup, SheetGroup>

export const isSheets = (laid: LaidGroup): laid is SheetGroup => laid.group.kind === 'sheet'

const total = (groups: readonly LaidGroup[]): number => groups.reduce((sum, { pieces }) => sum + pieces, 0)

/** The first line: how much to take, and whether less would do. */
export function layoutAnswer(job: LaidJob): string {
  const said = job.groups.map((laid) =>
    counted(laid.pieces, laid.group.kind === 'sheet' ? 'sheet' : 'board', namesOf(laid)),
  )
  return `Take ${said.join(' and ')}; ${proof(job)}`
}

const counted = (count: number, what: string, names: string): string =>
  `${count} ${what}${count === 1 ? '' : 's'} ${names}`

/** What is taken, by name; `2 of 4x8, 1 of S3` where there are several. */
function namesOf(laid: LaidGroup): string {
  const taken = new Map<string, number>()
  for (const { stock, count } of laid.layouts) taken.set(stock, (taken.get(stock) ?? 0) + count)
  const perBoard = isSheets(laid) ? undefined : laid.group.perBoard
  const names = [...taken].map(([name, count]) => ({
    name,
    count: Math.ceil(count / (perBoard?.get(name) ?? 1)),
  }))
  return names.length === 1
    ? `(${names[0]?.name})`
    : `(${names.map(({ name, count }) => `${count} of ${name}`).join(', ')})`
}

const proof = (job: LaidJob): string =>
  isOptimal(job) ? 'proven, fewer will not do' : `at most ${percent(gapOf(job))} over the proven least`

export const isOptimal = ({ groups }: LaidJob): boolean => groups.every(({ optimal }) => optimal)

/** How far over the proven least, as a part of it. */
export function gapOf({ groups }: LaidJob): number {
  const value = groups.reduce((sum, laid) => sum + laid.value, 0)
  const bound = groups.reduce((sum, laid) => sum + laid.lowerBound, 0)
  return isOptimal({ groups } as LaidJob) || bound === 0 ? 0 : (value - bound) / bound
}

const percent = (part: number): string => `${Math.max(0.1, Math.round(part * 1000) / 10)} %`

/** `2 A, 1 B`: how many of each part, in the order of the list. */
function tally(parts: readonly string[]): string {
  const counts = new Map<string, number>()
  for (const part of parts) counts.set(part, (counts.get(part) ?? 0) + 1)
  return [...counts].map(([part, count]) => `${count} ${part}`).join(', ')
}

/** One row for each way that a sheet, a board or a strip is cut. */
export function layoutTables({ groups }: LaidJob, show: Show): readonly Table[] {
  return groups.map((laid) => {
    if (isSheets(laid)) {
      const rows = laid.layouts.map((layout, index): Cell[] => [
        index + 1,
        layout.count,
        largest(layout.offcuts, show),
        tally(layout.placements.map(({ part }) => part)),
      ])
      return {
        title: `Sheets ${show.length(laid.group.thickness, 'mark', true)} thick`,
        columns: ['', 'No', 'Left', 'Parts'],
        rows,
      }
    }
    const rows = laid.layouts.map(({ count, parts, offcut }, index): Cell[] => [
      index + 1,
      count,
      offcut >= laid.group.problem.keepable ? show.mark(offcut as Length, 'into') : '-',
      tally(parts),
    ])
    const section = `${show.mark(laid.group.thickness, 'mark', true)} x ${show.length(laid.group.width)}`
    return {
      title: `${laid.group.kind === 'strip' ? 'Strips' : 'Boards'} ${section}`,
      columns: ['', 'No', 'Left', 'Parts'],
      rows,
    }
  })
}

function largest(offcuts: readonly Rectangle[], show: Show): string {
  const [first] = [...offcuts].sort((a, b) => b.length * b.width - a.length * a.width)
  return first
    ? `${show.mark(first.length as Length, 'into')} x ${show.mark(first.width as Length, 'into')}`
    : '-'
}

const inMillimetres = (size: number): number => toMillimetres(size as Length)

export function layoutFigures(job: LaidJob): Readonly<Record<string, Figure>> {
  const { groups, milliseconds } = job
  const sheets = groups.filter(isSheets)
  const lengths = groups.filter((laid): laid is LengthGroup => !isSheets(laid))
  const priced = groups.every(({ group }) => group.priced)
  const value = groups.reduce((sum, laid) => sum + laid.value, 0)
  const bound = groups.reduce((sum, laid) => sum + laid.lowerBound, 0)
  return {
    sheets: total(sheets),
    boards: total(lengths),
    cost: priced ? value / 100 : null,
    lowerBound: priced ? bound / 100 : groups.reduce((sum, laid) => sum + leastPieces(laid), 0),
    optimal: isOptimal(job),
    gap: gapOf(job),
    waste: wasteOf(job),
    offcuts: groups.flatMap(offcutFigures),
    sheetLayouts: sheets.flatMap(({ layouts }) => layouts.map(sheetFigure)),
    boardLayouts: lengths.flatMap(({ layouts }) => layouts.map(boardFigure)),
    milliseconds,
  }
}

/** Pieces that no layout can do without: the bound over the dearest piece, and strips over what a board gives. */
function leastPieces(laid: LaidGroup): number {
  const dearest = Math.max(...laid.group.problem.stock.map(({ price }) => price))
  if (dearest === 0) return 0
  const pieces = Math.ceil(laid.lowerBound / dearest - 1e-9)
  return isSheets(laid) ? pieces : Math.ceil(pieces / Math.max(...laid.group.perBoard.values()))
}

/** What is neither a part nor a kept offcut, as a share of what is taken. */
export function wasteOf({ groups }: LaidJob): number {
  let taken = 0
  let used = 0
  for (const laid of groups) {
    const stock = new Map<string, { length: number; width?: number }>(
      laid.group.problem.stock.map((item) => [item.id, item]),
    )
    for (const layout of laid.layouts) {
      const { length = 0, width = 1 } = stock.get(layout.stock) ?? {}
      // Boards count by their length and width, so that they weigh against sheets as material does.
      const across = isSheets(laid) ? 1 : laid.group.thickness
      taken += layout.count * length * (isSheets(laid) ? width : across)
      used += layout.count * usedOf(layout, laid) * across
    }
  }
  return taken === 0 ? 0 : 1 - used / taken
}

function usedOf(layout: SheetLayout | LengthLayout, laid: LaidGroup): number {
  if ('placements' in layout)
    return [...layout.placements, ...layout.offcuts].reduce(
      (sum, { length, width }) => sum + length * width,
      0,
    )
  const sizes = new Map(laid.group.problem.parts.map(({ id, length }) => [id, length]))
  const kept = layout.offcut >= laid.group.problem.keepable ? layout.offcut : 0
  return layout.parts.reduce((sum, part) => sum + (sizes.get(part) ?? 0), kept)
}

function offcutFigures(laid: LaidGroup): readonly Figure[] {
  if (isSheets(laid)) {
    return laid.layouts.flatMap(({ count, offcuts }) =>
      offcuts.map(({ length, width }) => ({
        count,
        length: inMillimetres(length),
        width: inMillimetres(width),
      })),
    )
  }
  const { keepable } = laid.group.problem
  return laid.layouts
    .filter(({ offcut }) => offcut >= keepable)
    .map(({ count, offcut }) => ({ count, length: inMillimetres(offcut), width: null }))
}

const rectangle = ({ x, y, length, width }: Rectangle) => ({
  x: inMillimetres(x),
  y: inMillimetres(y),
  length: inMillimetres(length),
  width: inMillimetres(width),
})

const sheetFigure = ({ stock, count, placements, offcuts }: SheetLayout): Figure => ({
  stock,
  count,
  placements: placements.map(({ part, turned, ...place }) => ({ part, turned, ...rectangle(place) })),
  offcuts: offcuts.map(rectangle),
})

const boardFigure = ({ stock, count, parts, offcut }: LengthLayout): Figure => ({
  stock,
  count,
  parts: [...parts],
  offcut: inMillimetres(offcut),
})
