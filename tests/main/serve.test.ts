import { describe, expect, it } from 'vitest'
import type { Platform } from '../../src/bot/request.ts'
import { serve } from '../../src/main/serve.ts'

/** A platform that fails to start so many times, and says what was asked of it. */
function platform(name: string, failures: number): Platform & { readonly asked: string[] } {
  const asked: string[] = []
  let left = failures
  return {
    name,
    asked,
    limits: {},
    start: async () => {
      asked.push('start')
      left -= 1
      if (left >= 0) throw new Error(`${name} is away`)
    },
    stop: async () => void asked.push('stop'),
    health: () => ({ well: left < 0, says: name }),
  }
}

const quiet = { error: () => {}, warn: () => {}, info: () => {} }
const atOnce = async () => {}

describe('serve', () => {
  it('starts all, each apart from the others, and tries again those that failed', async () => {
    const waits: number[] = []
    const [well, ill] = [platform('well', 0), platform('ill', 4)]
    const serving = serve([well, ill], quiet, async (milliseconds) => void waits.push(milliseconds))
    await serving.started
    expect(well.asked).toEqual(['start'])
    while (!ill.health().well) await new Promise((later) => setImmediate(later))
    expect(ill.asked).toEqual(['start', 'start', 'start', 'start', 'start'])
    expect(waits).toEqual([1000, 2000, 4000, 8000])
    await serving.stop()
    expect(well.asked).toEqual(['start', 'stop'])
  })

  it('waits a minute at most', async () => {
    const waits: number[] = []
    const ill = platform('ill', 12)
    const serving = serve(
      [platform('well', 0), ill],
      quiet,
      async (milliseconds) => void waits.push(milliseconds),
    )
    await serving.started
    while (!ill.health().well) await new Promise((later) => setImmediate(later))
    expect(Math.max(...waits)).toBe(60_000)
    await serving.stop()
  })

  it('fails where none starts, with the first reason', async () => {
    const all = [platform('one', 1), platform('two', 1)]
    const serving = serve(all, quiet, atOnce)
    await expect(serving.started).rejects.toThrow('one is away')
    await serving.stop()
    expect(all.map(({ asked }) => asked)).toEqual([
      ['start', 'stop'],
      ['start', 'stop'],
    ])
  })

  it('stops while one is still waiting to be tried again', async () => {
    const ill = platform('ill', 100)
    const serving = serve(
      [platform('well', 0), ill],
      quiet,
      (_, signal) =>
        new Promise((_done, over) => signal.addEventListener('abort', () => over(new Error('over')))),
    )
    await serving.started
    await serving.stop()
    expect(ill.asked).toEqual(['start', 'stop'])
  })
})
