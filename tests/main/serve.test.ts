import { describe, expect, it } from 'vitest'
import type { Platform } from '../../src/bot/request.ts'
import { LONGEST_STOP, PATIENCE, serve } from '../../src/main/serve.ts'

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

/** A platform whose start hangs until it is settled from outside. */
function hanging(name: string) {
  const settle: { up: () => void; fail: () => void } = { up: () => {}, fail: () => {} }
  const plain = platform(name, 0)
  const start = (): Promise<void> => {
    plain.asked.push('start')
    return new Promise((resolve, reject) => {
      settle.up = resolve
      settle.fail = () => reject(new Error(`${name} is away`))
    })
  }
  return { ...plain, settle, start }
}

const quiet = { error: () => {}, warn: () => {}, info: () => {} }

/** No wait is waited for but those that end what hangs, which last until they are over. */
const atOnce =
  (waits: number[] = [], over: readonly number[] = []) =>
  async (milliseconds: number, signal: AbortSignal): Promise<void> => {
    const isDeadline = milliseconds === PATIENCE || milliseconds === LONGEST_STOP
    if (!isDeadline) waits.push(milliseconds)
    if (isDeadline && !over.includes(milliseconds))
      await new Promise((_, reject) => signal.addEventListener('abort', () => reject(new Error('over'))))
  }

const untilWell = async ({ health }: Platform) => {
  while (!health().well) await new Promise((later) => setImmediate(later))
}

describe('serve', () => {
  it('starts all, each apart from the others, and tries again those that failed', async () => {
    const waits: number[] = []
    const [well, ill] = [platform('well', 0), platform('ill', 4)]
    const serving = serve([well, ill], quiet, atOnce(waits))
    await serving.start()
    expect(well.asked).toEqual(['start'])
    await untilWell(ill)
    expect(ill.asked).toEqual(['start', 'start', 'start', 'start', 'start'])
    expect(waits).toEqual([1000, 2000, 4000, 8000])
    await serving.stop()
    expect(well.asked).toEqual(['start', 'stop'])
  })

  it('waits a minute at most', async () => {
    const waits: number[] = []
    const ill = platform('ill', 12)
    const serving = serve([platform('well', 0), ill], quiet, atOnce(waits))
    await serving.start()
    await untilWell(ill)
    expect(Math.max(...waits)).toBe(60_000)
    await serving.stop()
  })

  it('fails where none starts, with the first reason', async () => {
    const all = [platform('one', 1), platform('two', 1)]
    const serving = serve(all, quiet, atOnce())
    await expect(serving.start()).rejects.toThrow('one is away')
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
    await serving.start()
    await serving.stop()
    expect(ill.asked).toEqual(['start', 'stop'])
  })

  it('does not wait for one that neither starts nor fails, and tries it again once it has failed', async () => {
    const [well, slow] = [platform('well', 0), hanging('slow')]
    const serving = serve([well, slow], quiet, atOnce([], [PATIENCE]))
    await serving.start()
    expect([well.asked, slow.asked]).toEqual([['start'], ['start']])
    slow.settle.fail()
    while (slow.asked.length < 2) await new Promise((later) => setImmediate(later))
    slow.settle.up()
    await serving.stop()
    expect(slow.asked.slice(0, 3)).toEqual(['start', 'start', 'stop'])
  })

  it('stops all while one is still being started, and that one again if it comes up all the same', async () => {
    const [well, slow] = [platform('well', 0), hanging('slow')]
    const serving = serve([well, slow], quiet, atOnce())
    const started = serving.start()
    const stopped = serving.stop()
    await started
    expect([well.asked, slow.asked]).toEqual([
      ['start', 'stop'],
      ['start', 'stop'],
    ])
    slow.settle.up()
    await stopped
    expect(slow.asked).toEqual(['start', 'stop', 'stop'])
  })

  it('stops though one is never started and another never stopped', async () => {
    const stuck = { ...platform('stuck', 0), stop: () => new Promise<void>(() => {}) }
    const serving = serve([stuck, hanging('slow')], quiet, atOnce([], [PATIENCE, LONGEST_STOP]))
    await serving.start()
    await serving.stop()
    expect(stuck.asked).toEqual(['start'])
  })
})
