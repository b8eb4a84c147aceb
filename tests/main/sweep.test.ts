import { expect, it } from 'vitest'
import { daily } from '../../src/main/sweep.ts'

it('what is done daily is done at once and after every day, also after a failure, until it is over', async () => {
  const told = new AbortController()
  const failed: object[] = []
  const log = { error: (facts: object) => void failed.push(facts), warn: () => {}, info: () => {} }
  const waits: number[] = []
  let times = 0
  const work = async () => {
    times += 1
    if (times === 2) throw new Error('the store is away')
  }
  const pause = async (milliseconds: number) => {
    waits.push(milliseconds)
    if (waits.length === 3) told.abort()
  }
  await daily(work, log, pause, told.signal)
  expect([times, failed.length]).toEqual([3, 1])
  expect(waits).toEqual([86_400_000, 86_400_000, 86_400_000])
})

it('what is done daily ends when it is told to, though the work never does', async () => {
  const told = new AbortController()
  const log = { error: () => {}, warn: () => {}, info: () => {} }
  const never = () => new Promise<never>(() => undefined)
  const done = daily(never, log, never, told.signal)
  told.abort()
  expect(await done).toBeUndefined()
})
