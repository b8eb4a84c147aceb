import { existsSync } from 'node:fs'
import { env, stderr, stdout } from 'node:process'
import { parseArgs } from 'node:util'
import type { Bench } from './bench.ts'
import { readFolder } from './cutting/folder.ts'
import type { Instance } from './cutting/instance.ts'
import { withKerf } from './cutting/kerf.ts'
import { contradictions, printLine, printReport } from './cutting/report.ts'
import type { Result } from './cutting/solve.ts'
import { solve } from './cutting/solve.ts'

const OPTIONS = {
  data: { type: 'string' },
  seconds: { type: 'string', default: '1' },
  set: { type: 'string' },
  name: { type: 'string' },
  kerf: { type: 'string', default: '0' },
  every: { type: 'string', default: '1' },
  json: { type: 'boolean', default: false },
} as const

interface Choice {
  readonly seconds: number
  readonly json: boolean
}

function choose(
  instances: readonly Instance[],
  words: { set?: string; name?: string; every: string },
): Instance[] {
  const every = Math.max(1, Number(words.every))
  return instances
    .filter(({ set }) => words.set === undefined || set.includes(words.set))
    .filter(({ name }) => words.name === undefined || name.includes(words.name))
    .filter((_, index) => index % every === 0)
}

/** One instance of each kind is solved before the clock counts, so that the engine's code is warm. */
async function warmUp(instances: readonly Instance[]): Promise<void> {
  for (const kind of ['lengths', 'sheets', 'most'] as const) {
    const first = instances.find((instance) => instance.kind === kind)
    if (first !== undefined) await solve(first, 0.2)
  }
}

async function solveAll(instances: readonly Instance[], { seconds, json }: Choice): Promise<Result[]> {
  const results: Result[] = []
  for (const instance of instances) {
    const solved = await solve(instance, seconds)
    const result = { ...solved, faults: [...solved.faults, ...contradictions(solved)] }
    if (json) printLine(result)
    results.push(result)
  }
  return results
}

/** Published instances against their known optima, every layout verified. */
export const bench: Bench = {
  summary: 'published instances beside their known optima (pieces, cost or value), every layout verified',
  async run(words) {
    const { values } = parseArgs({ args: [...words], options: OPTIONS })
    const folder = values.data ?? env.BATTEN_CUTTING_DATA
    if (folder === undefined || !existsSync(folder)) {
      const lines = values.json ? stderr : stdout
      lines.write('skipped: no folder of instances (give --data FOLDER or set BATTEN_CUTTING_DATA)\n')
      return 0
    }
    const kerf = Number(values.kerf)
    const instances = choose(readFolder(folder), values).map((instance) => withKerf(instance, kerf))
    await warmUp(instances)
    const results = await solveAll(instances, { seconds: Number(values.seconds), json: values.json })
    if (!values.json && results.length > 0) printReport(results)
    return results.filter((result) => result.faults.length > 0).length
  },
}
