import { afterAll, describe, expect, it } from 'vitest'
import { createKeeping, dropOldLines } from '../../src/store/keeping.ts'
import { openSqlite } from '../../src/store/sqlite.ts'
import { createVault } from '../../src/store/vault.ts'

const store = await openSqlite(':memory:')
afterAll(() => store.close())

const NOON = new Date('2026-03-01T12:00:00.000Z')
const now = () => NOON

describe('what a platform keeps', () => {
  const keeping = createKeeping(store, 'chat', now)

  it('sees an event once, whatever other platforms call theirs', async () => {
    const seen = await Promise.all(['e1', 'e1', 'e2'].map((event) => keeping.once(event)))
    expect(seen.filter(Boolean)).toHaveLength(2)
    expect(await keeping.once('e1')).toBe(false)
    expect(await createKeeping(store, 'other', now).once('e1')).toBe(true)
  })

  it('recalls a long line by a short name, the same for the same line', async () => {
    const line = `cutlist add ${'3 @ 4 ft; '.repeat(100)}`
    const name = await keeping.keepLine(line, 'ann')
    expect(name).toMatch(/^[\w-]{22}$/u)
    expect(await keeping.keepLine(line, 'ann')).toBe(name)
    expect(await keeping.recallLine(name)).toBe(line)
    expect(await keeping.keepLine(`${line} `, 'ann')).not.toBe(name)
    expect(await keeping.recallLine('nothing-of-the-sort')).toBeUndefined()
    expect(await createKeeping(store, 'other', now).recallLine(name)).toBeUndefined()
  })

  it('drops the lines of a person with the person, and leaves the same line of another', async () => {
    const names = await Promise.all(['ann', 'bob', ''].map((user) => keeping.keepLine('strips', user)))
    expect(new Set(names).size).toBe(3)
    await store.forgetPerson({ platform: 'chat', user: 'ann' })
    expect(await Promise.all(names.map(keeping.recallLine))).toEqual([undefined, 'strips', 'strips'])
  })

  it('keeps a line for ninety days after it was last put on a button, and no longer', async () => {
    const day = (count: number) => new Date(NOON.getTime() + count * 24 * 60 * 60 * 1000)
    let today = NOON
    const own = createKeeping(store, 'days', () => today)
    const [old, renewed] = [await own.keepLine('old', 'ann'), await own.keepLine('renewed', 'ann')]
    today = day(30)
    await own.keepLine('renewed', 'ann')
    expect(await dropOldLines(store, 'days', day(90))).toBe(0)
    expect(await dropOldLines(store, 'days', day(91))).toBe(1)
    expect(await own.recallLine(old)).toBeUndefined()
    expect(await own.recallLine(renewed)).toBe('renewed')
    expect(await dropOldLines(store, 'days', day(121))).toBe(1)
    expect(await own.recallLine(renewed)).toBeUndefined()
  })

  it('remembers a tap as long as its button may stand, and what is up for all for ever', async () => {
    const day = (count: number) => new Date(NOON.getTime() + count * 24 * 60 * 60 * 1000)
    const own = createKeeping(store, 'taps', now)
    await own.remember('tap show 1', 'begun', 0)
    await own.remember('tap show 1', 'done', 1)
    await own.remember('notice', 'up', 0)
    expect(await dropOldLines(store, 'taps', day(90))).toBe(0)
    expect((await own.recall('tap show 1')).text).toBe('done')
    expect(await dropOldLines(store, 'taps', day(91))).toBe(1)
    expect((await own.recall('tap show 1')).text).toBeUndefined()
    expect((await own.recall('notice')).text).toBe('up')
  })

  it('remembers by a name what was written last, by whoever knew what stood there', async () => {
    expect(await keeping.recall('list')).toEqual({ revision: 0, text: undefined })
    expect(await keeping.remember('list', 'one', 0)).toBe(true)
    expect(await keeping.remember('list', 'two', 0)).toBe(false)
    expect(await keeping.recall('list')).toEqual({ revision: 1, text: 'one' })
    expect(await createKeeping(store, 'other', now).recall('list')).toEqual({ revision: 0, text: undefined })
  })
})

describe('what is remembered', () => {
  it('leaves nothing of what was remembered before', async () => {
    const keeping = createKeeping(store, 'short', now)
    await keeping.remember('list', 'with a name', 0)
    expect(await keeping.remember('list', 'without', 1)).toBe(true)
    const key = { kind: 'remembered', platform: 'short', workspace: '', id: 'list' }
    expect(await store.history(key, 10)).toHaveLength(1)
    expect(await keeping.recall('list')).toEqual({ revision: 2, text: 'without' })
  })
})

describe('a vault', () => {
  it('keeps the newest text and nothing before it', async () => {
    const vault = createVault(store, 'chat', now)
    expect(await vault.read('team')).toBeUndefined()
    await vault.write('team', 'first')
    await vault.write('team', 'second')
    expect(await vault.read('team')).toBe('second')
    const key = { kind: 'vault', platform: 'chat', workspace: '', id: 'team' }
    expect(await store.history(key, 10)).toHaveLength(1)
    const seen: unknown[] = []
    const write = async () => {
      for (let turn = 0; turn < 20; turn += 1) await vault.write('team', `turn ${turn}`)
    }
    const look = async () => {
      for (let turn = 0; turn < 40; turn += 1) seen.push(await vault.read('team'))
    }
    await Promise.all([write(), look()])
    expect(seen).not.toContain(undefined)
    await vault.forget('team')
    expect(await vault.read('team')).toBeUndefined()
  })
})
