import { afterAll, describe, expect, it } from 'vitest'
import { createNotices, type Notices, type Spot, type Version } from '../../src/platforms/notices.ts'
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
  let last = 0
  /** Each version is newer than the one before, unless it says which it is. */
  const process = () => {
    const put: Notices = createNotices({
      keeping: createKeeping(store, 'chat', () => new Date(time)),
      now: () => new Date(time),
      pause: async (milliseconds) => {
        time += milliseconds
        await new Promise((resolve) => setImmediate(resolve))
      },
    })
    return (name: string, spot: Spot, version: Version = { revision: ++last }) => put(name, version, spot)
  }
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
    expect(done.filter((each) => each === 'posted')).toHaveLength(1)
    expect([...messages.values()]).toEqual(['2'])
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

  it('that is older than what stands there, or waits, is passed over', async () => {
    const { messages, process, saying } = board()
    const put = process()
    const at = (revision: number) => ({ revision })
    const [first, newest, late] = await Promise.all([
      put('order', saying('1'), at(1)),
      put('order', saying('3'), at(3)),
      put('order', saying('2'), at(2)),
    ])
    expect([first, newest, late]).toEqual(['overtaken', 'posted', 'overtaken'])
    expect(await put('order', saying('2'), at(2))).toBe('overtaken')
    expect(await process()('order', saying('2'), at(2))).toBe('overtaken')
    expect([...messages.values()]).toEqual(['3'])
  })

  it('of what began anew is newer, though its revisions count from one again', async () => {
    const { messages, process, saying } = board()
    const put = process()
    const began = (since: string, revision: number) => ({ since, revision })
    await put('anew', saying('spring'), began('2026-03-06T18:00:00.000Z', 40))
    expect(await put('anew', saying('autumn'), began('2026-09-01T18:00:00.000Z', 2))).toBe('changed')
    expect(await put('anew', saying('spring'), began('2026-03-06T18:00:00.000Z', 41))).toBe('overtaken')
    expect([...messages.values()]).toEqual(['autumn'])
  })

  it('of the version that stands there is put up once more, as it is rendered now', async () => {
    const { messages, process, saying } = board()
    const put = process()
    await put('again', saying('with a name'), { revision: 4 })
    expect(await put('again', saying('without'), { revision: 4 })).toBe('changed')
    expect([...messages.values()]).toEqual(['without'])
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
