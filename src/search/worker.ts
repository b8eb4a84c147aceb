import { performance } from 'node:perf_hooks'
import { cutLengths } from '../core/cutting/lengths.ts'
import type { LengthProblem, SheetProblem } from '../core/cutting/problem.ts'
import { cutSheets } from '../core/cutting/sheets.ts'

/** What a worker is asked to do. `stop` is one shared integer: not 0 means stop now. */
export type Task = { readonly seconds: number; readonly stop: SharedArrayBuffer } & (
  | { readonly kind: 'lengths'; readonly problem: LengthProblem }
  | { readonly kind: 'sheets'; readonly problem: SheetProblem }
)

/** Runs one search; the clock is here because the core has none. */
export async function work(task: Task) {
  const start = performance.now()
  const end = start + task.seconds * 1000
  const stop = new Int32Array(task.stop)
  const shouldStop = () => Atomics.load(stop, 0) !== 0 || performance.now() >= end
  const outcome =
    task.kind === 'lengths'
      ? await cutLengths(task.problem, { shouldStop })
      : await cutSheets(task.problem, { shouldStop })
  return { outcome, milliseconds: performance.now() - start }
}
