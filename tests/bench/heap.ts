import { memoryUsage } from 'node:process'
import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'

setFlagsFromString('--expose-gc')
const collect = runInNewContext('gc') as () => void

const megabytes = (bytes: number): number => Math.round(bytes / 2 ** 20)

/** What this process holds, in MB: of the machine, and on its heap once all that nobody needs is gone. */
export interface Held {
  readonly resident: number
  readonly heap: number
}

/** Collects what nobody needs, then says what is left. */
export function held(): Held {
  const { rss } = memoryUsage()
  collect()
  return { resident: megabytes(rss), heap: megabytes(memoryUsage().heapUsed) }
}

/** `heap 46 MB before, 50 MB after; resident 204 MB before, 220 MB after`. */
export const heldWords = (before: Held, after: Held): string =>
  `heap in use ${before.heap} MB before, ${after.heap} MB after; resident ${before.resident} MB before, ${after.resident} MB after`
