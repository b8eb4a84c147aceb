import { describe, expect, it } from 'vitest'
import { createCache } from '../../src/search/cache.ts'

describe('createCache', () => {
  it('gives back what it was given, and the newest of two', () => {
    const cache = createCache<number>(2)
    cache.set('a', 1)
    cache.set('a', 2)
    expect(cache.get('a')).toBe(2)
    expect(cache.get('b')).toBeUndefined()
  })

  it('lets go of what was not asked for longest', () => {
    const cache = createCache<number>(2)
    cache.set('a', 1)
    cache.set('b', 2)
    cache.get('a')
    cache.set('c', 3)
    expect(['a', 'b', 'c'].map((key) => cache.get(key))).toEqual([1, undefined, 3])
  })
})
