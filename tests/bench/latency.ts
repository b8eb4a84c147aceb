import { availableParallelism } from 'node:os'
import { memoryUsage, stdout } from 'node:process'
import { parseArgs } from 'node:util'
import type { Search } from '../../src/bot/search.ts'
import { verifyLengths, verifySheets } from '../../src/core/cutting/verify.ts'
import { createSearch } from '../../src/search/pool.ts'
import { openRoom } from '../room.ts'
import type { Bench } from './bench.ts'
import { clubLengths, clubSheets } from './cutting/kits.ts'
import { layTable, median } from './table.ts'

/** What people ask while somebody else's layout is searched. */
const LINES = [
  'strips 2x6 rip=1/2in',
  'convert 23 7/8in',
  'spacing 36in piece=3 1/2in count=6',
  'diagonal 46in x 29in strip=3 1/2in',
  'project parts',
  'cutlist',
]

const quantile = (times: readonly number[], part: number): number =>
  times.toSorted((a, b) => a - b)[Math.min(times.length - 1, Math.floor(times.length * part))] ?? 0

const fine = (milliseconds: number): string => `${milliseconds.toFixed(2)} ms`

interface Asked {
  readonly times: readonly number[]
  readonly wrong: number
}

/** Asks one line after another, with a breath between two as between people, until `busy` is over. */
async function askWhile(busy: Promise<unknown>): Promise<Asked> {
  const room = await openRoom({ settings: { units: 'inch' } })
  await room.ask('project start 17in x 13in height=15in')
  for (const line of LINES) await room.ask(line)
  let isOver = false
  const over = busy.finally(() => (isOver = true))
  const times: number[] = []
  let wrong = 0
  for (let index = 0; !isOver; index += 1) {
    const from = performance.now()
    const response = await room.ask(LINES[index % LINES.length] ?? '')
    times.push(performance.now() - from)
    if (!response.ok) wrong += 1
    await new Promise((resolve) => setTimeout(resolve, 2))
  }
  await over
  await room.close()
  return { times, wrong }
}

/** A club day of sheets, then its strips; the check of the layouts, which is run when nobody waits for an answer. */
async function searchClub(search: Search, seconds: number, kits: number): Promise<() => number> {
  const terms = { channel: 'club', seconds, signal: new AbortController().signal }
  const [sheets, lengths] = [clubSheets(kits), clubLengths(kits)]
  const panels = (await search.cutSheets(sheets, terms)).outcome
  const strips = (await search.cutLengths(lengths, terms)).outcome
  if (panels.status === 'impossible' || strips.status === 'impossible') return () => 1
  return () => verifySheets(sheets, panels.layouts).length + verifyLengths(lengths, strips.layouts).length
}

/** Whether a layout that is searched holds up the answers of the same process. */
export const bench: Bench = {
  summary: 'quick answers with nothing else to do, and while a club-size layout is searched in a thread',
  async run(words) {
    const options = {
      seconds: { type: 'string', default: '3' },
      kits: { type: 'string', default: '30' },
    } as const
    const { values } = parseArgs({ args: [...words], options })
    const seconds = Number(values.seconds)
    const search = createSearch({ threads: Math.max(1, availableParallelism() - 1), queue: 8 })
    const idle = await askWhile(new Promise((resolve) => setTimeout(resolve, seconds * 1000)))
    const club = searchClub(search, seconds, Number(values.kits))
    const busy = await askWhile(club)
    const faults = (await club)()
    await search.close()
    const row = (name: string, { times }: Asked): string[] => [
      name,
      String(times.length),
      fine(median(times)),
      fine(quantile(times, 0.99)),
      fine(Math.max(...times)),
    ]
    const rows = [row('nothing else', idle), row('a club day is laid out', busy)]
    stdout.write(`${layTable(['while', 'answers', 'median', 'p99 (aim 20 ms)', 'longest'], rows)}\n`)
    stdout.write(`resident ${Math.round(memoryUsage().rss / 2 ** 20)} MB\n`)
    return idle.wrong + busy.wrong + faults
  },
}
