import { mkdtemp, rm, stat } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { memoryUsage, stdout } from 'node:process'
import { parseArgs } from 'node:util'
import type { DocumentKey, Store } from '../../src/bot/state.ts'
import { openSqlite } from '../../src/store/sqlite.ts'
import type { Bench } from './bench.ts'
import { layTable, median } from './table.ts'

const OPTIONS = {
  runs: { type: 'string', default: '5' },
  times: { type: 'string', default: '2000' },
  channels: { type: 'string', default: '10000' },
} as const

const AUTHOR = { user: 'U024BE7LH', command: 'project set length=24in width=18in height=30in' }
const AT = new Date('2026-03-01T12:00:00.000Z')
const keyOf = (id: string): DocumentKey => ({ kind: 'project', platform: 'room', workspace: 'club', id })

/** About as much as a channel keeps of one build. */
const bodyOf = (number: number) => ({
  units: 'inch',
  choices: {
    object: { shape: 'rectangle', length: 609_600_000, width: 457_200_000 },
    height: 762_000_000,
    number,
  },
  parts: Array.from({ length: 8 }, (_, index) => ({
    name: `panel ${index}`,
    length: 609_600_000 + index,
    count: 2,
  })),
})

/** One kind of call, made `times` times in a row; gives false when an answer was not the one expected. */
interface Load {
  readonly name: string
  readonly call: (store: Store, run: string, index: number) => Promise<boolean>
}

const LOADS: readonly Load[] = [
  {
    name: 'first change of a channel',
    call: async (store, run, index) =>
      (await store.change(keyOf(`${run} ${index}`), 0, bodyOf(index), AUTHOR, AT)).status === 'changed',
  },
  {
    name: 'next change of one channel',
    call: async (store, run, index) =>
      (await store.change(keyOf(run), index, bodyOf(index), AUTHOR, AT)).status === 'changed',
  },
  {
    name: 'undo and redo',
    call: async (store, run, index) =>
      (await store[index % 2 ? 'redo' : 'undo'](keyOf(run), AUTHOR, AT)).status === 'changed',
  },
  { name: 'event seen first', call: (store, run, index) => store.once(`${run} ${index}`, AT) },
  {
    name: 'read',
    call: async (store, run, index) => (await store.read(keyOf(`${run} ${index}`))).revision === 1,
  },
]

/** Calls a second, and how many answers were wrong. */
interface Measured {
  readonly rate: number
  readonly wrong: number
}

async function measure(
  load: Load,
  store: Store,
  run: string,
  times: number,
): Promise<{ rate: number; wrong: number }> {
  let wrong = 0
  const start = performance.now()
  for (let index = 0; index < times; index += 1) wrong += (await load.call(store, run, index)) ? 0 : 1
  return { rate: (times * 1000) / (performance.now() - start), wrong }
}

const whole = (count: number): string => Math.round(count).toLocaleString('en')
const megabytes = (bytes: number): string => `${(bytes / 2 ** 20).toFixed(1)} MB`

/** Every load in each run, on one file that grows; prints the median of the runs. */
async function measureRates(store: Store, runs: number, times: number): Promise<number> {
  await measureOnce(store, 'warm', Math.min(times, 500))
  const results: Measured[][] = []
  for (let run = 0; run < runs; run += 1) results.push(await measureOnce(store, `run ${run}`, times))
  const rows = LOADS.map(({ name }, index) => {
    const rates = results.map((result) => result[index]?.rate ?? 0)
    return [name, ...[median(rates), Math.min(...rates), Math.max(...rates)].map(whole)]
  })
  stdout.write(`${layTable(['calls a second, one at a time', 'median', 'slowest run', 'fastest'], rows)}\n`)
  return results.flat().reduce((total, { wrong }) => total + wrong, 0)
}

async function measureOnce(store: Store, run: string, times: number): Promise<Measured[]> {
  const results: Measured[] = []
  for (const load of LOADS) results.push(await measure(load, store, run, times))
  return results
}

/** What a process comes to hold that changes `channels` channels, then reads them all. */
async function measureMemory(file: string, channels: number): Promise<number> {
  const store = await openSqlite(file)
  await settled()
  const before = await settled()
  let wrong = 0
  for (let index = 0; index < channels; index += 1)
    await store.change(keyOf(`channel ${index}`), 0, bodyOf(index), AUTHOR, AT)
  for (let index = 0; index < channels; index += 1)
    wrong += (await store.read(keyOf(`channel ${index}`))).revision === 1 ? 0 : 1
  const after = await settled()
  await store.close()
  const { size } = await stat(file)
  const figures = [
    `${whole(channels)} channels`,
    megabytes(after.rss - before.rss),
    megabytes(after.heapUsed - before.heapUsed),
  ]
  const headings = ['what is held after', 'resident, more', 'heap, more', 'resident', 'file']
  stdout.write(`\n${layTable(headings, [[...figures, megabytes(after.rss), megabytes(size)]])}\n`)
  return wrong
}

/** Memory in use once what is no longer needed is gone, as far as the process may ask for that. */
async function settled() {
  await new Promise((done) => setTimeout(done, 200))
  globalThis.gc?.()
  return memoryUsage()
}

export const bench: Bench = {
  summary: 'changes, undos and reads of the SQLite store a second, and the memory that channels cost',
  async run(words) {
    const { values } = parseArgs({ args: [...words], options: OPTIONS })
    const folder = await mkdtemp(join(tmpdir(), 'battenbot-bench-'))
    try {
      const store = await openSqlite(join(folder, 'rates.sqlite'))
      const wrong = await measureRates(store, Number(values.runs), Number(values.times))
      await store.close()
      return wrong + (await measureMemory(join(folder, 'memory.sqlite'), Number(values.channels)))
    } finally {
      await rm(folder, { recursive: true })
    }
  },
}
