import { afterAll, describe, expect, it } from 'vitest'
import type { SearchTerms } from '../../src/bot/search.ts'
import type { LengthProblem, SheetProblem } from '../../src/core/cutting/problem.ts'
import { verifyCost, verifySheets } from '../../src/core/cutting/verify.ts'
import { createSearch } from '../../src/search/pool.ts'
import { clubSheets } from '../bench/cutting/kits.ts'

const terms = (about: Partial<SearchTerms> = {}): SearchTerms => ({
  channel: 'bench',
  seconds: 0.5,
  signal: new AbortController().signal,
  ...about,
})

const named = (id: string): LengthProblem => ({
  parts: [{ id, length: 40, count: 1 }],
  stock: [{ id: 'S', length: 96, price: 1 }],
  kerf: 1,
  trim: 0,
  keepable: 10,
})

describe('searches in threads', () => {
  const search = createSearch({ threads: 1, queue: 4 })
  afterAll(() => search.close())

  /** Large enough that no search proves it in the time it gets here. */
  const large: SheetProblem = clubSheets(12)

  it('stop with the best so far when they are called off, and it holds', async () => {
    const call = new AbortController()
    setTimeout(() => call.abort(), 300)
    const { outcome } = await search.cutSheets(large, terms({ seconds: 60, signal: call.signal }))
    if (outcome.status === 'impossible') throw new Error(outcome.reason)
    expect(verifySheets(large, outcome.layouts)).toEqual([])
    expect(verifyCost(large, outcome)).toEqual([])
  })

  it('do not remember what was called off, but what ran its time', async () => {
    const first = await search.cutSheets(large, terms())
    expect(await search.cutSheets(large, terms())).toBe(first)
    expect(await search.cutSheets(large, terms({ seconds: 0.2 }))).toBe(first)
  })

  it('remember what is proven, however long is asked for', async () => {
    const first = await search.cutLengths(named('A'), terms())
    expect(first.outcome).toMatchObject({ status: 'optimal', cost: 1 })
    expect(await search.cutLengths(named('A'), terms({ seconds: 8 }))).toBe(first)
  })

  it('reject what no person can have asked for', async () => {
    const negative = { ...named('A'), kerf: -1 }
    await expect(search.cutLengths(negative, terms())).rejects.toThrow('kerf')
  })
})

describe('threads that go wrong', () => {
  const failures: unknown[] = []
  const search = createSearch({
    threads: 1,
    queue: 2,
    megabytes: 48,
    start: new URL('./crash.mjs', import.meta.url),
    failed: (error) => failures.push(error),
  })
  afterAll(() => search.close())
  const works = async () =>
    expect((await search.cutLengths(named('fine'), terms())).outcome).toMatchObject({ id: 'fine' })

  it('reject a search that throws, and go on', async () => {
    await expect(search.cutLengths(named('throw'), terms())).rejects.toThrow('the search broke')
    await works()
  })

  it('reject a search whose thread dies, and start another', async () => {
    await expect(search.cutLengths(named('die'), terms())).rejects.toThrow('the thread died')
    await works()
  })

  it('end a thread that takes too much memory, and start another', async () => {
    await expect(search.cutLengths(named('memory'), terms())).rejects.toThrow(/memory/u)
    await works()
  })

  it('end a thread that cannot be stopped otherwise', async () => {
    const signal = AbortSignal.timeout(300)
    const job = { safeWidth: 1, step: 1 }
    await expect(search.orderCuts(job, { channel: 'bench', signal })).rejects.toThrow('not get done in time')
    await works()
  })

  it('refuse what is over the bound, and what waited too long', async () => {
    const call = new AbortController()
    const running = search.cutLengths(named('wait'), terms({ signal: call.signal }))
    const late = search.cutLengths(named('late'), terms({ signal: AbortSignal.timeout(200) }))
    await expect(search.cutLengths(named('more'), terms())).rejects.toMatchObject({
      name: 'Refusal',
      kind: 'fault',
      message: expect.stringContaining('too many layouts wait already'),
    })
    const other = search.cutLengths(named('other'), terms({ channel: 'shed' }))
    await expect(late).rejects.toMatchObject({
      name: 'Refusal',
      message: expect.stringContaining('ask again in a minute'),
    })
    call.abort()
    expect((await running).outcome).toMatchObject({ id: 'wait' })
    expect((await other).outcome).toMatchObject({ id: 'other' })
    expect(failures).toEqual([])
  })
})
