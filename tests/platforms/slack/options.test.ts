import { describe, expect, it } from 'vitest'
import { readSlackOptions } from '../../../src/platforms/slack/options.ts'
import { KEY, memoryVault } from './bot.ts'

const vault = memoryVault()
const read = (environment: Record<string, string>) => readSlackOptions(environment, vault)

const OAUTH = {
  BATTENBOT_SLACK_SIGNING_SECRET: 's',
  BATTENBOT_SLACK_CLIENT_ID: 'i',
  BATTENBOT_SLACK_CLIENT_SECRET: 'c',
  BATTENBOT_SLACK_STATE_SECRET: 't',
  BATTENBOT_SLACK_TOKEN_KEY: KEY.toString('hex'),
  BATTENBOT_SLACK_ADDRESS: 'https://bot.example.org/',
}

describe('the environment', () => {
  it('may say nothing of Slack', () => {
    expect(read({ HOME: '/root' })).toBeUndefined()
    expect(read({ BATTENBOT_SLACK_BOT_TOKEN: '' })).toBeUndefined()
  })

  it('sets up Socket Mode', () => {
    expect(
      read({
        BATTENBOT_SLACK_APP_TOKEN: 'xapp-1',
        BATTENBOT_SLACK_BOT_TOKEN: 'xoxb-1',
        BATTENBOT_SLACK_COMMAND: '/wood',
      }),
    ).toEqual({
      command: '/wood',
      connection: { mode: 'socket', appToken: 'xapp-1', botToken: 'xoxb-1' },
    })
  })

  it('sets up HTTP for one workspace', () => {
    expect(
      read({
        BATTENBOT_SLACK_SIGNING_SECRET: 's',
        BATTENBOT_SLACK_BOT_TOKEN: 'xoxb-1',
        BATTENBOT_SLACK_PORT: '8080',
      }),
    ).toEqual({
      command: '/batten',
      connection: {
        mode: 'http',
        signingSecret: 's',
        port: 8080,
        host: undefined,
        workspaces: { botToken: 'xoxb-1' },
      },
    })
  })

  it('is refused an address that Slack cannot post to, by its name', () => {
    expect(() => read({ ...OAUTH, BATTENBOT_SLACK_ADDRESS: 'bot.example.org' })).toThrow(
      'BATTENBOT_SLACK_ADDRESS: "bot.example.org" is no address that Slack can post to',
    )
  })

  it('sets up HTTP for any workspace', () => {
    expect(read(OAUTH)?.connection).toEqual({
      mode: 'http',
      signingSecret: 's',
      port: 3000,
      host: undefined,
      workspaces: {
        clientId: 'i',
        clientSecret: 'c',
        stateSecret: 't',
        vault,
        key: KEY,
        address: 'https://bot.example.org',
      },
    })
  })

  it.each<[Record<string, string>, string]>([
    [
      { BATTENBOT_SLACK_BOT_TOKEN: 'xoxb-1' },
      'set BATTENBOT_SLACK_APP_TOKEN and BATTENBOT_SLACK_BOT_TOKEN for Socket Mode, or BATTENBOT_SLACK_SIGNING_SECRET',
    ],
    [{ BATTENBOT_SLACK_APP_TOKEN: 'xapp-1' }, 'BATTENBOT_SLACK_BOT_TOKEN is not set'],
    [
      { BATTENBOT_SLACK_APP_TOKEN: 'xoxb-1', BATTENBOT_SLACK_BOT_TOKEN: 'xoxb-1' },
      'BATTENBOT_SLACK_APP_TOKEN does not begin with xapp-',
    ],
    [
      { BATTENBOT_SLACK_SIGNING_SECRET: 's', BATTENBOT_SLACK_BOT_TOKEN: 'xoxp-1' },
      'BATTENBOT_SLACK_BOT_TOKEN does not begin with xoxb-',
    ],
    [
      {
        BATTENBOT_SLACK_SIGNING_SECRET: 's',
        BATTENBOT_SLACK_BOT_TOKEN: 'xoxb-1',
        BATTENBOT_SLACK_PORT: 'web',
      },
      'BATTENBOT_SLACK_PORT is "web"',
    ],
    [
      {
        BATTENBOT_SLACK_SIGNING_SECRET: 's',
        BATTENBOT_SLACK_BOT_TOKEN: 'xoxb-1',
        BATTENBOT_SLACK_COMMAND: 'batten',
      },
      'BATTENBOT_SLACK_COMMAND is "batten"',
    ],
    [{ ...OAUTH, BATTENBOT_SLACK_CLIENT_SECRET: '' }, 'BATTENBOT_SLACK_CLIENT_SECRET is not set'],
    [{ ...OAUTH, BATTENBOT_SLACK_TOKEN_KEY: '' }, 'BATTENBOT_SLACK_TOKEN_KEY is not set'],
    [
      { ...OAUTH, BATTENBOT_SLACK_TOKEN_KEY: 'short' },
      'BATTENBOT_SLACK_TOKEN_KEY: the key has to be 32 bytes',
    ],
  ])('that says %j is told what is wrong, and no secret', (environment, sentence) => {
    expect(() => read(environment)).toThrow(sentence)
    expect(() => read(environment)).not.toThrow('xoxp-1')
  })
})
