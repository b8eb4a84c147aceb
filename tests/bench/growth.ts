import { stdout } from 'node:process'
import { parseArgs } from 'node:util'
import type { LengthProblem, SheetProblem } from '../../src/core/cutting/problem.ts'
import type { Bench } from './bench.ts'
import { createDraw } from './cutting/random.ts'
import type { Answer } from './cutting/solve.ts'
import { answerLengths, answerSheets } from './cutting/solve.ts'
import { ORDER_HEADINGS, orderRows } from './growthOrder.ts'
import { layTable, showTime } from './table.ts'

const INCH = 25_400_000
const SIXTEENTH = INCH / 16
const KERF = INCH / 8

/** `count` parts of `kinds` sizes to the sixteenth of an inch, from boards of 8, 10 and 12 ft. */
function growLengths(count: number, kinds: number): LengthProblem {
  const draw = createDraw(count + kinds)
  return {
    parts: Array.from({ length: kinds }, (_, index) => ({
      id: `P${index + 1}`,
      length: (96 + draw(16 * 50)) * SIXTEENTH,
      count: Math.ceil(count / kinds),
    })),
    stock: [
      { id: '8 ft', length: 96 * INCH, price: 700 },
      { id: '10 ft', length: 120 * INCH, price: 900 },
      { id: '12 ft', length: 144 * INCH, price: 1050 },
    ],
    kerf: KERF,
    trim: INCH / 4,
    keepable: 12 * INCH,
  }
}

/** `count` parts of `kinds` sizes to the sixteenth of an inch, half of them bound to the grain, from 4 x 8 ft sheets. */
function growSheets(count: number, kinds: number): SheetProblem {
  const draw = createDraw(count + kinds)
  return {
    parts: Array.from({ length: kinds }, (_, index) => ({
      id: `P${index + 1}`,
      length: (64 + draw(16 * 32)) * SIXTEENTH,
      width: (48 + draw(16 * 20)) * SIXTEENTH,
      count: Math.ceil(count / kinds),
      turnable: index % 2 === 0,
    })),
    stock: [{ id: '4x8', length: 96 * INCH, width: 48 * INCH, price: 6000 }],
    kerf: KERF,
    trim: INCH / 4,
    keepable: 8 * INCH,
  }
}

const KINDS = { 'few sizes': () => 30, 'all different': (count: number) => count } as const

const describe = (name: string, count: number, first: Answer, best: Answer): string[] => [
  name,
  `${count}`,
  showTime(first.milliseconds),
  `${((100 * (first.value - best.bound)) / best.bound).toFixed(2)} %`,
  showTime(best.milliseconds),
  `${((100 * (best.value - best.bound)) / best.bound).toFixed(2)} %`,
  best.proven ? 'proven' : '',
  `${first.faults.length + best.faults.length}`,
]

const byName = (rows: readonly (readonly string[])[]): readonly (readonly string[])[] =>
  rows.toSorted((a, b) => (a[0]! < b[0]! ? -1 : a[0]! > b[0]! ? 1 : 0))

const HEADINGS = ['parts', 'count', 'first', 'first over bound', 'stopped', 'over bound', '', 'faults']

/** How time and gap grow with the number of parts; the first answer is what a search gives when told to stop at once. */
export const bench: Bench = {
  summary:
    'time and gap to the bound from 100 to 10 000 parts, lengths and sheets, and the time for their cut order',
  async run(words) {
    const options = {
      most: { type: 'string', default: '10000' },
      seconds: { type: 'string', default: '2' },
    } as const
    const { values } = parseArgs({ args: [...words], options })
    const counts = [100, 300, 1000, 3000, 10_000].filter((count) => count <= Number(values.most))
    const seconds = Number(values.seconds)
    await answerLengths(growLengths(60, 10), 0.2)
    await answerSheets(growSheets(60, 10), 0.2)
    const rows: string[][] = []
    const orders: (readonly string[])[] = []
    let wrong = 0
    for (const [kinds, kindsOf] of Object.entries(KINDS))
      for (const count of counts) {
        const lengths = growLengths(count, kindsOf(count))
        const sheets = growSheets(count, kindsOf(count))
        const boards = [await answerLengths(lengths, 0), await answerLengths(lengths, seconds)] as const
        const panels = [await answerSheets(sheets, 0), await answerSheets(sheets, seconds)] as const
        rows.push(
          describe(`lengths, ${kinds}`, count, ...boards),
          describe(`sheets, ${kinds}`, count, ...panels),
        )
        const sawn = await orderRows(kinds, count, lengths, sheets)
        orders.push(...sawn)
        wrong += [...boards, ...panels].filter((answer) => answer.faults.length > 0).length
        wrong += sawn.filter((row) => row.at(-1) !== '0').length
      }
    stdout.write(`${layTable(HEADINGS, byName(rows))}\n\n${layTable(ORDER_HEADINGS, byName(orders))}\n`)
    return wrong
  },
}
