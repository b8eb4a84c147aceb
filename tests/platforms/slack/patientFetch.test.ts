import { describe, expect, it } from 'vitest'
import { pause } from '../../../src/platforms/slack/patientFetch.ts'

describe('a pause', () => {
  it('ends at once when it is over', async () => {
    const over = new AbortController()
    const waiting = pause(3_600_000, over.signal)
    over.abort()
    expect(await waiting).toBeUndefined()
  })

  it('ends by itself', async () => {
    expect(await pause(1)).toBeUndefined()
  })
})
