import type { LengthProblem, SheetProblem } from '../../../src/core/cutting/problem.ts'
import { createDraw } from './random.ts'

const INCH = 25_400_000
const EIGHTH = INCH / 8

/** One knock-down box, sizes in eighths of an inch, drawn at random. */
interface Kit {
  readonly name: string
  readonly length: number
  readonly width: number
  readonly height: number
}

const drawKits = (count: number, seed: number): Kit[] => {
  const draw = createDraw(2023 + seed)
  return Array.from({ length: count }, (_, index) => ({
    name: `K${index + 1}`,
    length: 8 * 14 + draw(8 * 22),
    width: 8 * 9 + draw(8 * 13),
    height: 8 * 8 + draw(8 * 16),
  }))
}

/** Side, end, floor, lid and the small stuff of one box: 34 parts from sheets. */
const panelsOf = ({ name, length, width, height }: Kit): SheetProblem['parts'] => {
  const part = (kind: string, long: number, wide: number, count: number, turnable: boolean) => ({
    id: `${name} ${kind}`,
    length: long * EIGHTH,
    width: wide * EIGHTH,
    count,
    turnable,
  })
  return [
    part('side', length, height, 2, false),
    part('end', width + 12, height, 2, false),
    part('floor', length, width, 1, true),
    part('lid', length + 14, width + 14, 1, true),
    part('divider', width, height - 24, 4, true),
    part('tray', Math.round(length / 2), Math.round(width / 2), 2, true),
    part('cleat', width - 8, 12, 8, true),
    part('corner block', 24, 24, 14, true),
  ]
}

const stripsOf = ({ name, length, width, height }: Kit): LengthProblem['parts'] => [
  { id: `${name} side rail`, length: (length + 20) * EIGHTH, count: 4 },
  { id: `${name} end rail`, length: (width + 12) * EIGHTH, count: 4 },
  { id: `${name} stile`, length: (height - 24) * EIGHTH, count: 8 },
]

const sheet = (id: string, length: number, width: number, price: number) => ({
  id,
  length: length * INCH,
  width: width * INCH,
  price,
})

/** A club day: `count` boxes of different sizes from six sheet sizes and four offcuts. */
export function clubSheets(count: number, seed = 1): SheetProblem {
  const offcut = { price: 0, onHand: 1, net: true }
  return {
    parts: drawKits(count, seed).flatMap(panelsOf),
    stock: [
      sheet('4x8', 96, 48, 6200),
      sheet('4x4', 48, 48, 3600),
      sheet('2x8', 96, 24, 3500),
      sheet('2x4', 48, 24, 2000),
      sheet('5x5', 60, 60, 5900),
      sheet('4x10', 120, 48, 8100),
      { ...sheet('offcut 1', 47, 22, 0), ...offcut },
      { ...sheet('offcut 2', 40, 30, 0), ...offcut, onHand: 2 },
      { ...sheet('offcut 3', 60, 15, 0), ...offcut },
      { ...sheet('offcut 4', 33, 19, 0), ...offcut },
    ],
    kerf: EIGHTH,
    trim: INCH / 4,
    keepable: 8 * INCH,
  }
}

/** The strips of the same boxes from four board lengths and two offcuts. */
export function clubLengths(count: number, seed = 1): LengthProblem {
  return {
    parts: drawKits(count, seed).flatMap(stripsOf),
    stock: [
      { id: '6 ft', length: 72 * INCH, price: 480 },
      { id: '8 ft', length: 96 * INCH, price: 620 },
      { id: '10 ft', length: 120 * INCH, price: 800 },
      { id: '12 ft', length: 144 * INCH, price: 960 },
      { id: 'offcut 1', length: 50 * INCH, price: 0, onHand: 3 },
      { id: 'offcut 2', length: 31 * INCH, price: 0, onHand: 5 },
    ],
    kerf: EIGHTH,
    trim: INCH / 4,
    keepable: 12 * INCH,
  }
}
