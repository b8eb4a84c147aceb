/** Work that has been acknowledged and is not done yet. Bolt closes without waiting for it. */
export interface UnderWay {
  /** Counts `work` until it settles, and hands it back. */
  readonly add: <Value>(work: Promise<Value>) => Promise<Value>
  /** Resolves when none is left, also of what begins meanwhile. */
  readonly settled: () => Promise<void>
  readonly count: () => number
}

/** Keeps count of work under way. */
export function createUnderWay(): UnderWay {
  const all = new Set<Promise<unknown>>()
  return {
    add: (work) => {
      all.add(work)
      const done = () => all.delete(work)
      work.then(done, done)
      return work
    },
    settled: async () => {
      while (all.size > 0) await Promise.allSettled(all)
    },
    count: () => all.size,
  }
}
