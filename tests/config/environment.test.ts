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

  it('reads what each chat service needs', () => {
    const slack = (env: Record<string, string>) => readEnvironment(env).slack
    const T = { BATTENBOT_SLACK_TOKEN: 'xoxb-1' }
    const S = { BATTENBOT_SLACK_SIGNING_SECRET: 'abc' }
    expect(slack({})).toBeUndefined()
    expect(slack({ ...T, BATTENBOT_SLACK_APP_TOKEN: 'xapp-1' })).toEqual({
      mode: 'socket',
      token: 'xoxb-1',
      appToken: 'xapp-1',
    })
    expect(slack({ ...T, ...S })).toEqual({ mode: 'http', signingSecret: 'abc', port: 3000, token: 'xoxb-1' })
    const installing = {
      BATTENBOT_SLACK_CLIENT_ID: '1.2',
      BATTENBOT_SLACK_CLIENT_SECRET: 'cs',
      BATTENBOT_SLACK_STATE_SECRET: 'ss',
      BATTENBOT_KEY: 'k',
    }
    expect(slack({ ...S, ...installing, BATTENBOT_SLACK_PORT: '4000' })).toEqual({
      mode: 'http',
      signingSecret: 'abc',
      port: 4000,
      installing: { clientId: '1.2', clientSecret: 'cs', stateSecret: 'ss', key: 'k' },
    })
    expect(readEnvironment({ BATTENBOT_DISCORD_TOKEN: 't.o.k' }).discord).toEqual({ token: 't.o.k' })
  })

  it.each([
    [
      { BATTENBOT_SLACK_TOKEN: 'hush' },
      /^environment: BATTENBOT_SLACK_TOKEN is of no use alone: set BATTENBOT_SLACK_APP_TOKEN or/u,
    ],
    [{ BATTENBOT_SLACK_APP_TOKEN: 'hush' }, /set BATTENBOT_SLACK_TOKEN as well/u],
    [{ BATTENBOT_SLACK_SIGNING_SECRET: 'hush' }, /set BATTENBOT_SLACK_TOKEN, or for many/u],
    [
      { BATTENBOT_SLACK_CLIENT_ID: '1', BATTENBOT_SLACK_CLIENT_SECRET: 'hush' },
      /set BATTENBOT_SLACK_STATE_SECRET and BATTENBOT_KEY as well/u,
    ],
    [{ BATTENBOT_PORT: 'hush' }, /BATTENBOT_PORT: expected a port, 1 to 65535/u],
  ])('says what goes with %o', (env, sentence) => {
    expect(() => readEnvironment(env)).toThrow(
      expect.objectContaining({ message: expect.stringMatching(sentence) }),
    )
    if (!('BATTENBOT_PORT' in env))
      expect(() => readEnvironment(env)).toThrow(
        expect.objectContaining({ message: expect.not.stringMatching('hush') }),
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
      'environment: BATTENBOT_DTA: no such key. Did you mean BATTENBOT_DATA, BATTENBOT_KEY or BATTENBOT_LOG?',
    ],
  ])('tells what is wrong in %o', (env, message) => {
    expect(() => readEnvironment(env)).toThrow(expect.objectContaining({ name: 'ConfigError', message }))
  })
})
