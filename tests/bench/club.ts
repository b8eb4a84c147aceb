import { memoryUsage, stdout } from 'node:process'
import { parseArgs } from 'node:util'
import type { Bench } from './bench.ts'
import { MIXES } from './club/mixes.ts'
import { clubLengths } from './cutting/kits.ts'
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

type Measured = Awaited<ReturnType<typeof measure>>

/** Every kind of club day, at once and with time, and the strips of the first. */
async function measureAll(kits: number, seed: number, seconds: number): Promise<Measured[]> {
  const runs: Measured[] = []
  for (const { name, create } of MIXES) {
    const problem = create(kits, seed)
    const parts = countParts(problem.parts)
    runs.push(await measure(`${name}, first answer`, parts, () => answerSheets(problem, 0)))
    runs.push(await measure(`${name}, ${seconds} s`, parts, () => answerSheets(problem, seconds)))
  }
  const lengths = clubLengths(kits, seed)
  const parts = countParts(lengths.parts)
  runs.push(await measure('strips, first answer', parts, () => answerLengths(lengths, 0)))
  runs.push(await measure(`strips, ${seconds} s`, parts, () => answerLengths(lengths, seconds)))
  return runs
}

/** Club days of 30 boxes of different sizes: time, gap to the bound, memory. */
export const bench: Bench = {
  summary:
    'four kinds of club days: 30 boxes of different sizes, about 1000 parts, six sheet sizes; strips from boards',
  async run(words) {
    const options = {
      kits: { type: 'string', default: '30' },
      seed: { type: 'string', default: '1' },
      seconds: { type: 'string', default: '10' },
    } as const
    const { values } = parseArgs({ args: [...words], options })
    const seconds = Number(values.seconds)
    const runs = await measureAll(Number(values.kits), Number(values.seed), seconds)
    const rows = runs.map((run) => run.row)
    stdout.write(`${layTable(HEADINGS, rows)}\n`)
    return runs.filter((run) => run.answer.faults.length > 0).length
  },
}
