import type { SheetPart, SheetProblem, StockSheet } from '../../../src/core/cutting/problem.ts'
import { clubSheets } from '../cutting/kits.ts'
import { createDraw } from '../cutting/random.ts'

const MILLIMETRE = 1_000_000
const INCH = 25_400_000

/** Draws a whole number: at least `least`, at most `most`. */
type Between = (least: number, most: number) => number

const createBetween = (seed: number): Between => {
  const draw = createDraw(seed)
  return (least, most) => least + draw(most - least + 1)
}

/** A kind of club day: `create` draws its kits by the seed. */
export interface Mix {
  readonly name: string
  readonly create: (kits: number, seed: number) => SheetProblem
}

/** Kind of part, length, width, count, turnable; in one unit. */
type Row = readonly [string, number, number, number, boolean]

const readRows = (rows: readonly Row[], kit: number, unit: number): SheetPart[] =>
  rows.map(([kind, length, width, count, turnable]) => ({
    id: `K${kit + 1} ${kind}`,
    length: length * unit,
    width: width * unit,
    count,
    turnable,
  }))

const repeat = (kits: number, rowsOf: (kit: number) => readonly Row[], unit: number): SheetPart[] =>
  Array.from({ length: kits }, (_, kit) => readRows(rowsOf(kit), kit, unit)).flat()

const METRIC: readonly (readonly [string, number, number, number])[] = [
  ['2440 x 1220', 2440, 1220, 5400],
  ['1220 x 1220', 1220, 1220, 3100],
  ['1220 x 610', 1220, 610, 1750],
  ['2440 x 610', 2440, 610, 2950],
  ['2500 x 1250', 2500, 1250, 5800],
  ['3050 x 1525', 3050, 1525, 8400],
]

/** Six sheet sizes; without prices a square millimetre costs one, as for a person who gave none. */
const metricStock = (priced: boolean): StockSheet[] =>
  METRIC.map(([id, length, width, price]) => ({
    id,
    length: length * MILLIMETRE,
    width: width * MILLIMETRE,
    price: priced ? price : length * width,
  }))

const offcut = (length: number, width: number, onHand: number, unit: number): StockSheet => ({
  id: `offcut ${length} x ${width}`,
  length: length * unit,
  width: width * unit,
  price: 0,
  onHand,
  net: true,
})

/** Boxes that hardly differ: few parts fill a sheet side by side by luck, and nothing small fills the rest. */
function createNearEqual(kits: number, seed: number): SheetProblem {
  const between = createBetween(seed)
  const rowsOf = (): Row[] => {
    const [length, width, height] = [between(585, 615), between(375, 400), between(285, 310)]
    return [
      ['side', length, height, 4, false],
      ['end', width + 24, height, 4, false],
      ['floor', length, width, 2, true],
      ['shelf', length - 30, width - 30, 6, true],
      ['divider', width - 6, height - 40, 12, true],
      ['drawer end', 180 + between(0, 8), 120, 6, true],
    ]
  }
  return {
    parts: repeat(kits, rowsOf, MILLIMETRE),
    stock: metricStock(false),
    kerf: 3 * MILLIMETRE,
    trim: 10 * MILLIMETRE,
    keepable: 200 * MILLIMETRE,
  }
}

/** Nest boxes and drawer sets: hardly a part over a foot and a half, every size another, sixteenths of an inch. */
function createManySmall(kits: number, seed: number): SheetProblem {
  const between = createBetween(seed)
  const rowsOf = (): Row[] => {
    const [length, width, height] = [between(120, 290), between(80, 180), between(40, 130)]
    return [
      ['front', length + 12, height, 4, false],
      ['side', width, height, 8, false],
      ['bottom', length, width, 4, true],
      ['lid', length + 20, width + 14, 1, true],
      ['runner', width - 10, 20 + between(0, 12), 12, true],
      ['stop', between(24, 40), between(12, 24), 5, true],
    ]
  }
  const sixteenth = INCH / 16
  const bought = (length: number, width: number, price: number): StockSheet => ({
    id: `${length} x ${width}`,
    length: length * INCH,
    width: width * INCH,
    price,
  })
  return {
    parts: repeat(kits, rowsOf, sixteenth),
    stock: [
      bought(96, 48, 5499),
      bought(48, 48, 2999),
      bought(48, 24, 1649),
      bought(60, 60, 4799),
      bought(96, 24, 2899),
      bought(30, 60, 2549),
      offcut(46, 31, 1, INCH),
      offcut(23, 23, 4, INCH),
      offcut(70, 9, 2, INCH),
    ],
    kerf: sixteenth * 2,
    trim: 0,
    keepable: 6 * INCH,
  }
}

/** Tables, wardrobes and covers: a few large parts fill a sheet, with some rails and blocks beside. */
function createFewLarge(kits: number, seed: number): SheetProblem {
  const between = createBetween(seed)
  const rowsOf = (): Row[] => {
    const [length, width, height] = [between(700, 1400), between(380, 680), between(450, 900)]
    return [
      ['top', length, width, 1, false],
      ['side', height, width - 20, 2, false],
      ['back', length - 36, height - 50, 1, true],
      ['shelf', length - 40, width - 60, 2, true],
      ['plinth', length - 36, between(70, 100), 2, true],
      ['rail', width - 40, between(50, 70), 4, true],
      ['block', 80, 80, 20, true],
    ]
  }
  return {
    parts: repeat(kits, rowsOf, MILLIMETRE),
    stock: [...metricStock(true), offcut(900, 700, 2, MILLIMETRE), offcut(1200, 300, 3, MILLIMETRE)],
    kerf: 3.2 * MILLIMETRE,
    trim: 8 * MILLIMETRE,
    keepable: 250 * MILLIMETRE,
  }
}

/** Club days that differ in kind, so that no search is fitted to one. */
export const MIXES: readonly Mix[] = [
  { name: 'boxes', create: clubSheets },
  { name: 'near-equal', create: createNearEqual },
  { name: 'many small', create: createManySmall },
  { name: 'few large', create: createFewLarge },
]
