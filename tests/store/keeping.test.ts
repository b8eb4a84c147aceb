import { afterAll, describe, expect, it } from 'vitest'
import { createKeeping } from '../../src/store/keeping.ts'
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
    const name = await keeping.keepLine(line)
    expect(name).toMatch(/^[\w-]{22}$/u)
    expect(await keeping.keepLine(line)).toBe(name)
    expect(await keeping.recallLine(name)).toBe(line)
    expect(await keeping.keepLine(`${line} `)).not.toBe(name)
    expect(await keeping.recallLine('nothing-of-the-sort')).toBeUndefined()
    expect(await createKeeping(store, 'other', now).recallLine(name)).toBeUndefined()
  })

  it('remembers by a name what was written last, by whoever knew what stood there', async () => {
    expect(await keeping.recall('list')).toEqual({ revision: 0, text: undefined })
    expect(await keeping.remember('list', 'one', 0)).toBe(true)
    expect(await keeping.remember('list', 'two', 0)).toBe(false)
    expect(await keeping.recall('list')).toEqual({ revision: 1, text: 'one' })
    expect(await createKeeping(store, 'other', now).recall('list')).toEqual({ revision: 0, text: undefined })
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
    await vault.forget('team')
    expect(await vault.read('team')).toBeUndefined()
  })
})
