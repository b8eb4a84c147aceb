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

  it('reads where to listen and the secrets of the chat services', () => {
    expect(
      readEnvironment({
        BATTENBOT_DISCORD_TOKEN: 't.o.k',
        BATTENBOT_DISCORD_SHARDS: '0,1 of 4',
        BATTENBOT_SLACK_APP_TOKEN: 'xapp-1',
        BATTENBOT_HOST: '0.0.0.0',
        BATTENBOT_PORT: '4800',
        BATTENBOT_HEALTH_PORT: '4801',
        BATTENBOT_DATABASE: 'postgres://batten:hush@db/bench',
      }),
    ).toEqual({
      host: '0.0.0.0',
      port: 4800,
      healthPort: 4801,
      database: 'postgres://batten:hush@db/bench',
    })
  })

  it('tells no secret', () => {
    const env = { BATTENBOT_DISCORD_TOKEN: 'hush', BATTENBOT_SLACK_BOT_TOKEN: 'hush', BATTENBOT_PORT: 'x' }
    expect(() => readEnvironment(env)).toThrow(
      expect.objectContaining({
        message: 'environment: BATTENBOT_PORT: expected a port, 1 to 65535, read "x"',
      }),
    )
  })

  it.each([
    [
      { BATTENBOT_LOG: 'loud' },
      'environment: BATTENBOT_LOG: expected silent, fatal, error, warn, info, debug or trace, read "loud"',
    ],
    [{ BATTENBOT_DATA: ' ' }, 'environment: BATTENBOT_DATA: expected the name of a folder, read " "'],
    [
      { BATTENBOT_DTA: 'x' },
      'environment: BATTENBOT_DTA: no such key. Did you mean BATTENBOT_DATA, BATTENBOT_LOG or BATTENBOT_HOST?',
    ],
  ])('tells what is wrong in %o', (env, message) => {
    expect(() => readEnvironment(env)).toThrow(expect.objectContaining({ name: 'ConfigError', message }))
  })
})
