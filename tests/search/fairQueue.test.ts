import { describe, expect, it } from 'vitest'
import { createFairQueue } from '../../src/search/fairQueue.ts'

/** Work that ends when it is told to, and notes when it starts. */
function stage() {
  const started: string[] = []
  const ends = new Map<string, () => void>()
  const work = (name: string) => () =>
    new Promise<string>((resolve) => {
      started.push(name)
      ends.set(name, () => resolve(name))
    })
  const settle = () => new Promise((resolve) => setImmediate(resolve))
  const end = async (name: string) => {
    ends.get(name)?.()
    await settle()
  }
  return { started, work, end }
}

describe('createFairQueue', () => {
  it('lets channels take turns, and a channel wait for itself', async () => {
    const { started, work, end } = stage()
    const queue = createFairQueue(1, 10)
    const results = ['a1', 'a2', 'a3', 'b1', 'b2'].map((name) => queue.add(name[0] ?? '', work(name)))
    for (const name of ['a1', 'a2', 'b1', 'a3', 'b2']) await end(name)
    expect(started).toEqual(['a1', 'a2', 'b1', 'a3', 'b2'])
    expect(await Promise.all(results)).toEqual(['a1', 'a2', 'a3', 'b1', 'b2'])
  })

  it('runs no more at once than it may, and turns away what is over the bound', async () => {
    const { started, work, end } = stage()
    const queue = createFairQueue(2, 1)
    const names = ['1', '2', '3', '4']
    const turns = names.map((name) => queue.add('a', work(name)))
    expect(turns.map((turn) => turn !== undefined)).toEqual([true, true, true, false])
    expect(started).toEqual(['1', '2'])
    await end('1')
    expect(started).toEqual(['1', '2', '3'])
  })

  it('goes on after work that failed', async () => {
    const queue = createFairQueue(1, 5)
    const failed = queue.add('a', () => Promise.reject(new Error('no')))
    const next = queue.add('a', () => Promise.resolve('yes'))
    await expect(failed).rejects.toThrow('no')
    expect(await next).toBe('yes')
  })
})
