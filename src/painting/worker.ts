import { setImmediate as immediately } from 'node:timers/promises'
import type { Drawable } from '../drawing/drawing.ts'
import { letGo } from './letGo.ts'
import { paint } from './paint.ts'

/** What a thread runs: a picture, written as JSON, as a PNG, and nothing left of what it took to paint it. */
export async function work(picture: string): Promise<Uint8Array> {
  const png = paint(JSON.parse(picture) as Drawable)
  // What is freed outside of the heap is freed in a turn of its own.
  await immediately()
  letGo()
  await immediately()
  return png
}
