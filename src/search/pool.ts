import { fileURLToPath } from 'node:url'
import { Tinypool } from 'tinypool'
import { Refusal } from '../bot/refusal.ts'
import type { Found, Search, SearchTerms } from '../bot/search.ts'
import { createCache } from './cache.ts'
import { createFairQueue } from './fairQueue.ts'
import type { Task } from './worker.ts'

export interface PoolSettings {
  /** Searches at once: one less than the machine has cores keeps one for answering. */
  readonly threads: number
  /** Searches that may wait. */
  readonly queue: number
  /** Told when a thread dies outside a search; the search it ran is rejected by itself. */
  readonly failed?: (error: unknown) => void
}

/** A worker that has had nothing to do for so long is let go with its memory. */
const IDLE_MILLISECONDS = 60_000

/** Layouts that are remembered; a channel asks for its own a few times over. */
const REMEMBERED = 100

type Work = Task extends infer Each ? (Each extends Task ? Omit<Each, 'seconds' | 'stop'> : never) : never

/** Searches in worker threads. Threads start with the first search, so that a bot that never searches never pays. */
export function createSearch({ threads, queue, failed = () => {} }: PoolSettings): Search {
  const waiting = createFairQueue(threads, queue)
  let pool: Tinypool | undefined
  const startWorkers = () =>
    new Tinypool({
      filename: fileURLToPath(new URL('./start.mjs', import.meta.url)),
      // Not those of the process: a loader named there is of no use to a thread (start.mjs).
      execArgv: [],
      minThreads: 0,
      maxThreads: threads,
      idleTimeout: IDLE_MILLISECONDS,
    }).on('error', failed) as Tinypool
  const workers = () => {
    pool ??= startWorkers()
    return pool
  }

  const found = createCache<Found<never>>(REMEMBERED)
  const run = async (work: Work, terms: SearchTerms) => {
    const key = JSON.stringify([work, terms.seconds])
    const known = found.get(key)
    if (known) return known
    const result = await search(work, terms)
    if (!terms.signal.aborted) found.set(key, result)
    return result
  }
  const search = async (work: Work, { channel, seconds, signal }: SearchTerms) => {
    const stop = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT)
    const abort = () => Atomics.store(new Int32Array(stop), 0, 1)
    if (signal.aborted) abort()
    signal.addEventListener('abort', abort, { once: true })
    const turn = waiting.add(channel, () => workers().run({ ...work, seconds, stop }, { name: 'work' }))
    if (turn) return turn.finally(() => signal.removeEventListener('abort', abort))
    throw new Refusal('fault', `${queue} layouts wait already; nothing was lost, ask again in a minute`)
  }

  return {
    cutLengths: (problem, terms) => run({ kind: 'lengths', problem }, terms),
    cutSheets: (problem, terms) => run({ kind: 'sheets', problem }, terms),
    close: async () => {
      await pool?.destroy()
    },
  }
}
