import { setImmediate as immediately } from 'node:timers/promises'
import type { Scene } from '../drawing/scene.ts'
import { letGo } from './letGo.ts'
import { paint } from './paint.ts'

/** What a thread runs: a scene as a PNG, and nothing left of what it took to paint it. */
export async function work(scene: Scene): Promise<Uint8Array> {
  const png = paint(scene)
  // What is freed outside of the heap is freed in a turn of its own.
  await immediately()
  letGo()
  await immediately()
  return png
}
