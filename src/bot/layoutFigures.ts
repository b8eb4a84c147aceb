import type { LengthLayout, Rectangle, SheetLayout } from '../core/cutting/problem.ts'
import { type Length, toMillimetres } from '../core/measure/length.ts'
import { isSheets, type LaidGroup, type LaidJob, type LaidLengths } from './laidJob.ts'
import { costOf, gapOf, isOptimal, leastPieces, wasteOf } from './layoutValue.ts'
import type { Figure } from './reply.ts'

/**
 * The layout as numbers. `cost` and `lowerBound` are in units of the currency where every price is known; else the cost is
 * null and the bound counts sheets and boards. Of strips, a layout's `count` is strips; `boards` are whole boards.
 */
export function layoutFigures(job: LaidJob): Readonly<Record<string, Figure>> {
  const { groups, milliseconds } = job
  const sheets = groups.filter(isSheets)
  const lengths = groups.filter((laid): laid is LaidLengths => !isSheets(laid))
  const cost = costOf(job)
  return {
    sheets: total(sheets),
    boards: total(lengths),
    cost: cost ? cost.cost / 100 : null,
    lowerBound: cost ? cost.least / 100 : leastPieces(job),
    optimal: isOptimal(job),
    gap: gapOf(job),
    waste: wasteOf(job),
    offcuts: groups.flatMap(offcutFigures),
    sheetLayouts: sheets.flatMap(({ layouts }) => layouts.map(sheetFigure)),
    boardLayouts: lengths.flatMap(({ group, layouts }) =>
      layouts.map((layout) => boardFigure(layout, group.kind)),
    ),
    milliseconds,
  }
}

const total = (groups: readonly LaidGroup[]): number => groups.reduce((sum, { pieces }) => sum + pieces, 0)

const inMillimetres = (size: number): number => toMillimetres(size as Length)

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
    .filter(({ offcut }) => offcut >= keepable && offcut > 0)
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

const boardFigure = ({ stock, count, parts, offcut }: LengthLayout, of: 'board' | 'strip'): Figure => ({
  stock,
  of,
  count,
  parts: [...parts],
  offcut: inMillimetres(offcut),
})
