/** Work that waits its turn, first come first served within a channel, channels taking turns. */
export interface FairQueue {
  /** Runs `work` when it is its turn. Undefined, at once, when `bound` pieces of work wait already. */
  readonly add: <Result>(channel: string, work: () => Promise<Result>) => Promise<Result> | undefined
}

/** At most `running` at once and `bound` waiting. */
export function createFairQueue(running: number, bound: number): FairQueue {
  const waiting = new Map<string, (() => Promise<void>)[]>()
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

  return {
    add: (channel, work) => {
      if (free === 0 && queued >= bound) return undefined
      return new Promise((resolve, reject) => {
        const start = () => work().then(resolve, reject)
        waiting.set(channel, [...(waiting.get(channel) ?? []), start])
        queued += 1
        next()
      })
    },
  }
}
