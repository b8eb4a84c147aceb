import type { LengthLayout, LengthProblem, SheetLayout, SheetProblem } from '../problem.ts'
import type { Lying, NextId } from './bench.ts'
import { layBlank } from './bench.ts'
import type { Saw } from './blank.ts'
import { readBoard, readWork, trimFirst } from './work.ts'

/** Sheets laid out, with the problem they were laid out for. */
export interface SheetsToCut {
  readonly problem: SheetProblem
  readonly layouts: readonly SheetLayout[]
}

/** Boards laid out, with the problem they were laid out for. */
export interface BoardsToCut {
  readonly problem: LengthProblem
  readonly layouts: readonly LengthLayout[]
}

/** Finds items by name; a name that none has throws. */
const finder = <Item extends { readonly id: string }>(items: readonly Item[]): ((id: string) => Item) => {
  const byName = new Map(items.map((item) => [item.id, item]))
  return (id) => {
    const item = byName.get(id)
    if (item === undefined) throw new RangeError(`a layout names "${id}", which its problem does not have`)
    return item
  }
}

const copies = (count: number): number[] => Array.from({ length: count }, (_, copy) => copy)

/** Every sheet as it comes from the rack, one for each copy of a layout. */
export function laySheets({ problem, layouts }: SheetsToCut, saw: Saw, nextId: NextId): Lying[] {
  const sheetOf = finder(problem.stock)
  return layouts.flatMap((layout, index) => {
    const { length, width, net } = sheetOf(layout.stock)
    const trim = net ? 0 : problem.trim
    const own = readWork(layout.cuts, length - 2 * trim, width - 2 * trim, problem.kerf)
    const work = trimFirst(own, trim)
    const sawn = { x: false, y: false }
    return copies(layout.count).map((copy) =>
      layBlank(saw, nextId, { layout: index, copy, sawn }, { of: 'sheet', work, length, width }),
    )
  })
}

/** Every board as it comes from the rack, one for each copy of a layout. */
export function layBoards({ problem, layouts }: BoardsToCut, saw: Saw, nextId: NextId): Lying[] {
  const boardOf = finder(problem.stock)
  const partOf = finder(problem.parts)
  return layouts.flatMap((layout, index) => {
    const { length } = boardOf(layout.stock)
    const strips = layout.parts.map((part) => ({
      size: partOf(part).length,
      work: { kind: 'part' as const, part },
    }))
    const work = readBoard(strips, problem.trim)
    const sawn = { x: false, y: true }
    return copies(layout.count).map((copy) =>
      layBlank(saw, nextId, { layout: index, copy, sawn }, { of: 'board', work, length, width: 0 }),
    )
  })
}
