import { describe, expect, it } from 'vitest'
import { readEnvironment } from '../../src/config.ts'

describe('readEnvironment', () => {
  it('reads its own variables and passes others by', () => {
    expect(readEnvironment({ HOME: '/root', BATTENBOT_DATA: '/srv/batten', BATTENBOT_LOG: 'warn' })).toEqual({
      dataFolder: '/srv/batten',
      logLevel: 'warn',
    })
    expect(readEnvironment({ BATTENBOT_CONFIG: ' shop ' })).toEqual({ configFolder: 'shop' })
    expect(readEnvironment({ PATH: '/bin', BATTENBOT_DATA: undefined })).toEqual({})
  })

  it.each([
    [
      { BATTENBOT_LOG: 'loud' },
      'environment: BATTENBOT_LOG: expected silent, fatal, error, warn, info, debug or trace, read "loud"',
    ],
    [{ BATTENBOT_DATA: ' ' }, 'environment: BATTENBOT_DATA: expected the name of a folder, read " "'],
    [
      { BATTENBOT_DTA: 'x' },
      'environment: BATTENBOT_DTA: no such key. Did you mean BATTENBOT_DATA or BATTENBOT_LOG?',
    ],
  ])('tells what is wrong in %o', (env, message) => {
    expect(() => readEnvironment(env)).toThrow(expect.objectContaining({ name: 'ConfigError', message }))
  })
})
