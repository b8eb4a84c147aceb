import { fileURLToPath } from 'node:url'
import { Tinypool } from 'tinypool'
import type { Drawable } from '../drawing/drawing.ts'
import { remember } from './remember.ts'

export interface PainterSettings {
  /** Pictures painted at once. */
  readonly threads: number
  /** The module that a thread runs; the painter of the project when left out. */
  readonly start?: URL | undefined
}

/** Draws and paints pictures away from the thread that answers. */
export interface Painter {
  /** A picture as a PNG. Rejects where it cannot be drawn or painted, or after `close`. */
  readonly paint: (picture: Drawable) => Promise<Uint8Array>
  readonly close: () => Promise<void>
}

/** A thread that has had nothing to paint for so long is let go with its memory. */
const IDLE_MILLISECONDS = 60_000

/** About three hundred pictures. */
const BYTES_REMEMBERED = 8_000_000

/** A painter with threads that start with the first picture: a bot that never shows one never pays for them. */
export function createPainter({ threads, start }: PainterSettings): Painter {
  let pool: Tinypool | undefined
  let isClosed = false
  const workers = (): Tinypool => {
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
  const paint = async (picture: string): Promise<Uint8Array> => {
    const painted: Uint8Array = await workers().run(picture, { name: 'work' })
    return painted
  }
  const remembered = remember(paint, BYTES_REMEMBERED)
  return {
    paint: async (picture) => {
      if (isClosed) throw new Error('the painter is closed')
      return remembered(JSON.stringify(picture))
    },
    close: async () => {
      isClosed = true
      await pool?.destroy()
    },
  }
}
