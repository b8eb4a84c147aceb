import { afterAll, describe, expect, it } from 'vitest'
import { oneEffect } from '../../src/platforms/oneEffect.ts'
import { createKeeping } from '../../src/store/keeping.ts'
import { openSqlite } from '../../src/store/sqlite.ts'
import { createGate } from '../gate.ts'

const store = await openSqlite(':memory:')
afterAll(() => store.close())

function desk() {
  let time = Date.UTC(2026, 2, 6, 18)
  const logged: string[] = []
  const note = (_: object, message: string) => void logged.push(message)
  const now = () => new Date(time)
  const parts = {
    keeping: createKeeping(store, 'chat', now),
    now,
    log: { error: note, warn: note, info: note },
  }
  const wait = (milliseconds: number) => {
    time += milliseconds
  }
  return { parts, logged, wait }
}

describe('a tap', () => {
  it('has one effect, however often and by whichever process', async () => {
    const [one, other] = [desk().parts, desk().parts]
    let times = 0
    const work = async () => {
      times += 1
      return true
    }
    const done = await Promise.all([one, other, one].map((parts) => oneEffect('twice', work, parts)))
    expect(done.filter((each) => each === 'done')).toHaveLength(1)
    expect(await oneEffect('twice', work, other)).toBe('done before')
    expect(times).toBe(1)
  })

  it('that failed may be made again', async () => {
    const { parts } = desk()
    await expect(oneEffect('again', () => Promise.reject(new Error('away')), parts)).rejects.toThrow('away')
    expect(await oneEffect('again', async () => false, parts)).toBe('failed')
    expect(await oneEffect('again', async () => true, parts)).toBe('done')
  })

  it('whose process died half way may be made again after a minute', async () => {
    const { parts, wait } = desk()
    const { promise } = createGate()
    void oneEffect('died', () => promise.then(() => true), parts)
    await new Promise((later) => setImmediate(later))
    expect(await oneEffect('died', async () => true, parts)).toBe('under way')
    wait(61_000)
    expect(await oneEffect('died', async () => true, parts)).toBe('done')
  })

  it('has its effect when the store cannot say whether it had it before', async () => {
    const { parts, logged } = desk()
    const keeping = { ...parts.keeping, recall: () => Promise.reject(new Error('away')) }
    expect(await oneEffect('unsaid', async () => true, { ...parts, keeping })).toBe('done')
    expect(logged).toEqual(['the store cannot say whether a tap had its effect before'])
  })
})
