import type { SheetProblem } from '../../src/core/cutting/problem.ts'

/** A published example with its answer. */
export interface SheetExample {
  readonly name: string
  readonly source: string
  readonly problem: SheetProblem
  /** The most worth of parts that one sheet yields. */
  readonly most: number
  /** The same where every part may be turned. */
  readonly mostTurned: number
}

/** Length, width, count, worth. */
type Row = readonly [number, number, number, number]

const example = (length: number, width: number, rows: readonly Row[]): SheetProblem => ({
  parts: rows.map(([partLength, partWidth, count, worth], index) => ({
    id: `part ${index + 1}`,
    length: partLength,
    width: partWidth,
    count,
    turnable: false,
    worth,
  })),
  stock: [{ id: 'sheet', length, width, price: 1 }],
  kerf: 0,
  trim: 0,
  keepable: 1,
})

const UNLIMITED = 1_000_000

/** Examples printed in the literature. The values for turned parts were worked out by an exact integer programme. */
export const SHEET_EXAMPLES: readonly SheetExample[] = [
  {
    name: 'H',
    source:
      'J. C. Herz, Recursive computational procedure for two-dimensional stock cutting, IBM J. Res. Dev. 16 (1972) 462-469',
    problem: example(127, 98, [
      [21, 13, UNLIMITED, 273],
      [36, 17, UNLIMITED, 612],
      [54, 20, UNLIMITED, 1080],
      [24, 27, UNLIMITED, 648],
      [18, 65, UNLIMITED, 1170],
    ]),
    most: 12348,
    mostTurned: 12387,
  },
  {
    name: 'cgcut1',
    source:
      'N. Christofides, C. Whitlock, An algorithm for two-dimensional cutting problems, Oper. Res. 25 (1977) 30-44, problem 1',
    problem: example(15, 10, [
      [8, 4, 2, 66],
      [3, 7, 1, 35],
      [8, 2, 3, 24],
      [3, 4, 5, 17],
      [3, 3, 2, 11],
      [3, 2, 2, 8],
      [2, 1, 1, 2],
    ]),
    most: 244,
    mostTurned: 260,
  },
]
