import { createHash } from 'node:crypto'
import { fileURLToPath } from 'node:url'
import { Tinypool } from 'tinypool'
import { Refusal } from '../bot/refusal.ts'
import type { Search, SearchTerms, Terms } from '../bot/search.ts'
import { createCache } from './cache.ts'
import { createFairQueue } from './fairQueue.ts'
import type { Question, SearchTask } from './worker.ts'

export interface PoolSettings {
  /** Searches at once: one less than the machine has cores keeps one for answering. */
  readonly threads: number
  /** Searches that may wait. */
  readonly queue: number
  /** Told when a thread dies outside a search; the search it ran is rejected by itself. */
  readonly failed?: (error: unknown) => void
  /** The module that a thread runs; the search of the project when left out. */
  readonly start?: URL
  /** A thread whose heap outgrows this is ended, and its search with it. */
  readonly megabytes?: number
}

/** A worker that has had nothing to do for so long is let go with its memory. */
const IDLE_MILLISECONDS = 60_000

/** Layouts that are remembered; a channel asks for its own a few times over. */
const REMEMBERED = 50

/** A search of ten thousand parts takes a fifth of it. */
const MEGABYTES = 512

/** How long a search that was told to stop may take to come back before its thread is ended. */
const GRACE_MILLISECONDS = 5000

/** What any search finds. */
interface Answered {
  readonly outcome: { readonly status: string }
}

interface Remembered {
  readonly seconds: number
  readonly found: Answered
}

/** Searches in worker threads. Threads start with the first search, so that a bot that never searches never pays. */
export function createSearch({
  threads,
  queue,
  failed = () => {},
  start,
  megabytes = MEGABYTES,
}: PoolSettings): Search {
  const ofOneChannel = Math.max(1, Math.floor(queue / 2))
  const waiting = createFairQueue({ running: threads, waiting: queue, ofOneChannel })
  let pool: Tinypool | undefined
  const startWorkers = () =>
    new Tinypool({
      filename: fileURLToPath(start ?? new URL('./start.mjs', import.meta.url)),
      // Not those of the process: a loader named there is of no use to a thread (start.mjs).
      execArgv: [],
      minThreads: 0,
      maxThreads: threads,
      idleTimeout: IDLE_MILLISECONDS,
      resourceLimits: { maxOldGenerationSizeMb: megabytes },
    }).on('error', failed) as Tinypool
  const workers = () => {
    pool ??= startWorkers()
    return pool
  }

  /** `work` in its turn; a refusal where there is no room, or no time. */
  const inTurn = async <Result>({ channel, signal }: Terms, work: () => Promise<Result>): Promise<Result> => {
    const turn = waiting.add(channel, work, signal)
    if (!turn) throw tooMany(queue)
    return turn.catch((error: unknown) => {
      throw signal.aborted && (error === signal.reason || isAbort(error)) ? tooLate() : error
    })
  }

  const search = (question: Question, terms: SearchTerms) =>
    inTurn(terms, async () => {
      const { seconds, signal } = terms
      const stop = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT)
      const end = new AbortController()
      const endAfter = (milliseconds: number) => setTimeout(() => end.abort(), milliseconds)
      const timers = [endAfter(seconds * 1000 + 2 * GRACE_MILLISECONDS)]
      const abort = () => {
        Atomics.store(new Int32Array(stop), 0, 1)
        timers.push(endAfter(GRACE_MILLISECONDS))
      }
      if (signal.aborted) abort()
      signal.addEventListener('abort', abort, { once: true })
      const task: SearchTask = { ...question, seconds, stop }
      try {
        return await workers().run(task, { name: 'work', signal: end.signal })
      } finally {
        signal.removeEventListener('abort', abort)
        timers.forEach(clearTimeout)
      }
    })

  const known = createCache<Remembered>(REMEMBERED)
  /** `Result` is what worker.ts answers to this kind of question. */
  const run = async <Result extends Answered>(question: Question, terms: SearchTerms): Promise<Result> => {
    const key = createHash('sha256').update(JSON.stringify(question)).digest('base64')
    const before = known.get(key)
    // What was found with more time is at least as good; so the cut order is that of the layout just shown.
    if (before && (isSettled(before.found) || before.seconds >= terms.seconds)) return before.found as Result
    const found: Result = await search(question, terms)
    if (isSettled(found) || !terms.signal.aborted) known.set(key, { seconds: terms.seconds, found })
    return found
  }

  return {
    cutLengths: (problem, terms) => run({ kind: 'lengths', problem }, terms),
    cutStrips: (problem, terms) => run({ kind: 'strips', problem }, terms),
    cutSheets: (problem, terms) => run({ kind: 'sheets', problem }, terms),
    mostFromSheets: (problem, terms) => run({ kind: 'most from sheets', problem }, terms),
    mostFromLengths: (problem, measure, terms) => run({ kind: 'most from lengths', problem, measure }, terms),
    orderCuts: (job, terms) =>
      inTurn(terms, () => workers().run(job, { name: 'order', signal: terms.signal })),
    close: async () => {
      await pool?.destroy()
    },
  }
}

/** More time would not change it. */
const isSettled = ({ outcome }: Answered): boolean => outcome.status === 'optimal'

const isAbort = (error: unknown): boolean => error instanceof Error && error.name === 'AbortError'

const tooMany = (queue: number): Refusal =>
  new Refusal(
    'fault',
    `too many layouts wait already (${queue} at most, half of them of one channel); nothing was lost, ask again in a minute`,
  )

const tooLate = (): Refusal =>
  new Refusal(
    'fault',
    'this layout did not get done in time: others were before it, or it is too large; nothing was lost, ask again in a minute or with fewer parts',
  )
