import { describe, expect, it } from 'vitest'
import { Refusal } from '../../src/bot/refusal.ts'
import { changeWithRetry, type DocumentKey, type Store } from '../../src/bot/state.ts'

const KEY: DocumentKey = { kind: 'project', platform: 'room', workspace: 'club', id: 'bench' }
const ANN = { user: 'ann', command: 'project size 24in' }
const NOON = new Date('2026-03-01T12:00:00.000Z')

/** A store of numbers in which somebody else adds 100 just before each of the first `others` changes. */
function contended(others: number): Store & { readonly calls: string[] } {
  const calls: string[] = []
  const bodies = new Map<string, number[]>()
  const of = (key: DocumentKey) => bodies.get(key.id) ?? bodies.set(key.id, [0]).get(key.id) ?? []
  let left = others
  const never = () => Promise.reject(new Error('not part of this test'))
  return {
    calls,
    read: async (key) => {
      calls.push('read')
      return { revision: of(key).length - 1, body: of(key).at(-1) }
    },
    change: async (key, expected, body) => {
      calls.push('change')
      if (left-- > 0) of(key).push((of(key).at(-1) ?? 0) + 100)
      const revision = of(key).length - 1
      if (revision !== expected) return { status: 'conflict', revision }
      return { status: 'changed', revision: of(key).push(Number(body)) - 1 }
    },
    replace: never,
    undo: never,
    redo: never,
    history: never,
    forget: never,
    trim: never,
    forgetBefore: never,
    forgetPerson: never,
    once: never,
    close: never,
  }
}

const increment = (body: unknown) => Number(body) + 1

describe('changeWithRetry', () => {
  it('edits what is kept, and gives the new revision', async () => {
    const store = contended(0)
    expect(await changeWithRetry(store, KEY, increment, ANN, NOON)).toBe(1)
    expect(await changeWithRetry(store, KEY, increment, ANN, NOON)).toBe(2)
    expect((await store.read(KEY)).body).toBe(2)
  })

  it('edits again what somebody else made of it meanwhile', async () => {
    const store = contended(3)
    expect(await changeWithRetry(store, KEY, increment, ANN, NOON)).toBe(4)
    expect((await store.read(KEY)).body).toBe(301)
  })

  it('gives up after so many tries, with a sentence for whoever asked', async () => {
    const store = contended(9)
    const attempt = changeWithRetry(store, KEY, increment, ANN, NOON, 3)
    await expect(attempt).rejects.toThrow(Refusal)
    await expect(attempt).rejects.toThrow('your change was not made; send the line again')
    expect(store.calls.filter((call) => call === 'change')).toHaveLength(3)
  })

  it('writes nothing when the edit refuses, and lets the next one in', async () => {
    const store = contended(0)
    const refuse = () => {
      throw new Refusal('invalid', 'no such size')
    }
    const [refused, made] = await Promise.allSettled([
      changeWithRetry(store, KEY, refuse, ANN, NOON),
      changeWithRetry(store, KEY, increment, ANN, NOON),
    ])
    expect(refused).toMatchObject({ status: 'rejected', reason: { message: 'no such size' } })
    expect(made).toEqual({ status: 'fulfilled', value: 1 })
  })

  it('takes turns in one document, so that a hundred at once never meet', async () => {
    const store = contended(0)
    await Promise.all(Array.from({ length: 100 }, () => changeWithRetry(store, KEY, increment, ANN, NOON, 1)))
    expect((await store.read(KEY)).body).toBe(100)
  })

  it('does not make one document wait for another', async () => {
    const store = contended(0)
    const other = { ...KEY, id: 'other' }
    await Promise.all([KEY, other].map((key) => changeWithRetry(store, key, increment, ANN, NOON)))
    expect(store.calls).toEqual(['read', 'read', 'change', 'change'])
  })
})
