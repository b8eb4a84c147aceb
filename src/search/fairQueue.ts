/** Work that waits its turn, first come first served within a channel, channels taking turns. */
export interface FairQueue {
  /**
   * Runs `work` when it is its turn. Undefined, at once, when too much waits already. Work that still waits when `signal`
   * aborts is taken out, and rejects with the signal's reason.
   */
  readonly add: <Result>(
    channel: string,
    work: () => Promise<Result>,
    signal?: AbortSignal,
  ) => Promise<Result> | undefined
}

/** What may run and wait at once. */
export interface QueueBounds {
  readonly running: number
  readonly waiting: number
  /** Of those that wait, so many at most of one channel, so that none can shut the others out. */
  readonly ofOneChannel: number
}

type Start = () => Promise<void>

/** Keeps to `bounds`; what fails, or is called off, never holds up what comes after it. */
export function createFairQueue({ running, waiting: most, ofOneChannel }: QueueBounds): FairQueue {
  const waiting = new Map<string, Start[]>()
  let free = running
  let queued = 0

  const next = (): void => {
    if (free === 0) return
    const [channel, works] = waiting.entries().next().value ?? []
    const start = works?.shift()
    if (channel === undefined || !works || !start) return
    // Taken out and put back behind the others, so that the next turn is another channel's.
    waiting.delete(channel)
    if (works.length > 0) waiting.set(channel, works)
    queued -= 1
    free -= 1
    void start().finally(() => {
      free += 1
      next()
    })
  }

  const leave = (channel: string, start: Start): boolean => {
    const works = waiting.get(channel) ?? []
    const place = works.indexOf(start)
    if (place < 0) return false
    works.splice(place, 1)
    if (works.length === 0) waiting.delete(channel)
    queued -= 1
    return true
  }

  const isFull = (channel: string): boolean =>
    free === 0 && (queued >= most || (waiting.get(channel)?.length ?? 0) >= ofOneChannel)

  return {
    add: (channel, work, signal) => {
      if (isFull(channel)) return undefined
      return new Promise((resolve, reject) => {
        const callOff = () => {
          if (leave(channel, start)) reject(signal?.reason)
        }
        const start = () => {
          signal?.removeEventListener('abort', callOff)
          return Promise.resolve().then(work).then(resolve, reject)
        }
        waiting.set(channel, [...(waiting.get(channel) ?? []), start])
        queued += 1
        signal?.addEventListener('abort', callOff, { once: true })
        next()
        if (signal?.aborted) callOff()
      })
    },
  }
}
