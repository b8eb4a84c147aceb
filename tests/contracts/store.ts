import { fork } from 'node:child_process'
import { once as occurs } from 'node:events'
import { fileURLToPath } from 'node:url'
import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import {
  type Author,
  changeWithRetry,
  type DocumentKey,
  isForgotten,
  type Store,
} from '../../src/bot/state.ts'
import { DocumentModel, steps } from './storeModel.ts'

export interface Settings {
  readonly revisionsKept?: number
}

/** Where a store lies: opened as often as wanted, at last removed. */
export interface StorePlace {
  readonly open: (settings?: Settings) => Promise<Store>
  readonly remove: () => Promise<void>
  /** What tests/store/writer.ts needs to open the same store in another process. */
  readonly where: string
}

const KEY: DocumentKey = { kind: 'project', platform: 'room', workspace: 'club', id: 'bench' }
const ANN: Author = { user: 'ann', command: 'project size 24in' }
const BOB: Author = { user: 'bob', command: 'project set kerf=3mm' }
const NOON = new Date('2026-03-01T12:00:00.000Z')
const increment = (value: unknown) => Number(value ?? 0) + 1
const later = (seconds: number) => new Date(NOON.getTime() + seconds * 1000)

/**
 * What every store must do, whatever keeps it. `engine` is how tests/store/writer.ts calls it; left out when the store is
 * gone once closed, and cannot be shared.
 */
