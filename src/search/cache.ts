/** The most recent answers to problems seen before, so that the cut order is that of the layout just shown. */
export interface Cache<Value> {
  readonly get: (key: string) => Value | undefined
  readonly set: (key: string, value: Value) => void
}

/** Keeps `most` values; the one not asked for longest goes first. */
export function createCache<Value>(most: number): Cache<Value> {
  const values = new Map<string, Value>()
  return {
    get: (key) => {
      const value = values.get(key)
      if (value === undefined) return undefined
      values.delete(key)
      values.set(key, value)
      return value
    },
    set: (key, value) => {
      values.delete(key)
      values.set(key, value)
      const oldest = values.keys().next().value
      if (values.size > most && oldest !== undefined) values.delete(oldest)
    },
  }
}
