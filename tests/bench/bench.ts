import { argv, exit, exitCode, stdout } from 'node:process'

/** A bench: what it measures, and how it is run. It prints its own tables; it returns how many answers were wrong. */
export interface Bench {
  readonly summary: string
  run(words: readonly string[]): Promise<number>
}

interface Entry {
  readonly load: () => Promise<{ readonly bench: Bench }>
  /** The words it is run with when every quick bench is run; left out of that run when undefined. */
  readonly quick?: readonly string[]
}

/** Every bench by name. Add a file beside this one that exports `bench`, and a line here. */
const BENCHES: Readonly<Record<string, Entry>> = {
  answers: {
    load: () => import('./answers.ts'),
    quick: ['--starts', '5', '--times', '50', '--channels', '500'],
  },
  store: { load: () => import('./store.ts'), quick: ['--runs', '3', '--times', '500', '--channels', '2000'] },
  cutting: { load: () => import('./cutting.ts'), quick: ['--seconds', '0.2', '--every', '10'] },
  growth: { load: () => import('./growth.ts'), quick: ['--most', '1000', '--seconds', '0.5'] },
  club: { load: () => import('./club.ts'), quick: ['--seconds', '2'] },
  group: { load: () => import('./group.ts'), quick: ['--times', '5'] },
  pictures: { load: () => import('./pictures.ts'), quick: ['--times', '3'] },
  discord: { load: () => import('./discord.ts'), quick: ['--seconds', '2', '--rate', '50'] },
  slack: { load: () => import('./slack.ts'), quick: ['--seconds', '2', '--rate', '50'] },
  latency: { load: () => import('./latency.ts'), quick: ['--seconds', '1'] },
}

async function runOne(name: string, entry: Entry, words: readonly string[]): Promise<number> {
  const { bench } = await entry.load()
  if (!words.includes('--json')) stdout.write(`\n${name}: ${bench.summary}\n`)
  return bench.run(words)
}

async function runQuick(): Promise<number> {
  let wrong = 0
  for (const [name, entry] of Object.entries(BENCHES))
    if (entry.quick !== undefined) wrong += await runOne(name, entry, entry.quick)
  return wrong
}

async function run([name, ...words]: readonly string[]): Promise<number> {
  if (name === undefined) return runQuick()
  const entry = BENCHES[name]
  if (entry !== undefined) return runOne(name, entry, words)
  stdout.write(`no bench is called "${name}"; there are: ${Object.keys(BENCHES).join(', ')}\n`)
  return 1
}

// A reader that stops early, such as head, ends the bench.
stdout.on('error', () => exit(0))

const wrong = await run(argv.slice(2))
process.exitCode = wrong > 0 ? 1 : exitCode
