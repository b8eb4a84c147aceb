/** A published problem of one stock length, and the fewest pieces of stock that give all its parts. */
export interface CuttingExample {
  readonly name: string
  /** Where the data come from, and whether the optimum was read there or recomputed. */
  readonly source: string
  readonly stock: number
  readonly kerf: number
  /** Length and count. */
  readonly parts: readonly (readonly [number, number])[]
  readonly fewest: number
}

/** Worked examples from textbooks and solver manuals, each in its own whole unit. */
export const cuttingExamples: readonly CuttingExample[] = [
  {
    name: 'rolls of 110',
    source: 'Fourer, Gay and Kernighan, AMPL, file cut.dat; the optimum recomputed here',
    stock: 110,
    kerf: 0,
    parts: [
      [20, 48],
      [45, 35],
      [50, 24],
      [55, 10],
      [75, 8],
    ],
    fewest: 47,
  },
  {
    name: 'rolls of 115',
    source: 'the cutstock sample data of the CPLEX distribution; the optimum recomputed here',
    stock: 115,
    kerf: 0,
    parts: [
      [25, 50],
      [40, 36],
      [50, 24],
      [55, 8],
      [70, 30],
    ],
    fewest: 60,
  },
  {
    name: 'rolls of 100',
    source: 'Chvatal, Linear Programming (1983), chapter 13, page 195; the optimum recomputed here',
    stock: 100,
    kerf: 0,
    parts: [
      [45, 97],
      [36, 610],
      [31, 395],
      [14, 211],
    ],
    fewest: 453,
  },
  {
    name: 'rolls of 100, one width misprinted',
    source:
      "SAS/OR User's Guide, OPTMODEL example 4.5, which prints 35 where Chvatal has 36; the optimum recomputed here",
    stock: 100,
    kerf: 0,
    parts: [
      [45, 97],
      [35, 610],
      [31, 395],
      [14, 211],
    ],
    fewest: 453,
  },
  {
    name: 'rolls of 100, sixteen widths',
    source:
      'JuMP documentation, column generation tutorial, in tenths: integer answer 334 read there, not claimed as the optimum; proven here',
    stock: 1000,
    kerf: 0,
    parts: [
      [750, 189],
      [538, 33],
      [530, 36],
      [510, 41],
      [502, 35],
      [322, 37],
      [308, 44],
      [298, 49],
      [201, 37],
      [162, 36],
      [145, 42],
      [110, 33],
      [86, 47],
      [82, 35],
      [66, 49],
      [51, 42],
    ],
    fewest: 334,
  },
  {
    name: 'bins of 9',
    source:
      'Pedroso and others, Mathematical Optimization: Solving Problems using SCIP and Python, bin packing; the optimum recomputed here',
    stock: 9,
    kerf: 0,
    parts: [
      [2, 4],
      [3, 2],
      [4, 6],
      [5, 6],
      [6, 2],
      [7, 2],
      [8, 2],
    ],
    fewest: 13,
  },
  {
    name: 'bins of 100',
    source: 'the bin packing page of the OR-Tools guide, weights recalled; the optimum recomputed here',
    stock: 100,
    kerf: 0,
    parts: [
      [48, 1],
      [42, 2],
      [36, 3],
      [30, 2],
      [27, 1],
      [24, 1],
      [19, 1],
    ],
    fewest: 4,
  },
  {
    name: '17 ft boards',
    source:
      'Frances, MIE376 lecture 8 (2011), after Winston, Operations Research; the optimum recomputed here',
    stock: 17,
    kerf: 0,
    parts: [
      [3, 25],
      [5, 20],
      [9, 15],
    ],
    fewest: 19,
  },
  {
    name: '25 ft boards',
    source: 'a management science textbook exercise on 25 ft boards; the optimum recomputed here',
    stock: 25,
    kerf: 0,
    parts: [
      [7, 700],
      [9, 1200],
      [10, 300],
    ],
    fewest: 775,
  },
  {
    name: '25 ft boards, more of the longest',
    source: 'the same exercise with 500 of 10 ft; the optimum recomputed here',
    stock: 25,
    kerf: 0,
    parts: [
      [7, 700],
      [9, 1200],
      [10, 500],
    ],
    fewest: 875,
  },
  {
    name: '25 ft boards in thousands',
    source: 'Ragsdale, Spreadsheet Modeling, 25 ft boards; the optimum recomputed here',
    stock: 25,
    kerf: 0,
    parts: [
      [7, 5000],
      [9, 1200],
      [11, 300],
    ],
    fewest: 2167,
  },
  {
    name: '20 ft boards',
    source: 'a textbook exercise on 20 ft boards; the optimum recomputed here',
    stock: 20,
    kerf: 0,
    parts: [
      [3, 50],
      [4, 25],
      [8, 15],
      [10, 70],
    ],
    fewest: 54,
  },
  {
    name: '17 ft boards with a kerf',
    source: 'the 17 ft boards with a kerf of 1/8 in, in eighths; recomputed here',
    stock: 1632,
    kerf: 1,
    parts: [
      [288, 25],
      [480, 20],
      [864, 15],
    ],
    fewest: 21,
  },
  {
    name: '25 ft boards with a kerf',
    source: 'the first 25 ft exercise with a kerf of 1/8 in, in eighths; recomputed here',
    stock: 2400,
    kerf: 1,
    parts: [
      [672, 700],
      [864, 1200],
      [960, 300],
    ],
    fewest: 925,
  },
  {
    name: '25 ft boards in thousands with a kerf',
    source: 'the Ragsdale boards with a kerf of 1/8 in, in eighths; recomputed here',
    stock: 2400,
    kerf: 1,
    parts: [
      [672, 5000],
      [864, 1200],
      [1056, 300],
    ],
    fewest: 2217,
  },
  {
    name: '20 ft boards with a kerf',
    source: 'the 20 ft boards with a kerf of 1/8 in, in eighths; recomputed here',
    stock: 1920,
    kerf: 1,
    parts: [
      [288, 50],
      [384, 25],
      [768, 15],
      [960, 70],
    ],
    fewest: 70,
  },
  {
    name: 'paper mill',
    source:
      'the encyclopedia article "Cutting stock problem", master rolls 5600 wide; area bound 72.7 read there, the optimum recomputed here',
    stock: 5600,
    kerf: 0,
    parts: [
      [1380, 22],
      [1520, 25],
      [1560, 12],
      [1710, 14],
      [1820, 18],
      [1880, 18],
      [1930, 20],
      [2000, 10],
      [2050, 12],
      [2100, 14],
      [2140, 16],
      [2150, 18],
      [2200, 20],
    ],
    fewest: 73,
  },
]
