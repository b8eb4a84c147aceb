import { memoryUsage, stdout } from 'node:process'
import { parseArgs } from 'node:util'
import type { Bench } from './bench.ts'
import { clubLengths, clubSheets } from './cutting/kits.ts'
import type { Answer } from './cutting/solve.ts'
import { answerLengths, answerSheets } from './cutting/solve.ts'
import { layTable, showTime } from './table.ts'

const megabytes = (): number => memoryUsage().rss / 2 ** 20

const countParts = (parts: readonly { readonly count: number }[]): string =>
  `${parts.reduce((total, part) => total + part.count, 0)}`

/** One row: `run` is given its seconds, the memory is what the process holds after it and how much that grew. */
async function measure(
  name: string,
  parts: string,
  run: () => Promise<Answer>,
): Promise<{ row: string[]; answer: Answer }> {
  const before = megabytes()
  const answer = await run()
  const after = megabytes()
  const row = [
    name,
    parts,
    showTime(answer.milliseconds),
    (answer.value / 100).toFixed(2),
    (answer.bound / 100).toFixed(2),
    `${((100 * (answer.value - answer.bound)) / answer.bound).toFixed(2)} %`,
    `${Math.round(after)} MB (+${Math.round(after - before)})`,
    answer.faults.length === 0 ? 'yes' : answer.faults[0]!,
  ]
  return { row, answer }
}

const HEADINGS = ['job', 'parts', 'time', 'cost', 'bound', 'gap', 'memory', 'verified']

/** A club day of 30 boxes of different sizes: time, gap to the bound, memory. */
export const bench: Bench = {
  summary:
    '30 boxes of different sizes, about 1000 parts, six sheet sizes and offcuts; their strips from boards',
  async run(words) {
    const options = {
      kits: { type: 'string', default: '30' },
      seconds: { type: 'string', default: '10' },
    } as const
    const { values } = parseArgs({ args: [...words], options })
    const seconds = Number(values.seconds)
    const [sheets, lengths] = [clubSheets(Number(values.kits)), clubLengths(Number(values.kits))]
    const runs = [
      await measure('sheets, first answer', countParts(sheets.parts), () => answerSheets(sheets, 0)),
      await measure(`sheets, ${seconds} s`, countParts(sheets.parts), () => answerSheets(sheets, seconds)),
      await measure('strips, first answer', countParts(lengths.parts), () => answerLengths(lengths, 0)),
      await measure(`strips, ${seconds} s`, countParts(lengths.parts), () => answerLengths(lengths, seconds)),
    ]
    const rows = runs.map((run) => run.row)
    stdout.write(`${layTable(HEADINGS, rows)}\n`)
    return runs.filter((run) => run.answer.faults.length > 0).length
  },
}
