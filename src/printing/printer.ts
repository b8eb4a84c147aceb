import { fileURLToPath } from 'node:url'
import { Tinypool } from 'tinypool'
import type { Handout, Print, Printed } from '../bot/handout/handout.ts'

export interface PrinterSettings {
  /** Documents printed at once. */
  readonly threads: number
  /** The module that a thread runs; the printer of the project when left out. */
  readonly start?: URL | undefined
}

/** Prints documents away from the thread that answers. */
export interface Printer {
  /** Rejects where a document cannot be printed, or after `close`. */
  readonly print: Print
  readonly close: () => Promise<void>
}

/** A thread that has had nothing to print for so long is let go with its memory. */
const IDLE_MILLISECONDS = 60_000

/** A printer with threads that start with the first document: a bot that never prints one never pays for them. */
export function createPrinter({ threads, start }: PrinterSettings): Printer {
  let pool: Tinypool | undefined
  let isClosed = false
  const workers = (): Tinypool => {
    if (isClosed) throw new Error('the printer is closed')
    pool ??= new Tinypool({
      filename: fileURLToPath(start ?? new URL('./start.mjs', import.meta.url)),
      // Not those of the process: a loader named there is of no use to a thread (start.mjs).
      execArgv: [],
      minThreads: 0,
      maxThreads: threads,
      idleTimeout: IDLE_MILLISECONDS,
    })
    return pool
  }
  return {
    print: async (handout: Handout) => {
      const printed: Printed = await workers().run(handout, { name: 'work' })
      return printed
    },
    close: async () => {
      isClosed = true
      await pool?.destroy()
    },
  }
}
