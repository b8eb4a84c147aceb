import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { execPath, stdout } from 'node:process'
import { parseArgs } from 'node:util'
import type { Search } from '../../src/bot/search.ts'
import { createSearch } from '../../src/search/pool.ts'
import { examples, openRoom, ROOT } from '../room.ts'
import { holdChannels } from './answers/channels.ts'
import type { Bench } from './bench.ts'
import { layTable, median, showTime } from './table.ts'

const OPTIONS = {
  starts: { type: 'string', default: '7' },
  times: { type: 'string', default: '200' },
  channels: { type: 'string', default: '10000' },
} as const

const LINE = 'strips 2x6 rip=1/2in'

/** Milliseconds from the start of the process to the first of its answer. */
function startOnce(data: string): Promise<number> {
  return new Promise((resolve, reject) => {
    const from = performance.now()
    const child = spawn(execPath, ['src/launch.mjs', 'ask', '--data', data, LINE], {
      cwd: ROOT,
    })
    let took = 0
    child.stdout.once('data', () => (took = performance.now() - from))
    child.on('error', reject).on('close', () => resolve(took))
  })
}

async function coldStarts(starts: number): Promise<readonly number[]> {
  const folder = mkdtempSync(join(tmpdir(), 'battenbot-bench-'))
  const times = []
  // The first makes the bundle where it is not there yet.
  await startOnce(folder)
  for (let index = 0; index < starts; index += 1) times.push(await startOnce(folder))
  rmSync(folder, { recursive: true })
  return times
}

interface Quick {
  readonly name: string
  readonly times: readonly number[]
}

/** Every example `times` times over where there is a project; one that starts a search is no quick answer. */
async function quickAnswers(
  times: number,
): Promise<{ quick: readonly Quick[]; searched: readonly string[]; wrong: number }> {
  const pool = createSearch({ threads: 1, queue: 8 })
  let searches = 0
  const counted =
    <Rest extends unknown[], Result>(search: (...rest: Rest) => Result) =>
    (...rest: Rest): Result => {
      searches += 1
      return search(...rest)
    }
  const search: Search = { ...pool, cutLengths: counted(pool.cutLengths), cutSheets: counted(pool.cutSheets) }
  const room = await openRoom({ search, settings: { search: { seconds: 0.05, queue: 8 } } })
  const quick: Quick[] = []
  const searched: string[] = []
  let wrong = 0
  for (const [, line] of examples) {
    await room.ask('project start 17in x 13in height=15in')
    const before = searches
    wrong += (await room.ask(line)).ok ? 0 : 1
    if (searches > before) searched.push(line)
    else quick.push({ name: line, times: await repeat(times, () => room.ask(line)) })
  }
  await room.close()
  return { quick, searched, wrong }
}

async function repeat(times: number, work: () => Promise<unknown>): Promise<readonly number[]> {
  const took = []
  for (let index = 0; index < times; index += 1) {
    const from = performance.now()
    await work()
    took.push(performance.now() - from)
  }
  return took
}

const quantile = (times: readonly number[], part: number): number =>
  times.toSorted((a, b) => a - b)[Math.min(times.length - 1, Math.floor(times.length * part))] ?? 0

const fine = (milliseconds: number): string => `${milliseconds.toFixed(2)} ms`
const megabytes = (bytes: number): string => `${Math.round(bytes / 2 ** 20)} MB`

/** What a person waits for, and what the bot holds while it waits for them. */
export const bench: Bench = {
  summary: 'cold start to the first answer, a warm quick answer, memory with many channels',
  async run(words) {
    const { values } = parseArgs({ args: [...words], options: OPTIONS })
    const cold = await coldStarts(Number(values.starts))
    const { quick, searched, wrong } = await quickAnswers(Number(values.times))
    const warm = quick.flatMap(({ times }) => times)
    const slowest = quick.toSorted((a, b) => quantile(b.times, 0.99) - quantile(a.times, 0.99))[0]
    const held = await holdChannels(Number(values.channels))
    const rows = [
      [
        'cold start to first answer',
        showTime(median(cold)),
        `${showTime(Math.min(...cold))} to ${showTime(Math.max(...cold))}`,
        '700 ms',
      ],
      [
        `quick answer, ${quick.length} examples`,
        fine(median(warm)),
        `p99 ${fine(quantile(warm, 0.99))}`,
        'p99 5 ms',
      ],
      [
        `slowest: ${slowest?.name ?? ''}`,
        fine(median(slowest?.times ?? [])),
        `p99 ${fine(quantile(slowest?.times ?? [], 0.99))}`,
        '',
      ],
      [
        `the bot with ${values.channels} channels`,
        megabytes(held.after),
        `${megabytes(held.before)} before`,
        '150 MB',
      ],
    ]
    stdout.write(`${layTable(['', 'median', 'spread', 'aim under'], rows)}\n`)
    if (searched.length > 0) stdout.write(`left out, for they search: ${searched.join('; ')}\n`)
    return wrong + held.wrong
  },
}
