import { afterAll, describe, expect, it } from 'vitest'
import { createNotices, type Spot } from '../../src/platforms/notices.ts'
import { createKeeping } from '../../src/store/keeping.ts'
import { openSqlite } from '../../src/store/sqlite.ts'

const store = await openSqlite(':memory:')
afterAll(() => store.close())

/** A channel that posts and changes slowly, and a clock that only waiting moves on. */
function board() {
  const messages = new Map<string, string>()
  let time = Date.UTC(2026, 2, 6, 18)
  let busy = 0
  let most = 0
  const slowly = async (work: () => void) => {
    busy += 1
    most = Math.max(most, busy)
    await new Promise((resolve) => setImmediate(resolve))
    work()
    busy -= 1
  }
  const process = () =>
    createNotices({
      keeping: createKeeping(store, 'chat', () => new Date(time)),
      now: () => new Date(time),
      pause: async (milliseconds) => {
        time += milliseconds
        await new Promise((resolve) => setImmediate(resolve))
      },
    })
  const saying = (text: string): Spot => ({
    post: async () => {
      const id = `m${messages.size + 1}`
      await slowly(() => messages.set(id, text))
      return id
    },
    change: async (id) => {
      if (!messages.has(id)) return undefined
      await slowly(() => messages.set(id, text))
      return id
    },
  })
  return { messages, process, saying, most: () => most }
}

describe('a standing notice', () => {
  it('is posted once and changed from then on, over a restart too', async () => {
    const { messages, process, saying } = board()
    expect(await process()('once', saying('one'))).toBe('posted')
    expect(await process()('once', saying('two'))).toBe('changed')
    expect(messages).toEqual(new Map([['m1', 'two']]))
    messages.delete('m1')
    expect(await process()('once', saying('three'))).toBe('posted')
    expect([...messages.values()]).toEqual(['three'])
  })

  it('of several processes at once is one message, changed by one of them at a time', async () => {
    const { messages, process, saying, most } = board()
    const processes = [process(), process(), process()]
    const done = await Promise.all(processes.map((put, index) => put('many', saying(`${index}`))))
    expect(done.toSorted()).toEqual(['changed', 'changed', 'posted'])
    expect(messages.size).toBe(1)
    expect(most()).toBe(1)
  })

  it('that is overtaken while it waits is passed over; the last one stands', async () => {
    const { messages, process, saying } = board()
    const put = process()
    const done = await Promise.all(['a', 'b', 'c', 'd'].map((text) => put('busy', saying(text))))
    expect(done.at(-1)).not.toBe('overtaken')
    expect(done.slice(1, -1)).toEqual(['overtaken', 'overtaken'])
    expect([...messages.values()]).toEqual(['d'])
  })

  it('that could not be put up is put up the next time, and its failure comes through', async () => {
    const { messages, process, saying } = board()
    const put = process()
    const fails: Spot = { ...saying('x'), post: () => Promise.reject(new Error('forbidden')) }
    await expect(put('failed', fails)).rejects.toThrow('forbidden')
    expect(await put('failed', saying('y'))).toBe('posted')
    expect([...messages.values()]).toEqual(['y'])
  })

  it('whose process died half way is taken over', async () => {
    const { process, saying, messages } = board()
    const stuck: Spot = { ...saying('x'), post: () => new Promise<string>(() => undefined) }
    void process()('died', stuck)
    await new Promise((resolve) => setTimeout(resolve, 20))
    expect(await process()('died', saying('y'))).toBe('posted')
    expect([...messages.values()]).toEqual(['y'])
  })
})
