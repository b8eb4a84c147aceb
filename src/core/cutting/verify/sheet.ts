import type { Placement, Rectangle, SheetLayout, SheetPart, SheetProblem, StockSheet } from '../problem.ts'
import type { Fault } from './fault.ts'
import { faultIn } from './fault.ts'
import { checkCuts } from './leaves.ts'
import { findInseparable } from './separation.ts'
import type { Named } from './spacing.ts'
import { findCrowded, isInside } from './spacing.ts'

/** What may be cut up: the sheet less its trim on four sides. One marked `net` has no trim. */
export function trimSheet(sheet: StockSheet, trim: number): Rectangle {
  const edge = sheet.net ? 0 : trim
  return { x: edge, y: edge, length: sheet.length - 2 * edge, width: sheet.width - 2 * edge }
}

function checkPlacement(placement: Placement, part: SheetPart | undefined, index: number): Fault[] {
  const { part: id, turned } = placement
  if (part === undefined) return [faultIn('demand', index, `there is no part called "${id}"`, id)]
  const length = turned ? part.width : part.length
  const width = turned ? part.length : part.width
  const isRight = placement.length === length && placement.width === width
  return [
    ...(turned && !part.turnable
      ? [faultIn('grain', index, `part "${id}" is turned across its grain`, id)]
      : []),
    ...(isRight
      ? []
      : [
          faultIn(
            'size',
            index,
            `part "${id}" is laid as ${placement.length} x ${placement.width}, not ${length} x ${width}`,
            id,
          ),
        ]),
  ]
}

const nameAll = (layout: SheetLayout): Named[] => [
  ...layout.placements.map((placement) => ({
    ...placement,
    name: `part "${placement.part}"`,
    part: placement.part,
  })),
  ...layout.offcuts.map((offcut) => ({ ...offcut, name: 'an offcut' })),
]

const isWhole = ({ x, y, length, width }: Rectangle): boolean =>
  [x, y, length, width].every(Number.isSafeInteger)

function checkRectangles(named: readonly Named[], whole: Rectangle, kerf: number, index: number): Fault[] {
  const broken = named.filter((rectangle) => !isWhole(rectangle))
  if (broken.length > 0)
    return broken.map(({ name, part }) =>
      faultIn('whole', index, `${name} is not given in whole numbers`, part),
    )
  const outside = named.filter((rectangle) => !isInside(rectangle, whole))
  const stuck = findInseparable(named, kerf)
  const stuckNames = stuck.slice(0, 6).map((rectangle) => rectangle.name)
  return [
    ...outside.map(({ name, part, x, y }) =>
      faultIn('inside', index, `${name} at (${x}, ${y}) sticks out of the trimmed sheet`, part),
    ),
    ...findCrowded(named, kerf, index),
    ...(stuck.length > 0
      ? [faultIn('guillotine', index, `no straight cut parts ${stuckNames.join(', ')}`, stuck[0]?.part)]
      : []),
  ]
}

/** The faults of one sheet: sizes, grain, room, spacing, whether cuts exist, and whether the given cuts say the same. */
export function checkSheet(problem: SheetProblem, layout: SheetLayout, index: number): Fault[] {
  const sheet = problem.stock.find((piece) => piece.id === layout.stock)
  if (sheet === undefined) return []
  if (layout.placements.length === 0) return [faultIn('count', index, 'nothing is cut from it')]
  const whole = trimSheet(sheet, problem.trim)
  const parts = new Map(problem.parts.map((part) => [part.id, part]))
  return [
    ...layout.placements.flatMap((placement) => checkPlacement(placement, parts.get(placement.part), index)),
    ...checkRectangles(nameAll(layout), whole, problem.kerf, index),
    ...checkCuts(problem, layout, whole, index),
  ]
}