export function storeContract(name: string, newPlace: () => Promise<StorePlace>, engine?: string): void {
  describe(`the store on ${name}`, () => {
    let place: StorePlace
    let store: Store
    beforeEach(async () => {
      place = await newPlace()
      store = await place.open()
    })
    afterEach(async () => {
      await store.close()
      await place.remove()
    })
    const edit = async (body: unknown, author = ANN, at = NOON) => {
      const { revision } = await store.read(KEY)
      expect(await store.change(KEY, revision, body, author, at)).toEqual({
        status: 'changed',
        revision: revision + 1,
      })
    }
    const body = async () => (await store.read(KEY)).body
    /** Who stands in the list of members that a document holds. */
    const userIn = async (key: DocumentKey, index = 0): Promise<string> => {
      const { members } = (await store.read(key)).body as { members: { user: string }[] }
      return members[index]?.user ?? ''
    }

    describe('reads and changes', () => {
      it('starts empty, at revision 0', async () => {
        expect(await store.read(KEY)).toEqual({ revision: 0, body: undefined })
        expect(await store.history(KEY, 10)).toEqual([])
        expect(await store.undo(KEY, ANN, NOON)).toEqual({ status: 'nothing' })
        expect(await store.redo(KEY, ANN, NOON)).toEqual({ status: 'nothing' })
        expect(await store.forget(KEY)).toBe(0)
      })

      it('gives back what was written, for anything JSON can hold', async () => {
        await fc.assert(
          fc.asyncProperty(fc.jsonValue(), async (value) => {
            await edit(value)
            expect(await body()).toEqual(JSON.parse(JSON.stringify(value)))
          }),
          { numRuns: 50 },
        )
      })

      it('tells null, which is a body, from nothing', async () => {
        await edit(null)
        expect(await store.read(KEY)).toEqual({ revision: 1, body: null })
      })

      it('refuses a body that JSON cannot hold, and keeps what there was', async () => {
        await edit('kept')
        await expect(store.change(KEY, 1, undefined, ANN, NOON)).rejects.toThrow(TypeError)
        await expect(store.change(KEY, 1, () => 1, ANN, NOON)).rejects.toThrow(TypeError)
        expect(await store.read(KEY)).toEqual({ revision: 1, body: 'kept' })
      })

      it('writes nothing over a newer revision, and says which is current', async () => {
        await edit('first')
        expect(await store.change(KEY, 0, 'lost', BOB, NOON)).toEqual({ status: 'conflict', revision: 1 })
        expect(await store.change(KEY, 2, 'lost', BOB, NOON)).toEqual({ status: 'conflict', revision: 1 })
        expect(await store.read(KEY)).toEqual({ revision: 1, body: 'first' })
      })

      it('lets one of many that change the same revision at once through', async () => {
        const changes = Array.from({ length: 20 }, (_, index) => store.change(KEY, 0, index, ANN, NOON))
        const results = await Promise.all(changes)
        const winners = results.flatMap(({ status }, index) => (status === 'changed' ? [index] : []))
        expect(winners).toHaveLength(1)
        expect(await store.read(KEY)).toEqual({ revision: 1, body: winners[0] })
      })

      it('keeps documents apart by every part of their key', async () => {
        const parts = ['kind', 'platform', 'workspace', 'id'] as const
        const keys = [KEY, ...parts.map((part) => ({ ...KEY, [part]: `${KEY[part]}"/2` }))]
        for (const [index, key] of keys.entries()) await store.change(key, 0, index, ANN, NOON)
        expect(await Promise.all(keys.map(async (key) => (await store.read(key)).body))).toEqual([
          0, 1, 2, 3, 4,
        ])
        expect(await store.forget(KEY)).toBe(1)
        expect(await Promise.all(keys.map(async (key) => (await store.read(key)).body))).toEqual([
          undefined,
          1,
          2,
          3,
          4,
        ])
      })

      it('reads no more of a key than is the key', async () => {
        const request: DocumentKey & { at: Date } = { ...KEY, at: NOON }
        await store.change(request, 0, 'short', ANN, NOON)
        expect(await body()).toBe('short')
      })
    })

    describe('undo, redo and history', () => {
      it('walks back through every edit to the empty document, and forward again', async () => {
        for (const value of ['a', 'b', 'c']) await edit(value)
        const seen: unknown[] = []
        for (const way of ['undo', 'undo', 'undo', 'undo', 'redo', 'redo', 'redo', 'redo'] as const) {
          const moved = await store[way](KEY, BOB, NOON)
          seen.push(moved.status === 'changed' ? (moved.body ?? 'empty') : 'nothing')
          expect(await body()).toEqual(moved.status === 'changed' ? moved.body : await body())
        }
        expect(seen).toEqual(['b', 'a', 'empty', 'nothing', 'a', 'b', 'c', 'nothing'])
        expect(await store.read(KEY)).toEqual({ revision: 9, body: 'c' })
      })

      it('says which edit was undone or brought back: whose, when, by which line', async () => {
        await edit('a', ANN, NOON)
        await edit('b', BOB, later(60))
        const revised = { revision: 2, at: later(60), ...BOB, way: 'edit' }
        const undone = await store.undo(KEY, ANN, later(90))
        expect(undone).toEqual({ status: 'changed', revision: 3, body: 'a', revised })
        const redone = await store.redo(KEY, ANN, later(95))
        expect(redone).toEqual({ status: 'changed', revision: 4, body: 'b', revised })
      })

      it('cannot redo past a new edit', async () => {
        for (const value of ['a', 'b', 'c']) await edit(value)
        await store.undo(KEY, ANN, NOON)
        await store.undo(KEY, ANN, NOON)
        await edit('d')
        expect(await store.redo(KEY, ANN, NOON)).toEqual({ status: 'nothing' })
        expect(await store.undo(KEY, ANN, NOON)).toMatchObject({ body: 'a' })
        expect(await store.redo(KEY, ANN, NOON)).toMatchObject({ body: 'd' })
        expect(await store.redo(KEY, ANN, NOON)).toEqual({ status: 'nothing' })
      })

      it('makes an undo a revision that a stale change runs into', async () => {
        await edit('a')
        await store.undo(KEY, ANN, NOON)
        expect(await store.change(KEY, 1, 'b', BOB, NOON)).toEqual({ status: 'conflict', revision: 2 })
        expect(await store.change(KEY, 2, 'b', BOB, NOON)).toEqual({ status: 'changed', revision: 3 })
      })

      it('lists who, when and by which line, newest first, at most as many as asked for', async () => {
        await edit('a', ANN, NOON)
        await edit('b', BOB, later(1))
        await store.undo(KEY, { user: 'cy', command: 'project undo' }, later(2))
        const all = [
          { revision: 3, at: later(2), user: 'cy', command: 'project undo', way: 'undo' },
          { revision: 2, at: later(1), ...BOB, way: 'edit' },
          { revision: 1, at: NOON, ...ANN, way: 'edit' },
        ]
        expect(await store.history(KEY, 10)).toEqual(all)
        expect(await store.history(KEY, 2)).toEqual(all.slice(0, 2))
      })

      it('agrees with a plain model through any run of steps, however little it keeps', async () => {
        let runs = 0
        for (const kept of [2, 5, 200]) {
          const small = await place.open({ revisionsKept: kept })
          const start = () => ({
            model: new DocumentModel(kept),
            real: { store: small, key: { ...KEY, id: `run ${runs++}` } },
          })
          await fc.assert(
            fc.asyncProperty(steps, async (commands) => fc.asyncModelRun(start, commands)),
            { numRuns: 25 },
          )
          await small.close()
        }
        expect(runs).toBeGreaterThanOrEqual(75)
      })
    })

    describe('pruning', () => {
      const openKeeping = async (revisionsKept: number) => {
        await store.close()
        store = await place.open({ revisionsKept })
      }

      it('keeps the newest revisions, and one older body for the last undo to show', async () => {
        await openKeeping(5)
        for (let number = 1; number <= 20; number += 1) await edit(number)
        expect((await store.history(KEY, 100)).map(({ revision }) => revision)).toEqual([20, 19, 18, 17, 16])
        for (const expected of [19, 18, 17, 16, 15])
          expect(await store.undo(KEY, ANN, NOON)).toMatchObject({ body: expected })
        expect(await store.undo(KEY, ANN, NOON)).toEqual({ status: 'nothing' })
      })

      it('keeps what redo needs, though it is older than the revisions it keeps', async () => {
        await openKeeping(4)
        for (const value of ['a', 'b', 'c', 'd']) await edit(value)
        for (let count = 0; count < 4; count += 1) await store.undo(KEY, ANN, NOON)
        expect(await body()).toBeUndefined()
        for (const expected of ['a', 'b', 'c', 'd'])
          expect(await store.redo(KEY, ANN, NOON)).toMatchObject({ body: expected })
      })

      it('drops what no undo or redo can reach', async () => {
        await openKeeping(5)
        for (let number = 1; number <= 20; number += 1) await edit(number)
        expect(await store.forget(KEY)).toBe(6)
        for (let number = 1; number <= 20; number += 1) {
          await edit(number)
          await store.undo(KEY, ANN, NOON)
        }
        expect(await store.forget(KEY)).toBe(5)
      })

      it('lets a document grow to about three times that at most', async () => {
        await openKeeping(10)
        for (let number = 0; number < 40; number += 1) await edit(number)
        for (let number = 0; number < 10; number += 1) await store.undo(KEY, ANN, NOON)
        for (let number = 0; number < 30; number += 1)
          await store[number % 2 ? 'undo' : 'redo'](KEY, ANN, NOON)
        expect(await store.forget(KEY)).toBeLessThanOrEqual(31)
      })
    })

    describe('deleting', () => {
      it('forgets a document with its whole history', async () => {
        for (const value of ['a', 'b', 'c']) await edit(value)
        await store.undo(KEY, ANN, NOON)
        expect(await store.forget(KEY)).toBe(4)
        expect(await store.read(KEY)).toEqual({ revision: 0, body: undefined })
        expect(await store.history(KEY, 10)).toEqual([])
        expect(await store.redo(KEY, ANN, NOON)).toEqual({ status: 'nothing' })
        expect(await store.change(KEY, 4, 'late', BOB, NOON)).toEqual({ status: 'conflict', revision: 0 })
      })

      it('trims a document to what holds now, which later edits can still go back to', async () => {
        for (const value of ['a', 'b', 'c']) await edit(value)
        expect(await store.trim(KEY)).toBe(2)
        expect(await store.read(KEY)).toEqual({ revision: 3, body: 'c' })
        expect(await store.history(KEY, 10)).toHaveLength(1)
        expect(await store.undo(KEY, ANN, NOON)).toEqual({ status: 'nothing' })
        await edit('d')
        expect(await store.undo(KEY, ANN, NOON)).toMatchObject({ body: 'c' })
        expect(await store.trim({ ...KEY, id: 'never written' })).toBe(0)
      })

      it('forgets a person: their own documents, and their name elsewhere', async () => {
        const own = { ...KEY, kind: 'person', id: ANN.user }
        await store.change(own, 0, { units: 'inch' }, ANN, NOON)
        await store.change({ ...own, id: BOB.user }, 0, { units: 'metric' }, BOB, NOON)
        await edit('a', ANN)
        await edit('b', BOB)
        const { platform, workspace } = KEY
        expect(await store.forgetPerson({ platform, workspace, user: ANN.user })).toEqual({
          deleted: 1,
          unnamed: 1,
        })
        expect(await store.read(own)).toEqual({ revision: 0, body: undefined })
        expect((await store.history(KEY, 10)).map(({ user }) => user)).toEqual([BOB.user, ''])
        expect(await body()).toBe('b')
        expect(await store.undo(KEY, BOB, NOON)).toMatchObject({ body: 'a' })
        expect((await store.read({ ...own, id: BOB.user })).body).toEqual({ units: 'metric' })
      })

      it('takes a person out of what documents hold, and nothing else that reads alike', async () => {
        const held = (who: string) => ({
          members: [{ user: who, plan: 'ann' }, { user: 'bob' }],
          marks: { ann: { by: who } },
          people: ['bob', who],
          note: 'ann',
        })
        await edit(held(ANN.user), BOB)
        await edit({ ...held(ANN.user), more: 1 }, BOB)
        const { unnamed } = await store.forgetPerson({ platform: KEY.platform, user: ANN.user })
        expect(unnamed).toBe(2)
        const nobody = await userIn(KEY)
        expect(isForgotten(nobody)).toBe(true)
        expect(await body()).toEqual({ ...held(nobody), more: 1 })
        expect(await store.undo(KEY, BOB, NOON)).toMatchObject({ body: held(nobody) })
        const odd = 'a%_"\\!n'
        await edit({ members: [{ user: odd }] })
        await store.forgetPerson({ platform: KEY.platform, user: odd })
        expect(isForgotten(await userIn(KEY))).toBe(true)
      })

      it('leaves those who were forgotten apart from each other, and unlike in every document', async () => {
        const other = { ...KEY, id: 'other' }
        for (const key of [KEY, other])
          await store.change(key, 0, { members: [{ user: 'ann' }, { user: 'cy' }] }, BOB, NOON)
        for (const user of ['ann', 'cy']) await store.forgetPerson({ platform: KEY.platform, user })
        const users = await Promise.all([KEY, other].flatMap((key) => [userIn(key), userIn(key, 1)]))
        expect(users.every(isForgotten)).toBe(true)
        expect(new Set(users).size).toBe(4)
      })

      it('lets no edit that is under way bring somebody back who is forgotten meanwhile', async () => {
        await edit({ members: [{ user: 'ann' }] }, BOB)
        const { revision, body: before } = await store.read(KEY)
        await store.forgetPerson({ platform: KEY.platform, user: 'ann' })
        expect(await store.change(KEY, revision, before, BOB, NOON)).toEqual({
          status: 'conflict',
          revision: revision + 1,
        })
        expect(isForgotten(await userIn(KEY))).toBe(true)
      })

      it('forgets a person while others go on changing what names them', async () => {
        const keys = Array.from({ length: 4 }, (_, id) => ({ ...KEY, id: `busy ${id}` }))
        for (const key of keys) await store.change(key, 0, { count: 0, people: ['ann', 'cy'] }, BOB, NOON)
        const count = (value: unknown) => {
          const held = value as { count: number; people: string[] }
          return { ...held, count: held.count + 1 }
        }
        await Promise.all([
          ...keys.flatMap((key) =>
            Array.from({ length: 10 }, () => changeWithRetry(store, key, count, BOB, NOON)),
          ),
          ...['ann', 'cy'].map((user) => store.forgetPerson({ platform: KEY.platform, user })),
        ])
        for (const key of keys) {
          const held = (await store.read(key)).body as { count: number; people: string[] }
          expect([held.count, held.people.every(isForgotten)]).toEqual([10, true])
        }
      })

      it('forgets the lines that were kept for a person, and nobody else’s', async () => {
        const line = (id: string): DocumentKey => ({ ...KEY, kind: 'line', workspace: '', id })
        for (const [id, author] of [
          ['a', ANN],
          ['b', BOB],
        ] as const)
          await store.replace(line(id), 'strips 2x6', author, NOON)
        await store.replace({ ...line('a'), platform: 'chat' }, 'strips 2x6', ANN, NOON)
        expect(await store.forgetPerson({ platform: KEY.platform, user: ANN.user })).toEqual({
          deleted: 1,
          unnamed: 0,
        })
        expect((await store.read(line('a'))).body).toBeUndefined()
        expect((await store.read(line('b'))).body).toBe('strips 2x6')
        expect((await store.read({ ...line('a'), platform: 'chat' })).body).toBe('strips 2x6')
      })

      it('replaces a document with all that it was', async () => {
        await edit('a')
        await edit('b')
        await store.replace(KEY, 'c', BOB, later(1))
        expect(await store.read(KEY)).toEqual({ revision: 3, body: 'c' })
        expect(await store.history(KEY, 10)).toEqual([{ revision: 3, at: later(1), ...BOB, way: 'edit' }])
        expect(await store.change(KEY, 2, 'late', ANN, NOON)).toEqual({ status: 'conflict', revision: 3 })
        expect(await store.undo(KEY, ANN, later(2))).toMatchObject({ body: undefined })
      })

      it('keeps what it was where it cannot be replaced', async () => {
        await edit('kept')
        await expect(store.replace(KEY, () => 1, BOB, NOON)).rejects.toThrow(TypeError)
        expect(await store.read(KEY)).toEqual({ revision: 1, body: 'kept' })
      })

      it('is never seen without the document while it is replaced', async () => {
        await edit(0)
        const seen: unknown[] = []
        const write = async () => {
          for (let value = 1; value <= 30; value += 1) await store.replace(KEY, value, ANN, NOON)
        }
        const look = async () => {
          for (let times = 0; times < 60; times += 1) seen.push(await body())
        }
        await Promise.all([write(), look(), look()])
        expect(seen).toHaveLength(120)
        expect(seen).not.toContain(undefined)
      })

      it('forgets the documents of a kind that are older than a moment', async () => {
        const line = (id: string): DocumentKey => ({ ...KEY, kind: 'line', id })
        await store.replace(line('old'), 1, ANN, NOON)
        await store.replace(line('renewed'), 1, ANN, NOON)
        await store.replace(line('renewed'), 1, ANN, later(10))
        await edit('another kind', ANN, NOON)
        await store.replace({ ...line('old'), platform: 'chat' }, 1, ANN, NOON)
        const { id: _, ...kind } = line('')
        expect(await store.forgetBefore(kind, later(10))).toBe(1)
        expect((await store.read(line('old'))).body).toBeUndefined()
        expect((await store.read(line('renewed'))).body).toBe(1)
        expect((await store.read({ ...line('old'), platform: 'chat' })).body).toBe(1)
        expect(await body()).toBe('another kind')
      })

      it('forgets a person in one workspace, or on a whole platform, and no further', async () => {
        const places = [
          { platform: 'slack', workspace: 'T1' },
          { platform: 'slack', workspace: 'T2' },
          { platform: 'discord', workspace: 'T1' },
        ]
        for (const where of places) {
          await store.change({ ...where, kind: 'person', id: ANN.user }, 0, 1, ANN, NOON)
          await store.change({ ...where, kind: 'project', id: 'c' }, 0, 1, ANN, NOON)
        }
        const one = await store.forgetPerson({ platform: 'slack', workspace: 'T1', user: ANN.user })
        expect(one).toEqual({ deleted: 1, unnamed: 1 })
        const rest = await store.forgetPerson({ platform: 'slack', user: ANN.user })
        expect(rest).toEqual({ deleted: 1, unnamed: 1 })
        const [untouched] = await store.history(
          { platform: 'discord', workspace: 'T1', kind: 'project', id: 'c' },
          1,
        )
        expect(untouched?.user).toBe(ANN.user)
      })
    })

    describe('events', () => {
      it('knows an event the second time, for a day', async () => {
        const day = 24 * 60 * 60
        expect(await store.once('room:1', NOON)).toBe(true)
        expect(await store.once('room:1', later(1))).toBe(false)
        expect(await store.once('room:2', later(2))).toBe(true)
        expect(await store.once('room:1', later(day))).toBe(false)
        expect(await store.once('room:1', later(day + 1))).toBe(true)
      })

      it('lets one of many deliveries at once through', async () => {
        const answers = await Promise.all(Array.from({ length: 20 }, () => store.once('room:3', NOON)))
        expect(answers.filter(Boolean)).toHaveLength(1)
      })
    })

    describe('several at once', () => {
      it('loses none of a hundred edits made at once', async () => {
        await Promise.all(
          Array.from({ length: 100 }, () => changeWithRetry(store, KEY, increment, ANN, NOON)),
        )
        expect(await store.read(KEY)).toEqual({ revision: 100, body: 100 })
      })

      it('undoes once for each of several undos at once', async () => {
        for (const value of ['a', 'b', 'c', 'd']) await edit(value)
        await Promise.all(Array.from({ length: 3 }, () => store.undo(KEY, ANN, NOON)))
        expect(await store.read(KEY)).toEqual({ revision: 7, body: 'a' })
      })
    })

    if (engine === undefined) return
    describe('shared and kept', () => {
      it('survives closing, with what can be undone and redone', async () => {
        for (const value of ['a', 'b', 'c']) await edit(value)
        await store.undo(KEY, ANN, NOON)
        await store.once('room:4', NOON)
        await store.close()
        store = await place.open()
        expect(await store.read(KEY)).toEqual({ revision: 4, body: 'b' })
        expect(await store.once('room:4', later(5))).toBe(false)
        expect(await store.history(KEY, 10)).toHaveLength(4)
        expect(await store.redo(KEY, ANN, NOON)).toMatchObject({ body: 'c' })
        expect(await store.undo(KEY, ANN, NOON)).toMatchObject({ body: 'b' })
      })

      it('is one store for two that have it open in one process', async () => {
        const others = await Promise.all([place.open(), place.open()])
        const all = [store, ...others]
        await Promise.all(
          Array.from({ length: 60 }, (_, index) =>
            changeWithRetry(all[index % 3] ?? store, KEY, increment, ANN, NOON),
          ),
        )
        expect(await store.read(KEY)).toEqual({ revision: 60, body: 60 })
        await Promise.all(others.map((other) => other.close()))
      })

      it('is made by two processes at once, who lose no edit and see each event once', {
        timeout: 60_000,
      }, async () => {
        const fresh = await newPlace()
        const counts = await Promise.all([1, 2].map(() => write([engine, fresh.where], 200)))
        expect(counts.reduce((sum, count) => sum + count, 0)).toBe(200)
        const opened = await fresh.open()
        expect(await opened.read(KEY)).toEqual({ revision: 400, body: 400 })
        await opened.close()
        await fresh.remove()
      })
    })
  })
}

const WRITER = fileURLToPath(new URL('../store/writer.ts', import.meta.url))

/** Counts up the body `times` times in a process of its own; gives how many of as many events it was the first to see. */
async function write(address: readonly string[], times: number): Promise<number> {
  const writer = fork(WRITER, [...address, JSON.stringify(KEY), String(times)], {
    execArgv: ['--import', 'tsx'],
  })
  const firsts: number[] = []
  writer.on('message', (count) => firsts.push(Number(count)))
  const [code] = await occurs(writer, 'exit')
  expect({ code, answers: firsts.length }).toEqual({ code: 0, answers: 1 })
  return firsts[0] ?? Number.NaN
}
