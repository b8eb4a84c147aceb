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
  return { started, work, end, settle }
}

describe('createFairQueue', () => {
  it('lets channels take turns, and a channel wait for itself', async () => {
    const { started, work, end, settle } = stage()
    const queue = createFairQueue({ running: 1, waiting: 10, ofOneChannel: 10 })
    const results = ['a1', 'a2', 'a3', 'b1', 'b2'].map((name) => queue.add(name[0] ?? '', work(name)))
    await settle()
    for (const name of ['a1', 'a2', 'b1', 'a3', 'b2']) await end(name)
    expect(started).toEqual(['a1', 'a2', 'b1', 'a3', 'b2'])
    expect(await Promise.all(results)).toEqual(['a1', 'a2', 'a3', 'b1', 'b2'])
  })

  it('runs no more at once than it may, and turns away what is over the bound', async () => {
    const { started, work, end, settle } = stage()
    const queue = createFairQueue({ running: 2, waiting: 1, ofOneChannel: 1 })
    const names = ['1', '2', '3', '4']
    const turns = names.map((name) => queue.add('a', work(name)))
    await settle()
    expect(turns.map((turn) => turn !== undefined)).toEqual([true, true, true, false])
    expect(started).toEqual(['1', '2'])
    await end('1')
    expect(started).toEqual(['1', '2', '3'])
  })

  it('keeps room for other channels when one fills its share', async () => {
    const { work } = stage()
    const queue = createFairQueue({ running: 1, waiting: 4, ofOneChannel: 2 })
    const turns = ['a1', 'a2', 'a3', 'a4', 'b1', 'b2', 'c1'].map((name) =>
      queue.add(name[0] ?? '', work(name)),
    )
    expect(turns.map((turn) => turn !== undefined)).toEqual([true, true, true, false, true, true, false])
  })

  it('goes on after work that failed, or that could not even start', async () => {
    const queue = createFairQueue({ running: 1, waiting: 5, ofOneChannel: 5 })
    const failed = queue.add('a', () => Promise.reject(new Error('no')))
    const thrown = queue.add('a', () => {
      throw new Error('never')
    })
    const next = queue.add('a', () => Promise.resolve('yes'))
    await expect(failed).rejects.toThrow('no')
    await expect(thrown).rejects.toThrow('never')
    expect(await next).toBe('yes')
  })

  it('takes out what waits when it is called off, and leaves alone what runs', async () => {
    const { started, work, end, settle } = stage()
    const queue = createFairQueue({ running: 1, waiting: 2, ofOneChannel: 2 })
    const calls = [new AbortController(), new AbortController()] as const
    const first = queue.add('a', work('1'), calls[0].signal)
    const second = queue.add('a', work('2'), calls[1].signal)
    const third = queue.add('a', work('3'))
    for (const call of calls) call.abort(new Error('off'))
    await expect(second).rejects.toThrow('off')
    // The place that it left is free again.
    expect(queue.add('a', work('4'))).toBeDefined()
    await settle()
    for (const name of ['1', '3', '4']) await end(name)
    expect(await Promise.all([first, third])).toEqual(['1', '3'])
    expect(started).toEqual(['1', '3', '4'])
  })

  it('never starts what is called off beforehand, unless a turn is free at once', async () => {
    const { started, work, settle } = stage()
    const queue = createFairQueue({ running: 1, waiting: 2, ofOneChannel: 2 })
    void queue.add('a', work('1'), AbortSignal.abort())
    const late = queue.add('a', work('2'), AbortSignal.abort(new Error('late')))
    await expect(late).rejects.toThrow('late')
    await settle()
    expect(started).toEqual(['1'])
  })
})
